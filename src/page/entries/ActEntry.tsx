import { lazy, type ReactNode, Suspense } from 'react';
import type { Job, Wheel, WheelReport } from '../../index.ts';
import { Happened } from '../start/Happened.tsx';
import { LooksLike } from '../start/LooksLike.tsx';
import { applyHappening } from '../state/apply-happening.ts';
import { applyLook } from '../state/apply-look.ts';
import { editWheel } from '../state/edit-job.ts';
import { AngleEntry } from './AngleEntry.tsx';
import { BoreEntry } from './BoreEntry.tsx';
import type { EntryProps } from './entry-props.ts';
import { LengthEntry } from './LengthEntry.tsx';
import { PlainLengthEntry } from './PlainLengthEntry.tsx';
import { PostsEntry } from './PostsEntry.tsx';
import { RollEntry } from './RollEntry.tsx';
import { TeethEntry } from './TeethEntry.tsx';

// Few gears are lost, and their questions reach into the train.
const LostEntry = lazy(() => import('../train/LostEntry.tsx'));

/** The field or the buttons of one act. */
export function ActEntry(
  props: EntryProps & {
    readonly report?: WheelReport | undefined;
    readonly onLay?: (() => void) | undefined;
  },
): ReactNode {
  const { slot, wheel, report, onTake } = props;
  switch (slot.of) {
    case 'looks-like':
      return (
        <LooksLike
          chosen={wheel.look as never}
          onChoose={(look) => onTake('what it looks like', (job) => applyLook(job, wheel.id, look))}
        />
      );
    case 'happened':
      return (
        <Happened
          onChoose={(happening) =>
            onTake('what happened to it', (job) =>
              editWheel(job, wheel.id, (one) => applyHappening(one, happening)),
            )
          }
        />
      );
    case 'teeth':
      return <TeethEntry {...props} />;
    case 'bore':
      return <BoreEntry {...props} />;
    case 'center-distance':
      return <PostsEntry {...props} />;
    case 'helix-angle':
      return <AngleEntry {...props} />;
    case 'hand-roll':
      return report ? <RollEntry {...props} report={report} /> : null;
    case 'split-gap':
      return (
        <PlainLengthEntry
          {...props}
          label="Width of the gap at the tips"
          put={(job, mm) => editWheel(job, wheel.id, (one) => putGap(one, mm))}
        />
      );
    case 'd-flat':
      return (
        <PlainLengthEntry
          {...props}
          label="From the flat to the opposite wall"
          put={(job, mm) => editWheel(job, wheel.id, (one) => putFlat(one, mm))}
        />
      );
    case 'crumbs':
    case 'post':
    case 'neighbors':
    case 'rows':
    case 'speed-wanted':
      return (
        <Suspense fallback={null}>
          <LostEntry {...props} />
        </Suspense>
      );
    case 'zero':
      return (
        <PlainLengthEntry
          {...props}
          label="What the closed jaws show"
          isSigned
          put={(job, mm): Job => ({ ...job, kit: { ...job.kit, zeroMm: mm } })}
        />
      );
    default:
      return <LengthEntry {...props} />;
  }
}

function putGap(wheel: Wheel, gapMm: number): Wheel {
  return {
    ...wheel,
    damage: (wheel.damage ?? []).map((one) => (one.kind === 'split' ? { ...one, gapMm } : one)),
  };
}

function putFlat(wheel: Wheel, flatMm: number): Wheel {
  return { ...wheel, spec: { ...wheel.spec, bore: { ...wheel.spec?.bore, shape: 'd', flatMm } } };
}
