import type { ReactNode } from 'react';
import { pxPerMmAtTrueSize } from '../drawing/choose-scale.ts';
import { DrawingSheet } from '../drawing/DrawingSheet.tsx';
import type { GearDrawingProps } from '../drawing/GearDrawing.tsx';
import { tellFocus } from '../drawing/tell-focus.ts';
import { BlankSheet } from './BlankSheet.tsx';
import { CheckBar } from './CheckBar.tsx';
import { PaperFrame } from './PaperFrame.tsx';
import { insideFrame, papers } from './paper.ts';
import './PrintSheet.css';

export type PrintSheetProps = Omit<GearDrawingProps, 'onTouch' | 'active' | 'typedMm' | 'isWorking'> & {
  readonly paper: 'a4' | 'letter';
};

/** The check bar's strip, mm. */
const stripHeight = 16;

/** The drawing alone on paper, at a standard scale that its check bar proves. Before there is one: the blank sheet. */
export function PrintSheet(props: PrintSheetProps): ReactNode {
  const { paper, drawing, report } = props;
  if (!drawing || drawing.gears.length === 0) return <BlankSheet paper={paper} />;
  const inside = insideFrame(papers[paper]);
  return (
    <PaperFrame paper={paper} label={`${props.titleBlock.gear} on paper`}>
      <div className="PrintSheet-strip" style={{ height: `${stripHeight}mm` }}>
        <CheckBar />
      </div>
      <div className="PrintSheet-drawing" style={{ top: `${stripHeight}mm` }}>
        <DrawingSheet
          {...props}
          drawing={drawing}
          isWorking={false}
          sentence={report ? tellFocus(undefined, report) : 'The gear from the front and from the side'}
          width={inside.width * pxPerMmAtTrueSize}
          height={(inside.height - stripHeight) * pxPerMmAtTrueSize}
        />
      </div>
    </PaperFrame>
  );
}
