import './proof-sheet.css';
import type { ReactNode } from 'react';
import type { PairDrawing } from '../../index.ts';
import { chooseDetailScale } from '../drawing/choose-scale.ts';
import { TitleBlock, type TitleBlockProps } from '../drawing/TitleBlock.tsx';
import { useSize } from '../drawing/use-size.ts';
import { DistanceLine } from './DistanceLine.tsx';
import { PairPicture } from './PairPicture.tsx';
import { PlayCurve } from './PlayCurve.tsx';
import { tellPair } from './tell-pair.ts';

/** So many modules about the spot are shown: a tooth and a half either way. */
const shownModules = 3.2;

/** The proof of a pair as a picture: enlarged where it is tightest, its play over a cycle, the distances at which it runs. */
export function ProofSheet(props: {
  readonly pair: PairDrawing;
  readonly moduleMm: number;
  readonly names: { readonly driver: string; readonly driven: string };
  readonly isWorking: boolean;
  readonly titleBlock: Omit<TitleBlockProps, 'scale' | 'unit' | 'isNarrow'>;
  readonly unit: 'mm' | 'in';
  /** Kept free at the foot of a narrow sheet for a button, px */
  readonly roomBelow?: number | undefined;
}): ReactNode {
  const { pair, moduleMm, names, isWorking, titleBlock, unit, roomBelow = 0 } = props;
  const [ref, { width, height }] = useSize<HTMLElement>({ width: 720, height: 560 });
  const isNarrow = width < 560;
  const foot = isNarrow ? (titleBlock.note === undefined ? 40 : 64) + roomBelow : 80;
  const layout = isNarrow ? layNarrow(width, height - foot) : layWide(width, height - foot);
  const { circle, curve, line } = layout;
  const scale = chooseDetailScale((s) => s * shownModules * moduleMm <= circle.radius);
  const words = tellPair(pair);
  return (
    <figure className={isWorking ? 'ProofSheet ProofSheet-working' : 'ProofSheet'} ref={ref}>
      <svg
        className="ProofSheet-lines"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${names.driver} and ${names.driven}, enlarged. ${words.verdict} ${words.spot} ${words.distance}`}
      >
        <PairPicture pair={pair} cx={circle.x} cy={circle.y} radius={circle.radius} pxPerMm={scale.pxPerMm} />
        <PlayCurve pair={pair} box={curve} />
        <DistanceLine pair={pair} x={line.x} y={line.y} width={line.width} />
      </svg>
      <p
        className="ProofSheet-words"
        style={{
          left: circle.x - circle.radius,
          top: circle.y + circle.radius + 4,
          width: 2 * circle.radius,
        }}
      >
        {words.spot}
      </p>
      <p
        className="ProofSheet-words"
        style={{ left: curve.x, top: curve.y + curve.height + 4, width: curve.width }}
      >
        {words.cycle}
      </p>
      <p className="ProofSheet-words" style={{ left: line.x, top: line.y + 12, width: line.width }}>
        {words.distance}
      </p>
      <TitleBlock {...titleBlock} scale={scale.name} unit={unit} isNarrow={isNarrow} />
    </figure>
  );
}

interface Layout {
  readonly circle: { readonly x: number; readonly y: number; readonly radius: number };
  readonly curve: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly line: { readonly x: number; readonly y: number; readonly width: number };
}

/** For the figures left of the curve, px. */
const markRoom = 48;

/** The picture left, the curve and the distances right of it, one above the other. */
function layWide(width: number, height: number): Layout {
  const radius = Math.max(80, Math.min((width - 72 - markRoom) / 4, (height - 104) / 2));
  const y = Math.max(radius + 24, (height - 56) / 2);
  const x = 48 + 2 * radius + markRoom;
  const wide = width - x - 24;
  const tall = Math.max(80, radius * 1.2);
  return {
    circle: { x: 24 + radius, y, radius },
    curve: { x, y: y - radius + 8, width: wide, height: tall },
    line: { x: x - markRoom, y: y - radius + tall + 104, width: wide + markRoom },
  };
}

/** Picture and curve side by side, the distances under both. */
function layNarrow(width: number, height: number): Layout {
  const radius = Math.max(56, Math.min((width - 32) / 4, (height - 172) / 2));
  const x = 2 * radius + 16 + markRoom;
  return {
    circle: { x: 8 + radius, y: 8 + radius, radius },
    curve: { x, y: 20, width: width - x - 12, height: 2 * radius - 24 },
    line: { x: 12, y: 2 * radius + 104, width: width - 24 },
  };
}
