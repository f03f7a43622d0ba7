import type { ReactNode } from 'react';
import { isSmall, type SketchSubject } from '../sketch-subject.ts';
import { RoundArrow } from './Arrow.tsx';
import { OutsideJaws } from './Caliper.tsx';
import { drawPoints, type Point } from './draw-points.ts';
import { findSpanFaces, turnForSpan } from './find-span-faces.ts';
import { GearLine, GearPiece } from './GearLine.tsx';
import { PuttyStand } from './PuttyStand.tsx';
import { type GearPlace, makeSketchGear, placePoint, placeTeeth, type SketchGear } from './sketch-gear.ts';

/** Flat jaws over k teeth, from above; the first and last tooth are marked. */
export function SpanSketch({
  subject,
  teeth,
}: {
  readonly subject: SketchSubject;
  readonly teeth?: number | undefined;
}): ReactNode {
  const gear = makeSketchGear(subject);
  const z = gear.teeth;
  const k = Math.max(1, Math.min(teeth ?? 3, Math.floor(z / 2)));
  const small = isSmall(subject);
  const x = small ? 110 : 160;
  // The teeth between the jaws fill the picture; a gear too large for it is shown as a piece.
  const half = Math.PI * (k / z);
  const scale = Math.max(
    52 / gear.tip,
    Math.min(small ? 44 : 62, 26 * k) / (gear.tip * Math.sin(Math.min(half, 1.4))),
  );
  const radius = gear.tip * scale;
  const top = 92;
  // Tooth 0 is the first of the k, to the right of the top; the others follow to the left.
  const place: GearPlace = { x, y: top + radius, scale, turn: turnForSpan(gear, k) };
  const last = k - 1;
  const { left, right, touchY } = findSpanFaces(gear, place, k);
  const tip = Math.min(touchY + 9, place.y - gear.root * scale * Math.cos(half) + 2);
  const beyond = placeTeeth(gear, place, -1, 1).filter(([, y]) => y < tip + 2);
  const room = Math.min(...beyond.map(([at]) => at), right + 14) - right;
  const isWhole = radius <= 50;
  const shown = Math.min(z - 1, k + 4);
  return (
    <>
      {isWhole ? (
        <GearLine gear={gear} place={place} />
      ) : (
        <GearPiece gear={gear} place={place} first={Math.round(last / 2 - shown / 2)} count={shown} />
      )}
      <path className="act-sketch-hand" d={markTooth(gear, place, 0)} />
      {k > 1 && <path className="act-sketch-hand" d={markTooth(gear, place, last)} />}
      <OutsideJaws
        left={left}
        right={right}
        tip={tip}
        bar={30}
        blade={Math.max(2, 0.7 * room)}
        thinFrom={76}
      />
      <RoundArrow center={[x, 152]} radius={94} from={-1.72} to={-1.42} both />
      {small && <PuttyStand x={268} />}
    </>
  );
}

/** The ink mark on a tooth: its upper half, filled. */
export function markTooth(gear: SketchGear, place: GearPlace, tooth: number): string {
  const run = gear.points.slice(tooth * gear.perTooth, (tooth + 1) * gear.perTooth);
  const cut = (gear.root + gear.tip) / 2;
  const isUpper = (radius: number): boolean => radius > cut === gear.tip > gear.root;
  const upper: Point[] = [];
  run.forEach((point, i) => {
    const before = run[Math.max(0, i - 1)];
    const [from, to] = [Math.hypot(...before), Math.hypot(...point)];
    if (isUpper(from) !== isUpper(to)) {
      const t = (cut - from) / (to - from);
      upper.push([before[0] + t * (point[0] - before[0]), before[1] + t * (point[1] - before[1])]);
    }
    if (isUpper(to)) upper.push(point);
  });
  return drawPoints(
    upper.map((point) => placePoint(point, place)),
    true,
  );
}
