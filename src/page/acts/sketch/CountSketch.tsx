import type { ReactNode } from 'react';
import type { SketchSubject } from '../sketch-subject.ts';
import { Arrow, RoundArrow } from './Arrow.tsx';
import { GearLine, rimRadius } from './GearLine.tsx';
import { RackPiece, rackSizes } from './RackPiece.tsx';
import { markTooth } from './SpanSketch.tsx';
import { type GearPlace, makeSketchGear } from './sketch-gear.ts';

/** One tooth inked, and the way round; its first neighbors numbered. */
export function CountSketch({ subject }: { readonly subject: SketchSubject }): ReactNode {
  if (subject.kind === 'rack') {
    const pitch = 44;
    const { depth } = rackSizes(pitch);
    return (
      <>
        <RackPiece x={28} tips={88} pitch={pitch} teeth={6} />
        {[1, 2, 3].map((number) => (
          <text key={number} className="act-sketch-word" x={28 + (number - 0.5) * pitch} y={78}>
            {number}
          </text>
        ))}
        <Arrow from={[28 + 3.2 * pitch, 72]} to={[28 + 5.6 * pitch, 72]} hand />
        <path className="line-axis" d={`M16 ${88 + depth / 2}H304`} />
      </>
    );
  }
  // The count is what is asked: the picture always has the same few teeth, so that it can't give it away.
  const plain: SketchSubject = { kind: subject.kind, isSplit: false, isHelical: false, teeth: 16 };
  const gear = makeSketchGear(plain);
  const isInside = subject.kind === 'internal';
  const outer = isInside ? rimRadius(gear) : gear.tip;
  const place: GearPlace = { x: 160, y: 100, scale: (isInside ? 92 : 70) / outer, turn: Math.PI / 2 };
  const around = isInside ? gear.tip * place.scale - 12 : 84;
  const step = (2 * Math.PI) / gear.teeth;
  return (
    <>
      <GearLine gear={gear} place={place} />
      <path className="act-sketch-hand" d={markTooth(gear, place, 0)} />
      {[1, 2, 3].map((number) => {
        const angle = -Math.PI / 2 + (number - 1) * step;
        return (
          <text
            key={number}
            className="act-sketch-word"
            x={160 + around * Math.cos(angle)}
            y={100 + around * Math.sin(angle) + 6}
          >
            {number}
          </text>
        );
      })}
      <RoundArrow center={[160, 100]} radius={around} from={-Math.PI / 2 + 3 * step} to={1.2 * Math.PI} />
    </>
  );
}
