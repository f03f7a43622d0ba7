import type { ReactNode } from 'react';
import { isOdd, isSmall, type SketchSubject } from '../sketch-subject.ts';
import { Arrow } from './Arrow.tsx';
import { OutsideJaws } from './Caliper.tsx';
import { drawCircle, drawPoints, type Point } from './draw-points.ts';
import { GearLine } from './GearLine.tsx';
import { JawsFromAbove } from './JawsFromAbove.tsx';
import { PuttyStand } from './PuttyStand.tsx';
import { findPinRadius } from './rest-pin.ts';
import { type GearPlace, makeSketchGear, placeTeeth } from './sketch-gear.ts';

const middle = 84;

/** Across the tips of an external gear: one picture, or two on an odd count, settled and rocked. */
export function OutsideSketch({ subject }: { readonly subject: SketchSubject }): ReactNode {
  const gear = makeSketchGear(subject);
  const z = gear.teeth;
  if (!isOdd(subject)) {
    const small = isSmall(subject);
    const place = { x: small ? 112 : 160, y: middle, scale: 58 / gear.tip, turn: 0 };
    return (
      <>
        <GearLine gear={gear} place={place} />
        <ClosedJaws points={placeTeeth(gear, place)} />
        {small && <PuttyStand x={266} />}
      </>
    );
  }
  // Teeth too fine to show which of them the jaws touch are drawn as fewer.
  const shown = z <= 21 ? gear : makeSketchGear({ ...subject, outline: undefined, teeth: 15 });
  const scale = 44 / shown.tip;
  const way = (x: number, turn: number): GearPlace => ({ x, y: 78, scale, turn });
  const ways = [
    { name: 'settled', place: way(80, 0) },
    // Turned by a quarter of a pitch: one tip at each side, both as high.
    { name: 'rocked', place: way(240, Math.PI / (2 * shown.teeth)) },
  ];
  return (
    <>
      {ways.map(({ name, place }) => {
        const points = placeTeeth(shown, place);
        return (
          <g key={name}>
            <GearLine gear={shown} place={place} />
            <ClosedJaws points={points} bar={148} width={20} />
            <path className="act-sketch-hand" d={listTouches(points, place.x).join('')} />
            <text className="act-sketch-word" x={place.x} y={190}>
              {name}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** A dot at each tip that a jaw touches. */
function listTouches(points: readonly Point[], middle: number): string[] {
  return [-1, 1].flatMap((side) => {
    const out = Math.max(...points.map(([x]) => side * (x - middle)));
    const touching = points.filter(([x]) => side * (x - middle) > out - 0.15);
    const tips: Point[] = [];
    for (const point of touching) {
      if (tips.every((tip) => Math.abs(tip[1] - point[1]) > 8)) tips.push(point);
    }
    return tips.map(([, y]) => drawCircle([middle + side * out, y], 4));
  });
}

/** The thin ends of the jaws at the bottoms of two spaces, end on, and the same from the side. */
export function RootSketch({ subject }: { readonly subject: SketchSubject }): ReactNode {
  const gear = makeSketchGear(subject);
  const z = gear.teeth;
  const off = isOdd(subject) ? Math.PI / (2 * z) : 0;
  const place: GearPlace = { x: 104, y: 96, scale: 72 / gear.tip, turn: off + Math.PI / z };
  const reach = gear.root * Math.cos(off) * place.scale;
  const y = place.y - gear.root * Math.sin(off) * place.scale;
  // As thin as the space, so that the picture shows the end of a jaw in it and not its make.
  const half = Math.min(4, (0.16 * 2 * Math.PI * gear.tip * place.scale) / z);
  const jaw = (side: number): Point[] => [
    [place.x + side * reach, y - half * 0.6],
    [place.x + side * 92, y - half],
    [place.x + side * 92, y + half],
    [place.x + side * reach, y + half * 0.6],
  ];
  return (
    <>
      <GearLine gear={gear} place={place} />
      <path className="line-axis" d={`M${place.x - 96} ${place.y}H${place.x + 96}`} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(-1), true)} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(1), true)} />
      <JawsFromAbove x={264} isInside={false} />
    </>
  );
}

/** Two pins in opposite spaces, the jaws over both. */
export function PinsSketch({
  subject,
  pinMm,
}: {
  readonly subject: SketchSubject;
  readonly pinMm?: number | undefined;
}): ReactNode {
  const gear = makeSketchGear(subject);
  const z = gear.teeth;
  const off = isOdd(subject) ? Math.PI / (2 * z) : 0;
  const isScaled = subject.outline !== undefined || subject.tipDiameterMm !== undefined;
  const pitch = (2 * Math.PI * gear.tip) / (z + 2);
  const pin = Math.min(isScaled && pinMm ? pinMm / 2 : 0.27 * pitch, 0.45 * pitch);
  const at = findPinRadius(gear, pin);
  const scale = 62 / (at + pin);
  const small = isSmall(subject);
  const place: GearPlace = { x: small ? 112 : 160, y: middle, scale, turn: off + Math.PI / z };
  const centers = [1, -1].map(
    (side): Point => [place.x + side * at * Math.cos(off) * scale, place.y - at * Math.sin(off) * scale],
  );
  return (
    <>
      <GearLine gear={gear} place={place} />
      {centers.map((center) => (
        <path key={center[0]} className="line-hand act-sketch-metal" d={drawCircle(center, pin * scale)} />
      ))}
      <OutsideJaws
        left={centers[1][0] - pin * scale}
        right={centers[0][0] + pin * scale}
        tip={18}
        bar={162}
      />
      {small && <PuttyStand x={272} />}
    </>
  );
}

/** Jaws closed on whatever stands out farthest to the left and right. */
function ClosedJaws(props: {
  readonly points: readonly Point[];
  readonly bar?: number | undefined;
  readonly width?: number | undefined;
}): ReactNode {
  const { points, bar = 162, width = 26 } = props;
  const across = points.map(([x]) => x);
  const left = Math.min(...across);
  const right = Math.max(...across);
  const hasRoom = width >= 26;
  return (
    <>
      <OutsideJaws left={left} right={right} tip={14} bar={bar} width={width} />
      {hasRoom && <Arrow from={[left - 54, bar - 34]} to={[left - 28, bar - 34]} hand />}
      {hasRoom && <Arrow from={[right + 54, bar - 34]} to={[right + 28, bar - 34]} hand />}
    </>
  );
}
