import type { ReactNode } from 'react';
import { BlankSketch } from './BlankSketch.tsx';
import { beforeApart, blankRows } from './blank-rows.ts';
import { CheckBar } from './CheckBar.tsx';
import { PaperFrame } from './PaperFrame.tsx';
import './BlankSheet.css';

/** A sheet for pencil and caliper at the machine: a box for every reading, in the order in which they are taken. */
export function BlankSheet({ paper }: { readonly paper: 'a4' | 'letter' }): ReactNode {
  return (
    <PaperFrame paper={paper} label="Blank measuring sheet">
      <div className="BlankSheet">
        <div className="BlankSheet-head">
          {['machine', 'gear', 'date'].map((name) => (
            <div key={name} className="BlankSheet-field">
              {name}
            </div>
          ))}
        </div>
        <div className="BlankSheet-before">
          <h2>Before you take it apart</h2>
          <ul>
            {beforeApart.map((words) => (
              <li key={words}>
                <span className="BlankSheet-tick" aria-hidden="true" />
                {words}
              </li>
            ))}
          </ul>
        </div>
        <BlankSketch />
        <ol className="BlankSheet-rows">
          {blankRows.map((row) => (
            <li key={`${row.mark ?? ''}${row.name}`} className="BlankSheet-row">
              <span className="BlankSheet-mark">{row.mark}</span>
              <span className="BlankSheet-name">
                {row.name}
                {row.trade && <small> {row.trade}</small>}
              </span>
              <span className="BlankSheet-extra">
                {row.extra && (
                  <>
                    <span className="BlankSheet-small" /> {row.extra}
                  </>
                )}
              </span>
              {Array.from({ length: row.boxes }, (_, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: boxes are alike and never move
                <span key={i} className="BlankSheet-box" />
              ))}
            </li>
          ))}
        </ol>
        <p className="BlankSheet-unit">
          <span className="BlankSheet-tick" aria-hidden="true" /> mm
          <span className="BlankSheet-tick" aria-hidden="true" /> inch
          <span className="BlankSheet-hint">
            Take each at three places and write down what the caliper shows, also when they differ.
          </span>
        </p>
        <CheckBar />
      </div>
    </PaperFrame>
  );
}
