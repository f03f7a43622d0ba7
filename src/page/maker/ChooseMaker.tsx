import './maker.css';
import type { ReactNode } from 'react';
import { capitalize, type Job, makers, materials, processes, type Wheel } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { changeMaking, type MakingWish } from './making-wish.ts';
import { splitMaterial } from './tell-made-by.ts';

/** The first choice: who makes it. */
export function AskMaker({ wheel }: { readonly wheel: Wheel }): ReactNode {
  const store = useStoreOfPage();
  return (
    <section>
      <h3 className="make-title">Who makes it?</h3>
      <ul className="make-who">
        {makers.map(({ key, name }) => (
          <li key={key}>
            <button
              type="button"
              onClick={() =>
                store.changeWheel(wheel.id, `made by ${name}`, (one) => changeMaking(one, { maker: key }))
              }
            >
              {capitalize(name)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Who makes it, how and of what, each to be chosen anew. */
export function MadeBy(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly wish: MakingWish;
  /** What the design chose where nobody said */
  readonly materialFound: string | undefined;
  readonly children?: ReactNode;
}): ReactNode {
  const { wheel, wish, materialFound, children } = props;
  const store = useStoreOfPage();
  const { maker, process } = wish;
  if (!maker) return null;
  const change = (what: string, to: Parameters<typeof changeMaking>[1]): void =>
    store.changeWheel(wheel.id, what, (one) => changeMaking(one, to));
  return (
    <>
      <div className="make-line">
        <p>{`For ${maker.name.replace(/^I'll buy one$/, 'one that is bought')}`}</p>
        <button
          type="button"
          className="plain"
          onClick={() =>
            change('somebody else makes it', {
              maker: undefined,
              process: undefined,
              material: undefined,
              machine: undefined,
            })
          }
        >
          Someone else
        </button>
      </div>
      {process && (
        <div className="entry make-how">
          {maker.processes.length > 1 && (
            <label>
              How fine does it print?
              <select
                value={process.key}
                onChange={(event) =>
                  change('made another way', { process: event.currentTarget.value, machine: undefined })
                }
              >
                {maker.processes.map((key) => (
                  <option key={key} value={key}>
                    {processes.find((one) => one.key === key)?.name}
                  </option>
                ))}
              </select>
            </label>
          )}
          <label>
            Of what?
            <select
              value={wish.material ?? ''}
              onChange={(event) =>
                change('of another material', {
                  material: event.currentTarget.value || undefined,
                  machine: undefined,
                })
              }
            >
              <option value="">{`what suits best${materialFound === undefined ? '' : `: ${materialFound}`}`}</option>
              {materials
                .filter(({ key }) => process.materials.includes(key))
                .map(({ key, name }) => (
                  <option key={key} value={key}>
                    {splitMaterial(name)[0]}
                  </option>
                ))}
            </select>
          </label>
          {children}
        </div>
      )}
    </>
  );
}
