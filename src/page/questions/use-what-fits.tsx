import '../slip/next-act.css';
import './why.css';
import { useState } from 'react';
import type { Job, SubstituteRow, Wheel } from '../../index.ts';
import { GearDrawing } from '../drawing/GearDrawing.tsx';
import { FitNext } from '../fits/FitNext.tsx';
import { FitRows } from '../fits/FitRows.tsx';
import { FitsVerdict } from '../fits/FitsVerdict.tsx';
import { OwnPartsLine } from '../fits/OwnPartsLine.tsx';
import { tellFits } from '../fits/tell-fits.ts';
import { useFits } from '../fits/use-fits.ts';
import { usePair } from '../fits/use-pair.ts';
import { ProofSheet } from '../proof/ProofSheet.tsx';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { titleBlockOf } from '../words/title-block-of.ts';
import type { QuestionParts } from './question.ts';

/** *What fits?* for one gear: what can go in its place, proven by rolling, with everything else that was found. */
export function useWhatFits(job: Job, wheel: Wheel): QuestionParts {
  const store = useStoreOfPage();
  const answer = usePage((state) => state.answers[wheel.id]);
  const { unit } = usePage((state) => state.settings);
  const isExample = usePage((state) => state.isExample);
  const fits = useFits(job, wheel.id);
  const found = fits.report?.wheels.find((one) => one.id === wheel.id);
  const [picked, setPicked] = useState<SubstituteRow>();
  const all = found ? [...found.rows, ...found.traps] : [];
  const row = all.find((one) => one === picked) ?? found?.rows.find((one) => one.fits) ?? found?.rows[0];
  const [mate, setMate] = useState<string>();
  const mates = found?.need?.mates ?? [];
  const mateId = mates.find((one) => one.id === mate)?.id ?? tightestMate(row) ?? mates[0]?.id;
  const rolled = usePair(
    job,
    wheel.id,
    row ? mateId : undefined,
    row?.accept.find((one) => one.wheelId === wheel.id)?.spec,
  );
  const titleBlock = titleBlockOf(
    job,
    wheel,
    isExample ? 'An invented example' : job.invented ? 'Invented' : undefined,
  );
  const words = found && tellFits(found, job);
  return {
    drawing: rolled.pair ? (
      <>
        {mates.length > 1 && (
          <div className="fit-mates">
            {mates.map((one) => (
              <button
                key={one.id}
                type="button"
                aria-pressed={one.id === mateId}
                onClick={() => setMate(one.id)}
              >
                {`with ${nameWheel(job, one.id)}`}
              </button>
            ))}
          </div>
        )}
        <ProofSheet
          pair={rolled.pair}
          moduleMm={row?.pitch.moduleMm ?? 1}
          names={{
            driver: nameWheel(job, rolled.pair.driver.wheelId),
            driven: nameWheel(job, rolled.pair.driven.wheelId),
          }}
          isWorking={rolled.isWorking}
          unit={unit}
          titleBlock={{
            ...titleBlock,
            gear: row ? `${row.teeth} teeth for ${titleBlock.gear}` : titleBlock.gear,
          }}
        />
      </>
    ) : (
      <GearDrawing
        wheel={wheel}
        report={answer?.report}
        drawing={answer && { ...answer.drawing, gears: answer.drawing.gears.slice(0, 1), expected: [] }}
        asked={[]}
        isWorking={rolled.isWorking || fits.isWorking}
        unit={unit}
        titleBlock={titleBlock}
        onTouch={(slot) => {
          store.go({ question: 'what-is-it' });
          store.openAct(slot);
        }}
      />
    ),
    answer: (
      <FitsVerdict fits={fits} words={words}>
        {rolled.fail && <p className="verdict-more">{`No picture: ${rolled.fail.message}.`}</p>}
      </FitsVerdict>
    ),
    next: found ? <FitNext job={job} wheel={wheel} found={found} row={row} /> : <p>One moment …</p>,
    why: (
      <div className="why">
        {found && <FitRows found={found} chosen={row} onChoose={setPicked} />}
        <OwnPartsLine />
      </div>
    ),
  };
}

/** The mate against which a row is tightest: the one that decides. */
function tightestMate(row: SubstituteRow | undefined): string | undefined {
  const meshes = row?.meshes ?? [];
  return meshes.toSorted((a, b) => a.backlashMinMm - b.backlashMinMm)[0]?.mateId;
}
