import { type ReactNode, useMemo } from 'react';
import { kindOf, type Wheel, type WheelDrawing, type WheelReport } from '../../index.ts';
import { isSplit } from '../state/is-split.ts';
import type { Slot } from '../state/slot.ts';
import { chooseDetailScale } from './choose-scale.ts';
import { DetailCircle } from './DetailCircle.tsx';
import { DimensionLabel } from './DimensionLabel.tsx';
import { FrontView } from './FrontView.tsx';
import { Jaws } from './Jaws.tsx';
import { layOut } from './lay-out.ts';
import { listDimensions, writeLength } from './list-dimensions.ts';
import { measureViews } from './measure-views.ts';
import { SectionView } from './SectionView.tsx';
import { findSection } from './section-profile.ts';
import { setJaws } from './set-jaws.ts';
import { TitleBlock, type TitleBlockProps } from './TitleBlock.tsx';
import { touchPoint } from './touch-point.ts';
import './DrawingSheet.css';

export interface DrawingSheetProps {
  readonly wheel: Wheel;
  readonly report?: WheelReport | undefined;
  readonly drawing: WheelDrawing;
  readonly asked: readonly Slot[];
  readonly active?: Slot | undefined;
  readonly typedMm?: number | undefined;
  readonly isWorking: boolean;
  readonly unit: 'mm' | 'in';
  readonly titleBlock: Omit<TitleBlockProps, 'scale' | 'unit' | 'isNarrow'>;
  readonly sentence: string;
  readonly width: number;
  readonly height: number;
  /** Absent on paper: dimensions are words there and no jaws stand */
  readonly onTouch?: ((slot: Slot) => void) | undefined;
  readonly mostPxPerMm?: number | undefined;
}

/** A detail this much larger than the drawing shows something new. */
const leastEnlarged = 2;

/** The drawing of a gear that something is known of, on a sheet of a known size. */
export function DrawingSheet(props: DrawingSheetProps): ReactNode {
  const { wheel, report, drawing, asked, active, typedMm, isWorking, unit, width, height, onTouch } = props;
  const kind = kindOf(wheel);
  const lead = drawing.gears[0];
  const section = useMemo(() => findSection(wheel, lead, kind), [wheel, lead, kind]);
  const dimensions = listDimensions({ wheel, report, drawing, asked, active, unit });
  const jawSlot = onTouch ? (active ?? asked[0]) : undefined;
  const views = measureViews(wheel, drawing, kind, section, dimensions);
  const setAt = (pxPerMm: number): ReturnType<typeof setJaws> =>
    jawSlot && setJaws({ wheel, drawing, asked, slot: jawSlot, typedMm, pxPerMm });
  const apart = setAt(1)?.place.view === 'front' ? setAt(1)?.apart : undefined;
  const hasNote = props.titleBlock.note !== undefined;
  const isNarrow = width < 560;
  const layOutWith = (hasDetail: boolean) =>
    layOut({
      ...views,
      width,
      height,
      hasDetail,
      titleHeight: isNarrow ? (hasNote ? 56 : 32) : hasNote ? 80 : 56,
      mostPxPerMm: props.mostPxPerMm,
    });
  const isApart = apart !== undefined && apart >= leastApart;
  const layout = layOutWith(isApart);
  const s = layout.scale.pxPerMm;
  const jaws = setAt(s);
  const detailScale =
    isApart && layout.detail
      ? chooseDetailScale((one) => (one * apart) / 2 <= (layout.detail?.radius ?? 0) * 0.7)
      : undefined;
  const hasDetail = detailScale !== undefined && detailScale.pxPerMm >= leastEnlarged * s;
  const { front } = layout;
  const spec = report?.candidates[lead.candidate]?.spec;
  const touch = jaws && touchPoint(jaws.place);
  return (
    <div className={isWorking ? 'DrawingSheet DrawingSheet-working' : 'DrawingSheet'} aria-busy={isWorking}>
      <svg
        className="DrawingSheet-lines"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={props.sentence}
      >
        {layout.section && (
          <g transform={`translate(${layout.section.x} ${layout.section.y}) scale(${s} ${-s})`}>
            <SectionView
              section={section}
              kind={kind}
              referenceRadius={lead.referenceDiameterMm / 2}
              back={kind === 'rack' ? -views.down : undefined}
              helixAngleDeg={spec?.helixAngleDeg ?? 0}
              isSplit={isSplit(wheel)}
              pxPerMm={s}
            />
          </g>
        )}
        <g className="DrawingSheet-dimensions">
          {layout.dimensions.map((one) => (
            <g key={one.key}>
              <path className="line-thin" d={one.lines} />
              <path className="DrawingSheet-arrow" d={one.arrows} />
            </g>
          ))}
        </g>
        <g transform={`translate(${front.x} ${front.y}) scale(${s} ${-s})`}>
          <FrontView wheel={wheel} drawing={drawing} kind={kind} section={section} pxPerMm={s} />
        </g>
        {jaws && (jaws.place.view === 'front' || layout.section) && (
          <g
            transform={`translate(${(jaws.place.view === 'front' ? front : layout.section)?.x} ${front.y}) scale(${s} ${-s})`}
          >
            <Jaws jaws={jaws} lead={lead} pxPerMm={s} />
          </g>
        )}
        {hasDetail && jaws && touch && layout.detail && (
          <>
            <circle
              className="line-thin"
              cx={front.x + touch[0] * s}
              cy={front.y - touch[1] * s}
              r={Math.max(10, (layout.detail.radius * s) / detailScale.pxPerMm)}
            />
            <text
              className="DrawingSheet-letter"
              x={front.x + touch[0] * s}
              y={front.y - touch[1] * s - Math.max(10, (layout.detail.radius * s) / detailScale.pxPerMm) - 6}
              textAnchor="middle"
            >
              A
            </text>
            <DetailCircle drawing={drawing} kind={kind} jaws={jaws} scale={detailScale} at={layout.detail} />
          </>
        )}
      </svg>
      {hasDetail && layout.detail && (
        <p
          className="DrawingSheet-caption"
          style={{
            left: layout.isNarrow
              ? layout.detail.x - layout.detail.radius
              : layout.detail.x + layout.detail.radius + 8,
            top: layout.isNarrow ? layout.detail.y - layout.detail.radius - 24 : layout.detail.y - 36,
          }}
        >
          A {detailScale.name}
          <span className={layout.isNarrow ? 'unseen' : 'DrawingSheet-apart'}>
            the two likeliest lie {writeLength(apart ?? 0, unit)} {unit === 'in' ? 'inch' : 'mm'} apart here
          </span>
        </p>
      )}
      {dimensions.map((one) => {
        const placed = layout.dimensions.find(({ key }) => key === one.key);
        return (
          placed && (
            <DimensionLabel
              key={one.key}
              dimension={one}
              box={placed.label}
              sheet={{ width, height }}
              onTouch={onTouch}
            />
          )
        );
      })}
      <TitleBlock {...props.titleBlock} scale={layout.scale.name} unit={unit} isNarrow={layout.isNarrow} />
    </div>
  );
}

/** Closer than this no drawing shows them apart, mm. */
const leastApart = 0.004;
