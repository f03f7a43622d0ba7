import '../drawing/GearDrawing.css';
import '../drawing/DrawingSheet.css';
import type { ReactNode } from 'react';
import { type CouponFace, couponForm } from '../../index.ts';
import { chooseScale } from '../drawing/choose-scale.ts';
import { TitleBlock } from '../drawing/TitleBlock.tsx';
import { tracePoints } from '../drawing/trace-path.ts';
import { useSize } from '../drawing/use-size.ts';
import { type CouponAct, tellCouponAct } from './coupon-acts.ts';

const edge = 32;

/** The coupon from above, with the place of the reading that is to be taken. */
export function CouponSheet(props: {
  readonly face: CouponFace;
  readonly act: CouponAct | undefined;
  readonly name: string;
}): ReactNode {
  const { face, act, name } = props;
  const [ref, { width, height }] = useSize<HTMLElement>({ width: 720, height: 560 });
  const isNarrow = width < 560;
  const { widths, lengths } = couponForm;
  const long = lengths.reduce((sum, one) => sum + one, 0);
  const tall = Math.max(...widths);
  const foot = 64;
  const scale = chooseScale((s) => long * s <= width - 2 * edge && tall * s <= height - foot - 2 * edge - 32);
  const s = scale.pxPerMm;
  const x = (width - long * s) / 2;
  const y = (height - foot) / 2;
  const loop = (points: ArrayLike<number>): string => `${tracePoints(points, 0, points.length / 2 - 1)}Z`;
  return (
    <figure className="GearDrawing" ref={ref}>
      <svg
        className="DrawingSheet-lines"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`The coupon from above: a stair of three widths with a notch and four holes. ${act ? `To be read: ${tellCouponAct(act).title}.` : ''}`}
      >
        <g transform={`translate(${x} ${y}) scale(${s} ${-s})`}>
          <path className="line-known" d={loop(face.outline)} />
          {face.holes.map((hole) => (
            <path key={hole[0]} className="line-known" d={loop(hole)} />
          ))}
          <path className="line-axis" d={`M${-8 / s} 0H${long + 8 / s}`} />
          {act && <path className="line-hand" d={markAct(act, s)} />}
        </g>
      </svg>
      <TitleBlock job={name} gear="coupon" scale={scale.name} unit="mm" isNarrow={isNarrow} />
    </figure>
  );
}

/** Where the jaws or shanks go: a line across with its ends, or a ring about the hole. */
function markAct({ of, nominalMm }: CouponAct, s: number): string {
  const { widths, lengths, bores, boreAt } = couponForm;
  const across = (at: number, low: number, high: number): string =>
    `M${at} ${low - 10 / s}V${high + 10 / s}M${at - 12 / s} ${low}h${24 / s}M${at - 12 / s} ${high}h${24 / s}`;
  const from = (k: number): number => lengths.slice(0, k).reduce((sum, one) => sum + one, 0);
  if (of === 'gap') {
    const at = from(1) + lengths[1] / 2;
    const half = widths[1] / 2;
    // A shank that rests on the flanks stands a little over the edge.
    return `${across(at, -half, half + 0.6)}M${at + 1} ${half - 0.4}A1 1 0 0 1 ${at - 1} ${half - 0.4}A1 1 0 0 1 ${at + 1} ${half - 0.4}`;
  }
  if (of === 'bore') {
    const k = bores.indexOf(nominalMm as (typeof bores)[number]);
    const at = from(2) + boreAt[Math.max(0, k)];
    const r = (nominalMm ?? 2) / 2 + 6 / s;
    return `M${at + r} 0A${r} ${r} 0 0 1 ${at - r} 0A${r} ${r} 0 0 1 ${at + r} 0`;
  }
  const k = Math.max(0, widths.indexOf(nominalMm as (typeof widths)[number]));
  // The notch is left out of the way.
  const at = from(k) + lengths[k] * (k === 1 ? 0.15 : k === 2 ? 0.9 : 0.5);
  return across(at, -widths[k] / 2, widths[k] / 2);
}
