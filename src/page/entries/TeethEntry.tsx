import { type ReactNode, useState } from 'react';
import { editWheel, type JobReading, putReading } from '../state/edit-job.ts';
import { findReading } from '../state/slot.ts';
import { Choice } from './Choice.tsx';
import type { EntryProps } from './entry-props.ts';
import { TakeField } from './TakeField.tsx';

type How = 'all' | 'left' | 'angle';

/** The tooth count: all counted; what is left and how many seem gone; or an angle over a row, from a picture. */
export function TeethEntry(props: EntryProps & { readonly onLay?: (() => void) | undefined }): ReactNode {
  const { wheel, text, onType, onTake, onLay } = props;
  const index = findReading(wheel, { of: 'teeth' });
  const taken = (wheel.readings ?? [])[index];
  const isBroken = (wheel.damage ?? []).some((one) => one.kind === 'teeth-missing');
  const [how, setHow] = useState<How>(howOf(taken) ?? (isBroken ? 'left' : 'all'));
  const [gone, setGone] = useState(goneOf(taken) ?? String(goneInDamage(wheel) ?? ''));
  const [over, setOver] = useState('');
  const shown = text === '' ? countText(taken, how) : text;
  const take = (): string | undefined => {
    const reading =
      how === 'all' ? readAll(shown) : how === 'left' ? readLeft(shown, gone) : readAngle(shown, over);
    if (typeof reading === 'string') {
      return reading;
    }
    onTake(`teeth ${shown}`, (job) =>
      editWheel(job, wheel.id, (one) => putReading(one, reading, findReading(one, { of: 'teeth' }))),
    );
    return undefined;
  };
  return (
    <div className="entry">
      <Choice
        legend="What can be counted?"
        options={[
          { value: 'all', words: 'all of them' },
          { value: 'left', words: 'some are gone' },
          { value: 'angle', words: 'a row, from a picture' },
        ]}
        chosen={how}
        onChoose={setHow}
      />
      <TakeField
        key={how}
        label={how === 'all' ? 'Teeth' : how === 'left' ? 'Whole teeth left' : 'Teeth in the row'}
        text={shown}
        mode="numeric"
        onType={onType}
        onTake={take}
        beside={
          onLay && (
            <button type="button" onClick={onLay}>
              Lay it on the drawing
            </button>
          )
        }
      >
        {how === 'left' && (
          <label className="entry-small">
            How many seem gone? A guess or several: 4 5 6{' '}
            <input
              value={gone}
              inputMode="numeric"
              onChange={(event) => setGone(event.currentTarget.value)}
            />
          </label>
        )}
        {how === 'angle' && (
          <label className="entry-small">
            Degrees from the middle of the first to the middle of the last{' '}
            <input
              value={over}
              inputMode="decimal"
              onChange={(event) => setOver(event.currentTarget.value)}
            />
          </label>
        )}
      </TakeField>
    </div>
  );
}

function readWhole(text: string): number | undefined {
  return /^\s*\d{1,4}\s*$/.test(text) ? Number(text) : undefined;
}

function readAll(text: string): JobReading | string {
  const count = readWhole(text);
  if (count === undefined) return 'Type a whole number, such as 23.';
  if (count < 4 || count > 1000) return `${count} teeth? Count again: a gear here has 4 to 1000.`;
  return { of: 'teeth', count };
}

function readLeft(text: string, gone: string): JobReading | string {
  const left = readWhole(text);
  const missing = gone.split(/[\s;]+/).filter((word) => word !== '');
  if (left === undefined || left < 1) return 'Type how many whole teeth are left, such as 19.';
  if (missing.length === 0 || missing.some((word) => readWhole(word) === undefined))
    return 'Type how many seem gone: one guess, or several with spaces between.';
  return { of: 'teeth', left, missing: missing.map(Number) };
}

function readAngle(text: string, over: string): JobReading | string {
  const teeth = readWhole(text);
  const degrees = Number(over.replace(',', '.'));
  if (teeth === undefined || teeth < 3) return 'Type how many teeth stand in the row: three at least.';
  if (!(degrees > 5 && degrees < 360))
    return 'Type the angle over the row in degrees: more than 5, below 360.';
  return { of: 'teeth', pitches: teeth - 1, overDeg: degrees, uDeg: 2 };
}

function howOf(reading: JobReading | undefined): How | undefined {
  if (reading?.of !== 'teeth') return undefined;
  if (reading.count !== undefined) return 'all';
  return reading.left === undefined ? 'angle' : 'left';
}

function goneOf(reading: JobReading | undefined): string | undefined {
  return reading?.of === 'teeth' ? reading.missing?.join(' ') : undefined;
}

function goneInDamage(wheel: EntryProps['wheel']): number | undefined {
  return (wheel.damage ?? []).find((one) => one.kind === 'teeth-missing')?.count;
}

function countText(reading: JobReading | undefined, how: How): string {
  if (reading?.of !== 'teeth') return '';
  const value =
    how === 'all' ? reading.count : how === 'left' ? reading.left : reading.pitches && reading.pitches + 1;
  return value === undefined ? '' : String(value);
}
