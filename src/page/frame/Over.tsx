import { readLength } from '../state/read-length.ts';
import './over.css';
import { lazy, type ReactNode, Suspense, useEffect, useRef, useState } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { Kit } from '../kit/Kit.tsx';
import { LayOnDrawing } from '../lay/LayOnDrawing.tsx';
import { BeforeTakingApart } from '../start/BeforeTakingApart.tsx';
import { editWheel, putReading } from '../state/edit-job.ts';
import type { PageState } from '../state/page-state.ts';
import { findReading } from '../state/slot.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { AllJobs } from './AllJobs.tsx';
import { Names } from './Names.tsx';

const OwnParts = lazy(() => import('../fits/OwnParts.tsx'));

const titles: Readonly<Record<NonNullable<PageState['over']>, string>> = {
  kit: 'My tools and this machine',
  jobs: 'All jobs on this machine',
  lay: 'Lay it on the drawing',
  before: 'Before you take it apart',
  names: 'Names',
  parts: 'My spare parts',
};

/** What stands in the drawing's place for a while: the kit, the jobs, laying a gear on the glass. */
export function Over(props: {
  readonly job: Job;
  /** Without one it is about the whole train */
  readonly wheel: Wheel | undefined;
  readonly over: NonNullable<PageState['over']>;
}): ReactNode {
  const { job, wheel, over } = props;
  const store = useStoreOfPage();
  const title = useRef<HTMLHeadingElement>(null);
  // The title takes the focus whenever another one opens.
  useEffect(() => {
    if (over) title.current?.focus();
  }, [over]);
  return (
    <div className="over">
      <div className="over-head">
        <h2 ref={title} tabIndex={-1}>
          {titles[over]}
        </h2>
        <button type="button" onClick={() => store.show(undefined)}>
          Back to the drawing
        </button>
      </div>
      <div className="over-body">
        {over === 'kit' && <Kit job={job} onChange={store.change} />}
        {over === 'jobs' && <AllJobs />}
        {over === 'parts' && (
          <Suspense fallback={<p>One moment …</p>}>
            <OwnParts />
          </Suspense>
        )}
        {over === 'names' && <Names job={job} wheel={wheel} />}
        {over === 'lay' && wheel && <Lay wheel={wheel} />}
        {over === 'before' && (
          <BeforeTakingApart
            onSeen={() => {
              store.set({ hasSeenCard: true });
              store.show(undefined);
            }}
          />
        )}
      </div>
    </div>
  );
}

type LaidCounts = readonly { readonly teeth: number; readonly outline: Float64Array }[];

/** Gears of neighboring counts at the measured size, at true scale on the glass. */
function Lay({ wheel }: { readonly wheel: Wheel }): ReactNode {
  const store = useStoreOfPage();
  const { pixelsPerMm } = usePage((state) => state.settings);
  const [counts, setCounts] = useState<LaidCounts>([]);
  const outside = readLength(wheel, { of: 'outside' });
  const middle = countOf(wheel);
  useEffect(() => {
    if (outside === undefined || middle === undefined) return;
    const around = [middle - 2, middle - 1, middle, middle + 1, middle + 2].filter((teeth) => teeth >= 6);
    store.worker.ask('lay', { tipDiameterMm: outside, counts: around }).then(setCounts, store.fail);
  }, [store, outside, middle]);
  if (outside === undefined || middle === undefined)
    return (
      <p>Count roughly and measure across the tips first: then the drawing has the size of your gear.</p>
    );
  return (
    <LayOnDrawing
      pixelsPerMm={pixelsPerMm}
      onScaled={(scale) => store.set({ pixelsPerMm: scale })}
      counts={counts}
      onCounted={({ teeth, sure }) => {
        store.show(undefined);
        store.change(`${teeth} teeth, laid on the drawing`, (job) =>
          editWheel(job, wheel.id, (one) =>
            putReading(
              one,
              { of: 'teeth', count: teeth, chance: sure ? 0.95 : 0.7 },
              findReading(one, { of: 'teeth' }),
            ),
          ),
        );
      }}
      onClose={() => store.show(undefined)}
    />
  );
}

function countOf(wheel: Wheel): number | undefined {
  for (const reading of wheel.readings ?? []) {
    if (reading.of !== 'teeth') continue;
    if (reading.count !== undefined) return reading.count;
    if (reading.left !== undefined) return reading.left + (reading.missing?.[0] ?? 0);
    if (reading.pitches !== undefined && reading.overDeg !== undefined)
      return Math.round((360 * reading.pitches) / reading.overDeg);
  }
  return undefined;
}
