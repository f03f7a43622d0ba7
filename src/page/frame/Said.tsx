import './said.css';
import type { ReactNode } from 'react';
import { capitalize } from '../../index.ts';
import type { KeepCondition } from '../keep/keeper.ts';
import { saveFile } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';

const conditionWords: Readonly<Record<Exclude<KeepCondition, 'kept'>, string>> = {
  refused: "This browser won't keep your work: save a file.",
  full: 'This machine has no room left to keep your work: save a file.',
  newer:
    'A newer Sparetooth keeps jobs on this machine. They are left untouched, and what you do here is not kept: save a file.',
};

/** One line under the train line: what can't be done, what the page did, and whether the work is kept. */
export function Said(): ReactNode {
  const store = useStoreOfPage();
  const trouble = usePage((state) => state.trouble);
  const said = usePage((state) => state.said);
  const keeping = usePage((state) => state.keeping);
  const job = usePage((state) => state.open?.job);
  return (
    <div className="said">
      <div role="alert">
        {trouble && (
          <p className="said-line said-trouble">
            <span>
              <strong>{`${capitalize(trouble.message)}.`}</strong>{' '}
              {trouble.field !== '' && `(${trouble.field}) `}
              {trouble.remedy}
            </span>
            <button type="button" className="plain" onClick={() => store.fail(undefined)}>
              Close
            </button>
          </p>
        )}
      </div>
      <div role="status">
        {said !== undefined && (
          <p className="said-line">
            <span>{said}</span>
            <button type="button" className="plain" onClick={() => store.say(undefined)}>
              Close
            </button>
          </p>
        )}
        {keeping !== 'kept' && (
          <p className="said-line said-trouble">
            <span>{conditionWords[keeping]}</span>
            <button type="button" onClick={() => job && saveFile(job)}>
              Save a file
            </button>
          </p>
        )}
      </div>
    </div>
  );
}
