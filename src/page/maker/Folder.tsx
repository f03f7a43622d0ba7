import './maker.css';
import { type ReactNode, useState } from 'react';
import { partFormats } from '../../index.ts';
import { handOver } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { Overtaken } from '../worker/ask-worker.ts';
import type { Asks, MakingAsk } from '../worker/asks.ts';

/** The folder for whoever makes it, as one zip, with how far it is. */
export function SaveFolder({ ask, name }: { readonly ask: MakingAsk; readonly name: string }): ReactNode {
  const store = useStoreOfPage();
  const { paper } = usePage((state) => state.settings);
  const [progress, setProgress] = useState<Asks['folder']['progress']>();
  const [said, setSaid] = useState('');
  const save = (): void => {
    setSaid('');
    setProgress({ done: 0, of: 3, doing: 'the part' });
    store.searcher
      .ask('folder', { ...ask, paper }, 'folder', setProgress)
      .then(
        (came) => {
          handOver(came.bytes, came.name, 'application/zip');
          setSaid(`Saved as ${came.name}, ${Math.ceil(came.bytes.length / 1000)} kB.`);
        },
        (error: unknown) => {
          if (error instanceof Overtaken) setSaid('Given up: nothing was saved.');
          else store.fail(error);
        },
      )
      .finally(() => setProgress(undefined));
  };
  return (
    <div>
      <div className="entry-row">
        <button type="button" className="next" disabled={progress !== undefined} onClick={save}>
          {`Save the folder for ${name}`}
        </button>
        {progress && (
          <button type="button" onClick={() => store.searcher.cancel()}>
            Give up
          </button>
        )}
      </div>
      <p role="status">{progress ? `${progress.done + 1} of ${progress.of}: ${progress.doing} …` : said}</p>
    </div>
  );
}

type Handed = Asks['design']['answer']['handed'];

/** What lies in the folder, each to be saved alone; the message to paste, and what to buy. */
export function FolderContents({ handed }: { readonly handed: Handed }): ReactNode {
  const { part, texts, handOver: over } = handed;
  const [copied, setCopied] = useState('');
  const message = over.message.join('\n');
  return (
    <>
      <details>
        <summary>{over.for.key === 'buy-one' ? 'Message to the seller' : 'Message to paste'}</summary>
        <p className="make-message">{message}</p>
        <div className="entry-row">
          <button
            type="button"
            onClick={() =>
              navigator.clipboard.writeText(message).then(
                () => setCopied('Copied.'),
                () => setCopied('This browser keeps its clipboard shut: mark the text and copy it.'),
              )
            }
          >
            Copy the message
          </button>
        </div>
        <p role="status">{copied}</p>
      </details>
      <details>
        <summary>Shopping list</summary>
        <ul className="make-list">
          {over.shopping.map(({ what, size, why, isGood }) => (
            <li key={`${what} ${size} ${why}`}>
              {isGood ? '' : 'Not '}
              <strong>{what}</strong>
              {`${size === null ? '' : `, ${size}`}: ${why}.`}
            </li>
          ))}
        </ul>
      </details>
      <details>
        <summary>Single files</summary>
        <ul className="make-files">
          {part.files.map((file) => {
            const format = partFormats.find((one) => file.name.endsWith(`.${one.extension}`));
            return (
              <li key={file.name}>
                <button
                  type="button"
                  onClick={() =>
                    handOver(file.bytes, file.name, format?.mediaType ?? 'application/octet-stream')
                  }
                >
                  {`Save ${format?.extension.toUpperCase()}`}
                  <span className="unseen">{` ${file.name}`}</span>
                </button>
                <span>
                  {`${file.name}. ${format?.forWhom} `}
                  <span className="entry-hint">{`${Math.ceil(file.bytes.length / 1000)} kB`}</span>
                </span>
              </li>
            );
          })}
          {texts.map((file) => (
            <li key={file.name}>
              <button type="button" onClick={() => handOver(file.bytes, file.name, 'text/plain')}>
                Save text
                <span className="unseen">{` ${file.name}`}</span>
              </button>
              <span>{file.name}</span>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
