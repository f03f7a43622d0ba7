import { type ReactNode, useState } from 'react';
import type { Job } from '../../index.ts';
import { Choice } from '../entries/Choice.tsx';
import { TakeField } from '../entries/TakeField.tsx';
import { setWanted, shaftOf } from '../state/edit-train.ts';
import { nameShaft } from '../words/name-wheel.ts';
import { readNumber } from './read-number.ts';
import { barTerms, termOf, type WishTerm, wishOf, wishTerms } from './wish-of.ts';

type Way = 'same' | 'opposite' | 'either';

/** What should come out, in the terms that the person knows it in. */
export function WantedEntry(props: {
  readonly job: Job;
  /** Where the drive ends as far as it can tell: a shaft or a bar */
  readonly to: string | undefined;
  readonly from: string | undefined;
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onTake: (what: string, edit: (job: Job) => Job) => void;
  readonly onMotor: () => void;
}): ReactNode {
  const { job, from, text, onType, onTake, onMotor } = props;
  const ends = listEnds(job, from);
  const [chosenEnd, setTo] = useState<string>();
  const usual = job.wanted?.to ?? props.to;
  const to = chosenEnd ?? (ends.some((one) => one.value === usual) ? usual : ends[0]?.value) ?? '';
  const isBar =
    job.wheels?.some((one) => one.kind === 'rack' && (one.id === to || shaftOf(one) === to)) ?? false;
  const terms = isBar ? barTerms : wishTerms;
  const [chosen, setTerm] = useState<WishTerm>(termOf(job.wanted) ?? 'ratio');
  const term = terms.find((one) => one.term === chosen) ?? terms[0];
  const [roller, setRoller] = useState('');
  const [near, setNear] = useState(String(job.wanted?.tolerancePercent ?? ''));
  const [way, setWay] = useState<Way>(job.wanted?.direction ?? 'either');
  const rpm = job.motor?.rpm;
  const needsMotor = term.needsMotor && rpm === undefined;
  const take = (): string | undefined => {
    const value = readNumber(text);
    if (value === undefined || value <= 0) return 'Type a number above 0, such as 12.5.';
    const tolerance = near.trim() === '' ? undefined : readNumber(near);
    if (near.trim() !== '' && (tolerance === undefined || tolerance <= 0 || tolerance > 100))
      return 'How near it must be: percent above 0, such as 0.5, or leave it empty.';
    const rollerMm = term.term === 'speed' ? readNumber(roller) : undefined;
    if (term.term === 'speed' && (rollerMm === undefined || rollerMm <= 0))
      return 'Type the diameter of the roller in mm: it makes turns of the speed.';
    const wish = wishOf(term.term, value, rollerMm);
    if (!wish) return 'Type the diameter of the roller in mm: it makes turns of the speed.';
    onTake(`wanted: ${text}`, (one) =>
      setWanted(one, {
        ...(from === undefined ? {} : { from }),
        to,
        ...wish,
        ...(tolerance === undefined ? {} : { tolerancePercent: tolerance }),
        ...(way === 'either' ? {} : { direction: way }),
      }),
    );
    return undefined;
  };
  return (
    <div className="entry">
      {ends.length > 1 && (
        <Choice legend="What comes out at the end?" options={ends} chosen={to} onChoose={setTo} />
      )}
      <Choice
        legend="What do you know of it?"
        options={terms.map((one) => ({ value: one.term, words: one.words }))}
        chosen={term.term}
        onChoose={setTerm}
      />
      {needsMotor ? (
        <div className="entry-row">
          <button type="button" className="next" onClick={onMotor}>
            First the speed of the motor
          </button>
        </div>
      ) : (
        <TakeField
          label={term.term === 'speed' ? 'mm in a second' : term.words}
          text={text}
          mode="decimal"
          onType={onType}
          onTake={take}
          beside={
            <button
              type="button"
              onClick={() => onTake('what is wanted not known', (one) => setWanted(one, { unknown: true }))}
            >
              Don’t know
            </button>
          }
        >
          {term.term === 'speed' && (
            <label className="entry-small">
              Across the roller, mm{' '}
              <input
                value={roller}
                inputMode="decimal"
                onChange={(event) => setRoller(event.currentTarget.value)}
              />
            </label>
          )}
          <label className="entry-small">
            How near must it be? %{' '}
            <input
              value={near}
              inputMode="decimal"
              onChange={(event) => setNear(event.currentTarget.value)}
            />
          </label>
          {!isBar && (
            <Choice
              legend="Which way round, against the motor?"
              options={[
                { value: 'same', words: 'the same' },
                { value: 'opposite', words: 'the other' },
                { value: 'either', words: 'don’t know' },
              ]}
              chosen={way}
              onChoose={setWay}
            />
          )}
        </TakeField>
      )}
    </div>
  );
}

/** Shafts other than the first, and bars by themselves. */
function listEnds(job: Job, from: string | undefined): { readonly value: string; readonly words: string }[] {
  const seen = new Map<string, string>();
  for (const wheel of job.wheels ?? []) {
    const key = wheel.kind === 'rack' ? wheel.id : shaftOf(wheel);
    if (key !== from) seen.set(key, wheel.kind === 'rack' ? (wheel.name ?? wheel.id) : nameShaft(job, key));
  }
  return [...seen].map(([value, words]) => ({ value, words }));
}
