import { type ReactNode, useState } from 'react';

/** Words to search for, to be copied; what comes in a bag stands beside them. */
export function SearchWords(props: {
  readonly words: string;
  readonly count: number | null;
  readonly isOwn: boolean;
}): ReactNode {
  const { words, count, isOwn } = props;
  const [said, setSaid] = useState('');
  return (
    <div>
      <h4 className="why-title">{isOwn ? 'What it is called in a shop' : 'Words to search for'}</h4>
      <div className="fit-search">
        <p>{words}</p>
        <button
          type="button"
          onClick={() => {
            // Not every browser lets a page write there; then the words are marked for the person's own copy.
            const copied = navigator.clipboard?.writeText(words) ?? Promise.reject(new Error('no clipboard'));
            copied.then(
              () => setSaid('Copied.'),
              () => setSaid('This browser keeps the clipboard shut: mark the words and copy them.'),
            );
          }}
        >
          Copy
        </button>
      </div>
      <p role="status">{said}</p>
      {count !== null && !isOwn && (
        <p className="entry-hint">
          {count === 1 ? 'Mostly sold one by one.' : `Mostly sold ${count} in a bag.`}
        </p>
      )}
    </div>
  );
}
