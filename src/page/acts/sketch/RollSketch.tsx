import type { ReactNode } from 'react';
import { Arrow, RoundArrow } from './Arrow.tsx';
import { drawBox, drawCircle } from './draw-points.ts';
import { GearLine } from './GearLine.tsx';
import { makeSketchGear } from './sketch-gear.ts';

const lean = (20 * Math.PI) / 180;

/** An inked gear rolled along a ruler, and the lines it leaves, with the angle that is asked. */
export function HelixSketch(): ReactNode {
  const height = 44;
  const shift = height * Math.tan(lean);
  const rolled = [0, 1, 2, 3, 4, 5, 6].map((i) => 96 + i * 30);
  const gear = { left: 30, right: 94, top: 26, bottom: 70 };
  const slants = [0, 1, 2, 3, 4].map((i) => gear.left + 6 + i * 12);
  return (
    <>
      <path
        className="line-known act-sketch-metal"
        d={drawBox(gear.left, gear.top, gear.right, gear.bottom)}
      />
      <path
        className="line-thin"
        d={slants
          .map((x) => `M${x - 4} ${gear.bottom}L${Math.min(gear.right, x - 4 + shift)} ${gear.top}`)
          .join('')}
      />
      <path className="line-axis" d={`M62 12V84`} />
      <Arrow from={[110, 48]} to={[190, 48]} hand />
      <path className="line-thin" d={drawBox(16, 96, 304, 168)} />
      <path className="line-known" d={rolled.map((x) => `M${x} 156L${x + shift} 112`).join('')} />
      <path className="line-hand" d={`M186 156V104`} strokeDasharray="8 3" />
      <RoundArrow center={[186, 156]} radius={60} from={-Math.PI / 2 - 0.02} to={-Math.PI / 2 + lean} />
      <path className="line-known act-sketch-metal" d={drawBox(16, 168, 304, 186)} />
      <path
        className="line-thin"
        d={Array.from({ length: 27 }, (_, i) => `M${28 + i * 10} 168v${i % 5 === 0 ? 10 : 5}`).join('')}
      />
    </>
  );
}

/** A trial gear, marked with a hole, turned by hand against its mate. */
export function RollSketch(): ReactNode {
  const trial = makeSketchGear({ kind: 'external', teeth: 14, isSplit: false, isHelical: false });
  const mate = makeSketchGear({ kind: 'external', teeth: 22, isSplit: false, isHelical: false });
  const scale = 7.6;
  const distance = 18 * scale;
  const left = 92;
  const right = left + distance;
  return (
    <>
      <GearLine gear={trial} place={{ x: left, y: 104, scale, turn: 0 }} />
      <GearLine gear={mate} place={{ x: right, y: 104, scale, turn: Math.PI - Math.PI / 22 }} />
      <path className="line-known" d={drawCircle([left, 104 - 34], 5)} />
      <RoundArrow center={[left, 104]} radius={78} from={-2.5} to={-0.95} />
      <RoundArrow center={[right, 104]} radius={52} from={-0.8} to={-2.4} />
    </>
  );
}
