import type { ReactNode } from 'react';
import type { SketchSubject } from '../sketch-subject.ts';
import { Arrow } from './Arrow.tsx';
import { DepthRod, OutsideJaws } from './Caliper.tsx';
import { drawBox } from './draw-points.ts';
import { listToothEdges } from './tooth-edges.ts';

/** What is measured along the gear's hole or across its hub, the gear seen from the side. */
export type SideMeasure = 'face-width' | 'hub-diameter' | 'overall-length' | 'face-offset';

/** The gear from the side: toothed rim, a hub, the axis; the jaws or the rod where they belong. */
export function SideSketch({
  subject,
  at,
}: {
  readonly subject: SketchSubject;
  readonly at: SideMeasure;
}): ReactNode {
  const teeth = subject.teeth ?? 18;
  if (at === 'face-offset') {
    // Lower hub up, so that the bar stands on it.
    return (
      <>
        <path className="line-known" d={drawBox(80, 108, 240, 152)} />
        <path
          className="line-thin"
          d={listToothEdges(teeth, 80)
            .map((x) => `M${160 + x} 108V152`)
            .join('')}
        />
        <path className="line-known" d={drawBox(128, 72, 192, 108)} />
        <path className="line-axis" d="M160 56V168" />
        <path className="line-thin" d="M48 152H272" />
        <DepthRod x={212} shoulder={72} bottom={108} halfWidth={42} />
      </>
    );
  }
  if (at === 'hub-diameter') {
    return (
      <>
        <path className="line-known" d={drawBox(88, 120, 232, 164)} />
        <path
          className="line-thin"
          d={listToothEdges(teeth, 72)
            .map((x) => `M${160 + x} 120V164`)
            .join('')}
        />
        <path className="line-known" d={drawBox(128, 76, 192, 120)} />
        <path className="line-axis" d="M160 64V178" />
        <OutsideJaws left={128} right={192} tip={112} bar={34} />
        <Arrow from={[56, 64]} to={[92, 64]} hand />
        <Arrow from={[264, 64]} to={[228, 64]} hand />
      </>
    );
  }
  const rim = { left: 128, right: 172 };
  const hub = 212;
  const whole = at === 'overall-length';
  return (
    <>
      <path className="line-known" d={drawBox(rim.left, 22, rim.right, 142)} />
      <path
        className="line-thin"
        d={listToothEdges(teeth, 60)
          .map((y) => `M${rim.left} ${82 + y}H${rim.right}`)
          .join('')}
      />
      <path className="line-known" d={drawBox(rim.right, 58, hub, 106)} />
      <path className="line-axis" d="M100 82H240" />
      {whole ? (
        <OutsideJaws left={rim.left} right={hub} tip={66} bar={166} thinFrom={90} />
      ) : (
        <OutsideJaws left={rim.left} right={rim.right} tip={112} bar={166} thinFrom={128} />
      )}
      {whole && <Arrow from={[284, 146]} to={[248, 146]} hand />}
      {whole && <Arrow from={[56, 146]} to={[92, 146]} hand />}
    </>
  );
}
