import type { ReactNode } from 'react';
import type { Job } from '../../index.ts';
import { usePair } from '../fits/use-pair.ts';
import { ProofSheet } from '../proof/ProofSheet.tsx';
import { usePage } from '../state/use-page.ts';
import { nameWheel } from '../words/name-wheel.ts';

/** One mesh of the train as it was rolled, in the train's place on the sheet until it is closed. */
export function MeshRolled(props: {
  readonly job: Job;
  readonly wheelId: string;
  readonly mate: string;
  readonly moduleMm: number;
  readonly onClose: () => void;
}): ReactNode {
  const { job, wheelId, mate, moduleMm, onClose } = props;
  const { unit } = usePage((state) => state.settings);
  const { pair, isWorking, fail } = usePair(job, wheelId, mate, undefined);
  const names = { driver: nameWheel(job, mate), driven: nameWheel(job, wheelId) };
  return (
    <div className="TrainSheet">
      {pair ? (
        <ProofSheet
          pair={pair}
          moduleMm={moduleMm}
          names={names}
          isWorking={isWorking}
          unit={unit}
          roomBelow={52}
          titleBlock={{
            job: job.title ?? 'Untitled',
            gear: `${names.driver}, ${names.driven}`,
            note: job.invented ? 'Invented' : undefined,
          }}
        />
      ) : (
        <p className="frame-empty">
          {isWorking
            ? 'The pair is being rolled …'
            : `There is no picture of this pair${fail ? `: ${fail.message}` : ''}.`}
        </p>
      )}
      <div className="TrainSheet-back">
        <button type="button" onClick={onClose}>
          Back to the train
        </button>
      </div>
    </div>
  );
}
