import '../slip/next-act.css';
import './why.css';
import { useMemo, useState } from 'react';
import type { Job, TrainRow } from '../../index.ts';
import { acceptRow } from '../fits/accept-row.ts';
import { FitsVerdict } from '../fits/FitsVerdict.tsx';
import { OwnPartsLine } from '../fits/OwnPartsLine.tsx';
import { TrainFitNext } from '../fits/TrainFitNext.tsx';
import { GearByGear, MayChange, TrainRows } from '../fits/TrainRows.tsx';
import { chooseTrain, nameTrain, tellTrains } from '../fits/tell-trains.ts';
import { useFits } from '../fits/use-fits.ts';
import { usePage } from '../state/use-page.ts';
import { EmptyTrain } from '../train/EmptyTrain.tsx';
import { TrainSheet } from '../train/TrainSheet.tsx';
import { useTrainAnswer } from '../train/use-train-answer.ts';
import type { QuestionParts } from './question.ts';

/** *What fits?* for the whole train: other trains on the same posts, and one gear for another. */
export function useTrainFits(job: Job): QuestionParts {
  const { unit } = usePage((state) => state.settings);
  const [change, setChange] = useState<readonly string[]>();
  const fits = useFits(job, undefined, change);
  const { report } = fits;
  const [picked, setPicked] = useState<TrainRow>();
  const rows = report?.trains?.rows ?? [];
  const row = rows.find((one) => one === picked) ?? chooseTrain(report?.trains ?? null);
  // The sheet shows the train as it would be.
  const preview = useMemo(() => (row ? acceptRow(job, row.accept) : job), [job, row]);
  const answer = useTrainAnswer(preview);
  const words = report && tellTrains(report, row, job);
  const changed = new Set(row?.accept.map((one) => one.wheelId));
  return {
    drawing: answer ? (
      <TrainSheet
        job={preview}
        drawing={answer.drawing}
        known={new Set((job.wheels ?? []).map((wheel) => wheel.id))}
        isWorking={answer.job !== preview || fits.isWorking}
        unit={unit}
        sentence={row ? `The train as it would be: ${nameTrain(row)}` : 'The gear train from above, to scale'}
        note={row ? `As it would be: ${nameTrain(row)}` : job.invented ? 'Invented' : undefined}
        changed={changed}
      />
    ) : (
      <EmptyTrain isWorking />
    ),
    answer: <FitsVerdict fits={fits} words={words} />,
    next: <TrainFitNext job={job} report={report} row={row} />,
    why: (
      <div className="why">
        <TrainRows job={job} rows={rows} chosen={row} onChoose={setPicked} />
        {report && <GearByGear job={job} report={report} />}
        {report && (
          <MayChange job={job} changing={change ?? report.trains?.changing ?? []} onChange={setChange} />
        )}
        <OwnPartsLine />
      </div>
    ),
  };
}
