import './train-sheet.css';
import { type ReactNode, useMemo } from 'react';
import type { Job, TrainDrawing, Wheel } from '../../index.ts';
import { chooseScale } from '../drawing/choose-scale.ts';
import { chooseMissing } from '../drawing/missing-teeth.ts';
import { TitleBlock } from '../drawing/TitleBlock.tsx';
import { useSize } from '../drawing/use-size.ts';
import { labelRoom, placeLabels } from './place-labels.ts';
import { TrainWheel } from './TrainWheel.tsx';
import { tellPost } from './tell-train.ts';
import { type Motion, useTurning } from './use-turning.ts';

export interface TrainSheetProps {
  readonly job: Job;
  readonly drawing: TrainDrawing;
  /** Gears of which it is known what they are: their line is continuous */
  readonly known: ReadonlySet<string>;
  readonly isWorking: boolean;
  readonly unit: 'mm' | 'in';
  /** What is said of the whole drawing to those who don't see it */
  readonly sentence: string;
  readonly note?: string | undefined;
  /** Gears that are new here: they stand in the line of the hand */
  readonly changed?: ReadonlySet<string> | undefined;
  readonly onWheel?: ((wheelId: string) => void) | undefined;
  readonly onPost?: ((wheelId: string) => void) | undefined;
}

/** A drawing that is turned keeps this much of the sheet under it for the button. */
const foot = 56;

/** The whole train from above, to scale; touch a gear to work on it; it turns while that is asked. */
export function TrainSheet(props: TrainSheetProps): ReactNode {
  const { job, drawing, known, isWorking, unit, sentence, note, changed, onWheel, onPost } = props;
  const [ref, { width, height }] = useSize<HTMLElement>({ width: 720, height: 560 });
  const isNarrow = width < 560;
  const title = (isNarrow ? 32 : 0) + (note === undefined ? 0 : 24);
  const { box } = drawing;
  const { inRows, scale, middle } = layOut(box, width, height - foot - title, isNarrow);
  const s = scale.pxPerMm;
  const toX = (x: number): number => middle.x + (x - (box.left + box.right) / 2) * s;
  const toY = (y: number): number => middle.y - (y - (box.bottom + box.top) / 2) * s;
  // Small ones stand before large ones: on one post the larger would hide the smaller.
  const wheels = useMemo(() => drawing.wheels.toSorted((a, b) => sizeOf(b) - sizeOf(a)), [drawing]);
  const motions = useMemo(() => listMotions(drawing, s), [drawing, s]);
  const turning = useTurning(ref, motions, stepOf(drawing));
  const isStill = useIsStill();
  const labels = placeLabels(
    drawing.posts.map((post) => ({ id: post.id, x: toX(post.x), y: toY(post.y) })),
    { width, height: height - foot - title },
    inRows,
  );
  const jobWheels = new Map((job.wheels ?? []).map((wheel) => [wheel.id, wheel]));
  const goesRound = motions.some((one) => one.rounds !== 0);
  return (
    <figure className={isWorking ? 'TrainSheet TrainSheet-working' : 'TrainSheet'} ref={ref}>
      <div role="img" aria-label={sentence} className="TrainSheet-drawing">
        <svg className="TrainSheet-lines" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          {drawing.meshes.flatMap((mesh) =>
            mesh.belt.map(([x0, y0, x1, y1]) => (
              <path
                key={`${mesh.driver} ${mesh.driven} ${x0} ${y0}`}
                className="line-known"
                d={`M${toX(x0)} ${toY(y0)}L${toX(x1)} ${toY(y1)}`}
              />
            )),
          )}
        </svg>
        {wheels.map((wheel) => (
          <TrainWheel
            key={wheel.id}
            wheel={wheel}
            x={toX(wheel.x)}
            y={toY(wheel.y)}
            pxPerMm={s}
            gone={goneOf(jobWheels.get(wheel.id), wheel)}
            isKnown={known.has(wheel.id) && wheel.isKnown}
            isLost={jobWheels.get(wheel.id)?.state === 'lost'}
            isChanged={changed?.has(wheel.id) ?? false}
          />
        ))}
        <svg className="TrainSheet-lines" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          {wheels.map((wheel) => (
            <PitchLine key={wheel.id} wheel={wheel} x={toX(wheel.x)} y={toY(wheel.y)} s={s} />
          ))}
          {drawing.posts.map((post) => (
            <path
              key={post.id}
              className="line-thin"
              d={`M${toX(post.x) - 8} ${toY(post.y)}h16M${toX(post.x)} ${toY(post.y) - 8}v16`}
            />
          ))}
          {labels.map(({ id, leader: [x0, y0, x1, y1] }) => (
            <g key={id}>
              <path className="line-thin" d={`M${x0} ${y0}L${x1} ${y1}`} />
              <circle className="TrainSheet-dot" cx={x1} cy={y1} r="3" />
            </g>
          ))}
        </svg>
      </div>
      {onWheel &&
        wheels.map((wheel) => {
          const r = Math.max(24, wheel.reach * s);
          const name = jobWheels.get(wheel.id)?.name ?? wheel.id;
          return (
            <button
              key={wheel.id}
              type="button"
              className="TrainSheet-touch"
              aria-label={`Work on ${name}`}
              title={name}
              style={{ left: toX(wheel.x) - r, top: toY(wheel.y) - r, width: 2 * r, height: 2 * r }}
              onClick={() => onWheel(wheel.id)}
            />
          );
        })}
      {labels.map(({ id, box: at }) => {
        const post = drawing.posts.find((one) => one.id === id);
        if (!post) return null;
        const words = tellPost(post, drawing, job);
        const style = { left: at.x, top: at.y, width: at.width, height: at.height };
        const inside = (
          <>
            <span className="TrainSheet-name">{words.name}</span>
            <span className="TrainSheet-speed">{words.speed}</span>
          </>
        );
        const first = post.wheels[0];
        return onPost && first !== undefined ? (
          <button
            key={id}
            type="button"
            className="TrainSheet-label"
            style={style}
            onClick={() => onPost(first)}
          >
            {inside}
          </button>
        ) : (
          <p key={id} className="TrainSheet-label" style={style}>
            {inside}
          </p>
        );
      })}
      {turning.isTurning && (
        <button
          type="button"
          className="TrainSheet-stop"
          aria-label="Stop the gears"
          onPointerDown={turning.stop}
          onClick={turning.stop}
        />
      )}
      {goesRound && (
        <div className="TrainSheet-turn" style={{ bottom: (isNarrow ? title : 0) + 4 }}>
          {isStill ? (
            <button type="button" onClick={turning.step}>
              Turn by one tooth
            </button>
          ) : (
            <button
              type="button"
              aria-pressed={turning.isTurning}
              onClick={turning.isTurning ? turning.stop : turning.start}
            >
              {turning.isTurning ? 'Stop' : 'Turn it'}
            </button>
          )}
          <span>{turning.isTurning ? tellSlowness(drawing, turning.inputTurnsASecond) : ''}</span>
        </div>
      )}
      <TitleBlock
        job={job.title ?? 'Untitled'}
        gear="gear train"
        note={note}
        scale={scale.name}
        unit={unit}
        isNarrow={isNarrow}
      />
    </figure>
  );
}

type DrawnWheel = TrainDrawing['wheels'][number];

/** The larger of two drawings: labels beside it, or over and under it; on a narrow sheet always the latter. */
function layOut(box: TrainDrawing['box'], width: number, height: number, isNarrow: boolean) {
  const [beside, rows] = [false, true].map((inRows) => {
    const room = labelRoom(width, inRows);
    const usable = { width: width - 2 * room.x, height: height - 2 * room.y };
    const scale = chooseScale(
      (s) => (box.right - box.left) * s <= usable.width && (box.top - box.bottom) * s <= usable.height,
    );
    return { inRows, scale, middle: { x: width / 2, y: room.y + usable.height / 2 } };
  });
  return isNarrow || rows.scale.pxPerMm > beside.scale.pxPerMm ? rows : beside;
}

/** The pitch circle at which a gear runs, or the line of a bar: long-dashed dotted (ISO 2203). */
function PitchLine(props: {
  readonly wheel: DrawnWheel;
  readonly x: number;
  readonly y: number;
  readonly s: number;
}): ReactNode {
  const { wheel, x, y, s } = props;
  if (wheel.form === 'pulley') return null;
  if (wheel.form === 'rack' || wheel.form === 'worm') {
    const half = wheel.reach * s + (wheel.form === 'worm' ? 24 : 8);
    const [ux, uy] = [Math.cos(wheel.along) * half, -Math.sin(wheel.along) * half];
    return <path className="line-axis" d={`M${x - ux} ${y - uy}L${x + ux} ${y + uy}`} />;
  }
  return <circle className="line-axis" cx={x} cy={y} r={wheel.pitchRadius * s} />;
}

function goneOf(wheel: Wheel | undefined, { teeth }: DrawnWheel): ReadonlySet<number> {
  return wheel && teeth !== undefined ? chooseMissing(wheel, teeth) : new Set();
}

/** What every wheel does for one turn of the input, as the browser moves it. Screen angles run clockwise. */
function listMotions(drawing: TrainDrawing, s: number): Motion[] {
  return drawing.wheels.map((wheel): Motion => {
    if (wheel.form === 'rack' || wheel.form === 'worm') {
      const pitch = Math.PI * (wheel.moduleMm ?? 1);
      const moved =
        wheel.form === 'rack' ? (wheel.travel ?? 0) : (wheel.turns ?? 0) * (wheel.teeth ?? 1) * pitch;
      const sign = Math.sign(moved);
      return {
        id: wheel.id,
        rest: 'translateX(0)',
        after: `translateX(${sign * pitch * s}px)`,
        rounds: Math.abs(moved) / pitch,
      };
    }
    const turns = wheel.turns ?? 0;
    const at = (-wheel.phase * 180) / Math.PI;
    return {
      id: wheel.id,
      rest: `rotate(${at}deg)`,
      after: `rotate(${at - 360 * Math.sign(turns)}deg)`,
      rounds: Math.abs(turns),
    };
  });
}

/** Turns of the input that move the fastest wheel on by one tooth. */
function stepOf(drawing: TrainDrawing): number {
  const fastest = drawing.wheels.toSorted((a, b) => Math.abs(b.turns ?? 0) - Math.abs(a.turns ?? 0))[0];
  const turns = Math.abs(fastest?.turns ?? 0);
  return turns > 0 ? 1 / ((fastest?.teeth ?? 20) * turns) : 0;
}

/** A bar and a screw are as small as they are across. */
function sizeOf(wheel: DrawnWheel): number {
  return wheel.form === 'rack' ? wheel.rootRadius : wheel.reach;
}

/** How much slower than the machine, where its speed is known. */
function tellSlowness(drawing: TrainDrawing, inputTurnsASecond: number): string {
  const wheel = drawing.wheels.find((one) => one.rpm && one.turns);
  if (!wheel?.rpm || !wheel.turns) return 'Touch the drawing to stop.';
  const times = Math.abs(wheel.rpm / wheel.turns / 60) / inputTurnsASecond;
  if (times < 1.2) return 'Touch the drawing to stop.';
  return `${times < 10 ? times.toFixed(1) : Math.round(times)} times slower than the machine. Touch to stop.`;
}

function useIsStill(): boolean {
  return useMemo(() => window.matchMedia('(prefers-reduced-motion: reduce)').matches, []);
}
