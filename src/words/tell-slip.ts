import type { WheelReport } from '../job/identity-report.ts';
import type { Job } from '../job/job-schema.ts';
import { capitalize } from './capitalize.ts';
import { nameReading } from './name-reading.ts';
import { tellOdds } from './tell-odds.ts';

type Suspect = WheelReport['suspect'][number];

/**
 * A reading that doesn't agree, how likely it is a slip, and the kindest way to put it right. That everything
 * agrees then is said only where no other reading is in doubt.
 */
export function tellSlip(wheel: WheelReport, suspect: Suspect, job: Job): string {
  const reading = job.wheels?.find((one) => one.id === wheel.id)?.readings?.[suspect.reading];
  const name = nameReading(reading?.of === undefined ? suspect : { ...reading, of: reading.of });
  const chance = `${capitalize(name)}: ${tellOdds(suspect.probability)} that it is a slip.`;
  const then = wheel.suspect.length === 1 ? 'everything agrees' : 'it fits the others better';
  const mm = reading && 'mm' in reading ? reading.mm : undefined;
  const typed = Array.isArray(mm) ? mm.join(' ') : String(mm ?? 'it');
  const meant = suspect.repair?.value;
  const value = meant === undefined ? '' : String(Number(meant.toFixed(3)));
  switch (suspect.repair?.kind) {
    case 'inch-for-mm':
      return meant !== undefined && firstOf(mm) > meant
        ? `${chance} If ${typed} was turned from inches to mm twice and is ${value}, ${then}.`
        : `${chance} If ${typed} was inches, ${then}.`;
    case 'radius-for-diameter':
      return `${chance} If ${typed} was a radius, ${then}.`;
    case 'swapped-digits':
      return `${chance} If two digits were swapped and ${typed} is ${value}, ${then}.`;
    case 'lost-decimal':
      return `${chance} If the point was lost and ${typed} is ${value}, ${then}.`;
    case 'zero-not-set':
      return `${chance} If the caliper was not set to zero, ${then}: close it, read it, put that into the kit.`;
    case 'count-off-by-one':
      return `${chance} If it has ${value} teeth, ${then}. Mark one tooth and count again.`;
    default:
      return `${chance} Take it again.`;
  }
}

function firstOf(mm: unknown): number {
  const first: unknown = Array.isArray(mm) ? mm[0] : mm;
  return typeof first === 'number' ? first : 0;
}
