import { type ReactNode, useCallback, useMemo, useRef, useState } from 'react';
import type { ShapedPart } from '../../index.ts';
import { faceCut, type Pose, type PoseStep, stepPose } from './pose.ts';
import { holdPose } from './pose-holder.ts';
import { SolidCanvas } from './SolidCanvas.tsx';
import { tellSolid } from './tell-solid.ts';
import { useHand } from './use-hand.ts';

interface SolidStageProps {
  readonly part: Omit<ShapedPart, 'mesh'>;
  readonly unit: 'mm' | 'in';
  readonly onMissing: () => void;
  readonly onClose: () => void;
}

/** The solid on its sheet, and under it a button for everything that the hand and the keys can do with it. */
export function SolidStage({ part, unit, onMissing, onClose }: SolidStageProps): ReactNode {
  const view = useRef<HTMLElement>(null);
  const stage = useRef<HTMLDivElement>(null);
  const [sheet, setSheet] = useState<HTMLElement | null>(null);
  const [isCut, setCut] = useState(false);
  const [isTurning, setTurning] = useState(false);
  const [isPaper, setPaper] = useState(false);
  const home = part.form.kind === 'rack' ? rackHome : wheelHome;
  const pose = useMemo(() => holdPose(home), [home]);
  const stop = useCallback(() => setTurning(false), []);
  useHand(view, stage, pose, home, stop);

  const step = (name: string, way: PoseStep): ReactNode => (
    <button
      type="button"
      onClick={() => {
        stop();
        pose.set(stepPose(pose.get(), way, home));
      }}
    >
      {name}
    </button>
  );
  const told = tellSolid(part, isCut, unit);
  return (
    <section ref={view} className={isPaper ? 'solid solid-paper' : 'solid'} aria-label="The solid">
      <p className="solid-caption" aria-hidden="true">
        {told}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the keys turn what is focused here; each has a button too */}
      <div ref={stage} className="solid-stage" tabIndex={0} role="img" aria-label={told}>
        <div ref={setSheet} className="solid-sheet" />
        {sheet && (
          <SolidCanvas
            {...{ part, isCut, isTurning, pose, sheet, onMissing }}
            ground={isPaper ? 'paper' : 'film'}
          />
        )}
      </div>
      <div className="solid-acts">
        {step('Turn left', 'left')}
        {step('Turn right', 'right')}
        {step('Turn up', 'up')}
        {step('Turn down', 'down')}
        {step('Nearer', 'nearer')}
        {step('Farther', 'farther')}
        {step('As at first', 'home')}
        <button
          type="button"
          onClick={() => {
            if (!isCut) pose.set(faceCut(pose.get(), home));
            setCut(!isCut);
          }}
        >
          {isCut ? 'Whole' : 'Cut it open'}
        </button>
        <button type="button" onClick={() => setTurning((was) => !was)}>
          {isTurning ? 'Stop' : 'Turn slowly'}
        </button>
        <button type="button" onClick={() => setPaper((was) => !was)}>
          {isPaper ? 'On film' : 'On paper'}
        </button>
        <button type="button" className="solid-back" onClick={onClose}>
          Back to the drawing
        </button>
      </div>
    </section>
  );
}

/** A wheel from above and in front, turned a little so that a cut shows its depth. */
const wheelHome: Pose = { yaw: -Math.PI / 9, pitch: (40 * Math.PI) / 180, nearness: 1 };

/** A rack from the side of its end, which the cut then shows. */
const rackHome: Pose = { yaw: -Math.PI / 3, pitch: Math.PI / 6, nearness: 1 };
