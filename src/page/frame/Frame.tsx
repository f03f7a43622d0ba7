import './frame.css';
import { lazy, type ReactNode, Suspense, useEffect } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { useWhatIsIt } from '../questions/use-what-is-it.tsx';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { Said } from './Said.tsx';
import { TrainLine } from './TrainLine.tsx';
import { View } from './View.tsx';

// Most visits are about one gear and what it is: the rest is loaded when it is asked for.
const TrainView = lazy(() => import('./TrainView.tsx'));
const FitsView = lazy(() => import('./FitsView.tsx'));
const MakeView = lazy(() => import('./MakeView.tsx'));

/** One subject × one question: the train line, the sheet, the slip. Nothing else stands on the page. */
export function Frame(): ReactNode {
  const open = usePage((state) => state.open);
  const place = usePage((state) => state.place);
  const settings = usePage((state) => state.settings);
  useEffect(() => {
    const root = document.documentElement;
    if (settings.light === 'auto') delete root.dataset.light;
    else root.dataset.light = settings.light;
  }, [settings.light]);
  useDroppedFile();
  const job = open?.job;
  const isTrain = place.subject === 'train';
  const wheel = job?.wheels?.find((one) => one.id === place.wheelId) ?? job?.wheels?.[0];
  return (
    <div className={settings.mirrored ? 'frame frame-mirrored' : 'frame'}>
      <TrainLine job={job} wheel={isTrain ? undefined : wheel} />
      <Said />
      {!job || (!wheel && !isTrain) ? (
        <EmptyJob isReady={job !== undefined} />
      ) : (
        <Suspense fallback={<main className="frame-empty" aria-busy="true" />}>
          {place.question === 'what-fits' ? (
            <FitsView
              key={isTrain ? `${open.id} whole` : `${open.id} of ${wheel?.id}`}
              job={job}
              wheel={isTrain ? undefined : wheel}
            />
          ) : isTrain ? (
            <TrainView key={open.id} job={job} />
          ) : (
            wheel &&
            (place.question === 'how-to-make-it' ? (
              <MakeView key={`${open.id} ${wheel.id}`} job={job} wheel={wheel} />
            ) : (
              <KnowView key={`${open.id} ${wheel.id}`} job={job} wheel={wheel} />
            ))
          )}
        </Suspense>
      )}
    </div>
  );
}

function KnowView({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  return <View parts={useWhatIsIt(job, wheel)} job={job} wheel={wheel} />;
}

/** A file may be dropped anywhere on the page; the menu's Open does the same. */
function useDroppedFile(): void {
  const store = useStoreOfPage();
  useEffect(() => {
    const over = (event: DragEvent): void => event.preventDefault();
    const drop = (event: DragEvent): void => {
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) void store.openFile(file, file.name);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, [store]);
}

function EmptyJob({ isReady }: { readonly isReady: boolean }): ReactNode {
  const store = useStoreOfPage();
  if (!isReady) return <main className="frame-empty" aria-busy="true" />;
  return (
    <main className="frame-empty">
      <p>This job has no gear yet.</p>
      <button type="button" className="next" onClick={() => store.addGear()}>
        Add a gear
      </button>
    </main>
  );
}
