import type { ReactNode } from 'react';
import type { Job, SubstituteRow, Wheel, WheelSubstitutes } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { withNames } from '../words/with-names.ts';
import { acceptRow } from './accept-row.ts';
import { SearchWords } from './SearchWords.tsx';
import { asSentence, sizeOf } from './tell-fits.ts';

/** What to do with the chosen row: what to measure first where that decides, what to search for, what to alter, accept. */
export function FitNext(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly found: WheelSubstitutes;
  readonly row: SubstituteRow | undefined;
}): ReactNode {
  const { job, wheel, found, row } = props;
  const store = useStoreOfPage();
  const own = wheel.name ?? wheel.id;
  const guessed = found.need?.mates.find((mate) => !mate.isMeasured);
  const measure = guessed && (
    <Go
      words={`Measure the distance of the posts to ${nameWheel(job, guessed.id)}`}
      isNext={!row}
      onGo={() => {
        store.turnTo({ wheelId: wheel.id }, 'what-is-it');
        store.openAct({ of: 'center-distance', mate: guessed.id });
      }}
    />
  );
  if (!found.need?.isSure) {
    return (
      <div className="fit-do">
        <p>{`First find out what ${own} was: then what fits can be told, and rolled.`}</p>
        <Go words="What is it?" isNext onGo={() => store.turnTo({ wheelId: wheel.id }, 'what-is-it')} />
        {row && <Chosen {...props} row={row} isNext={false} />}
      </div>
    );
  }
  if (found.need.mates.length === 0) {
    return (
      <div className="fit-do">
        <p>{`Nothing was rolled: say what ${own} runs against, and how far apart their posts are.`}</p>
        <Go words="What it runs against" isNext={!row} onGo={() => store.turnTo('train', 'what-is-it')} />
        {row && <Chosen {...props} row={row} isNext />}
      </div>
    );
  }
  return (
    <div className="fit-do">
      {guessed && <p>The distance of the posts was not measured: what turns by the numbers may still jam.</p>}
      {measure}
      {row ? <Chosen {...props} row={row} isNext /> : <p>Touch one of the rows to see how it would run.</p>}
    </div>
  );
}

function Go(props: {
  readonly words: string;
  readonly isNext: boolean;
  readonly onGo: () => void;
}): ReactNode {
  const { words, isNext, onGo } = props;
  return (
    <div className="entry-row">
      <button type="button" className={isNext ? 'next' : undefined} onClick={onGo}>
        {words}
      </button>
    </div>
  );
}

function Chosen(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly row: SubstituteRow;
  readonly isNext: boolean;
}): ReactNode {
  const { job, wheel, row, isNext } = props;
  const store = useStoreOfPage();
  const own = wheel.name ?? wheel.id;
  const isTrap = row.kind === 'look-alike';
  const name = `${row.teeth} teeth, ${sizeOf(row)}`;
  return (
    <>
      <h3 className="next-act-title">
        {name} {row.part?.kept && <small>{row.part.kept}</small>}
      </h3>
      <p>{asSentence(withNames(row.why, job))}</p>
      {row.doubts.map((doubt) => (
        <p key={doubt} className="next-act-why">
          {asSentence(doubt)}
        </p>
      ))}
      {row.search !== '' && !isTrap && (
        <SearchWords words={row.search} count={row.part?.count ?? null} isOwn={row.from === 'own'} />
      )}
      {row.reworks.length > 0 && !isTrap && (
        <section>
          <h4 className="why-title">What to alter</h4>
          <ul>
            {row.reworks.map((one) => (
              <li key={one.words}>
                {asSentence(one.words)} <span className="entry-hint">{asSentence(one.limit)}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {row.checks.length > 0 && !isTrap && (
        <section>
          <h4 className="why-title">
            {row.from === 'own' ? 'What to check with the caliper' : 'When it arrives, check'}
          </h4>
          <ul>
            {row.checks.map((check) => (
              <li key={check.words}>{asSentence(check.words)}</li>
            ))}
          </ul>
        </section>
      )}
      {row.processes.length > 0 && (
        <p>{`Can be made by: ${row.processes.map((one) => one.name).join('; ')}.`}</p>
      )}
      {isTrap ? (
        <p>It can’t be taken into the job: it would not run.</p>
      ) : (
        <div className="entry-row">
          <button
            type="button"
            className={isNext ? 'next' : undefined}
            onClick={() => {
              store.change(`${name} in place of ${own}`, (one) => acceptRow(one, row.accept));
              store.say(`${name} now stands in place of ${own}. Undo brings the old one back.`);
            }}
          >
            {`Put it in place of ${own}`}
          </button>
        </div>
      )}
    </>
  );
}
