import type { ReactNode } from 'react';
import { filingMargin, insideFrame, margin, papers } from './paper.ts';
import './PaperFrame.css';

export interface PaperFrameProps {
  readonly paper: 'a4' | 'letter';
  readonly label: string;
  readonly children: ReactNode;
}

/** A printed sheet: seen on paper only, and then alone. Frame after ISO 5457 with its centering marks. */
export function PaperFrame({ paper, label, children }: PaperFrameProps): ReactNode {
  const { width, height } = papers[paper];
  const inside = insideFrame(papers[paper]);
  return (
    <section
      className={`PaperFrame PaperFrame-${paper}`}
      aria-label={label}
      style={{ width: `${width}mm`, height: `${height}mm` }}
    >
      <svg className="PaperFrame-lines" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <rect
          className="PaperFrame-frame"
          x={filingMargin}
          y={margin}
          width={inside.width}
          height={inside.height}
        />
        <path
          className="PaperFrame-frame"
          d={`M${filingMargin + inside.width / 2} 5V${margin}M${filingMargin + inside.width / 2} ${height - 5}V${height - margin}M${filingMargin - 5} ${height / 2}H${filingMargin}M${width - 5} ${height / 2}H${width - margin}`}
        />
      </svg>
      <div
        className="PaperFrame-inside"
        style={{
          left: `${filingMargin}mm`,
          top: `${margin}mm`,
          width: `${inside.width}mm`,
          height: `${inside.height}mm`,
        }}
      >
        {children}
      </div>
    </section>
  );
}
