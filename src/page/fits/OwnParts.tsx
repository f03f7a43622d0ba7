import { PickFile } from '../entries/PickFile.tsx';
import './own-parts.css';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { PartsFile } from '../../index.ts';
import type { KeptParts } from '../keep/keeper.ts';
import { handOver } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { hearOut } from '../worker/hear-out.ts';

/** The person's own parts: files as they were given, what could be read of each, and every row that could not. */
export default function OwnParts(): ReactNode {
  const store = useStoreOfPage();
  const parts = usePage((state) => state.parts);
  const picker = useRef<HTMLInputElement>(null);
  return (
    <div className="entry own-parts">
      <p>
        A list of the gears in your drawers, as a spreadsheet saves it (CSV): one row a kind of gear, with its
        teeth and its size or its measure across the tips, and, if known, bore, width, material and where it
        is kept. The order of the columns is free. The list stays on this machine; no job file holds it.
      </p>
      <div className="entry-row">
        <button type="button" onClick={() => picker.current?.click()}>
          Add a list of parts
        </button>
        <PickFile
          ref={picker}
          accept=".csv,.tsv,.txt,text/csv"
          label="Add a list of parts"
          testId="add-parts"
          onPick={(file) => void store.addParts(file, file.name)}
        />
      </div>
      {parts.map((one) => (
        <OneFile key={one.name} file={one} />
      ))}
    </div>
  );
}

type Read = Pick<PartsFile, 'badRows' | 'notices'> & { readonly count: number };

/** More than a person reads; the file itself holds them all. */
const mostShown = 100;

function OneFile({ file }: { readonly file: KeptParts }): ReactNode {
  const store = useStoreOfPage();
  const [read, setRead] = useState<Read>();
  useEffect(() => {
    return hearOut(store.worker.ask('parts', { bytes: file.bytes }, `parts ${file.name}`), {
      onAnswer: setRead,
      onTrouble: store.fail,
    });
  }, [store, file]);
  return (
    <section>
      <h3 className="own-parts-name">{file.name}</h3>
      <p role="status">{read ? tellRead(read) : 'Being read …'}</p>
      <div className="entry-row">
        <button type="button" onClick={() => handOver(file.bytes, file.name, 'text/csv')}>
          Save this list again
        </button>
        <button type="button" onClick={() => void store.dropParts(file.name)}>
          Take it off this machine
        </button>
      </div>
      {read && read.badRows.length > 0 && (
        <>
          <h4 className="own-parts-name">Rows that could not be used</h4>
          <p className="entry-hint">
            They stay in the list as they are. Mend them in the file and add it again.
          </p>
          <ul className="own-parts-bad">
            {read.badRows.slice(0, mostShown).map((row) => (
              <li key={row.line}>
                <p>
                  <strong>{`Line ${row.line}: `}</strong>
                  {`${row.reason}. ${row.remedy}`}
                </p>
                <p className="own-parts-text">{row.text}</p>
              </li>
            ))}
          </ul>
          {read.badRows.length > mostShown && <p>{`And ${read.badRows.length - mostShown} more.`}</p>}
        </>
      )}
      {read && read.notices.length > 0 && (
        <>
          <h4 className="own-parts-name">Read, but look again</h4>
          <ul>
            {read.notices.slice(0, mostShown).map((notice) => (
              <li key={`${notice.line} ${notice.message}`}>{`Line ${notice.line}: ${notice.message}.`}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function tellRead({ count, badRows }: Read): string {
  const kinds = count === 1 ? '1 row of parts' : `${count} rows of parts`;
  if (badRows.length === 0) return `${kinds}, all of them could be read.`;
  return `${kinds}; ${badRows.length} more ${badRows.length === 1 ? 'row' : 'rows'} could not be used.`;
}
