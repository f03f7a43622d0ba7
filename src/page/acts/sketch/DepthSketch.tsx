import type { ReactNode } from 'react';
import type { SketchSubject } from '../sketch-subject.ts';
import { DepthRod } from './Caliper.tsx';
import { GearPiece } from './GearLine.tsx';
import { RackPiece, rackSizes } from './RackPiece.tsx';
import { makeSketchGear, placeTeeth } from './sketch-gear.ts';

/** The caliper's rod in one space, its end across two tips; a gear as a piece, a bar as a piece. */
export function DepthSketch({ subject }: { readonly subject: SketchSubject }): ReactNode {
  if (subject.kind === 'rack') {
    const pitch = 58;
    const { depth } = rackSizes(pitch);
    return (
      <>
        <RackPiece x={160 - 2 * pitch} tips={84} pitch={pitch} teeth={4} />
        <DepthRod x={160} shoulder={84} bottom={84 + depth} halfWidth={42} />
      </>
    );
  }
  const gear = makeSketchGear(subject);
  const z = gear.teeth;
  const isInside = subject.kind === 'internal';
  const scale = 58 / ((2 * Math.PI * gear.tip) / z);
  const turn = (isInside ? -Math.PI / 2 : Math.PI / 2) - Math.PI / z;
  const y = isInside
    ? 84 - gear.tip * scale * Math.cos(Math.PI / z)
    : 84 + gear.tip * scale * Math.cos(Math.PI / z);
  const place = { x: 160, y, scale, turn };
  const two = placeTeeth(gear, place, 0, 2);
  const shoulder = Math.min(...two.map(([, at]) => at));
  const space = two.filter(([at]) => Math.abs(at - 160) < 6).map(([, at]) => at);
  const bottom = isInside ? y + gear.root * scale : Math.max(...space, y - gear.root * scale);
  const room = (0.25 * 2 * Math.PI * gear.tip * scale) / z;
  return (
    <>
      <GearPiece gear={gear} place={place} first={-1} count={Math.min(4, z - 1)} />
      <DepthRod
        x={160}
        shoulder={isInside ? 84 : shoulder}
        bottom={bottom}
        halfWidth={42}
        rod={Math.min(3, room / 2)}
      />
    </>
  );
}
