import type { ReactNode } from 'react';
import { drawFreehand } from './freehand.ts';
import { hatchRectangle, type Rectangle } from './hatch.ts';
import type { Section } from './section-profile.ts';

export interface SectionViewProps {
  readonly section: Section;
  readonly kind: 'external' | 'internal' | 'rack';
  readonly referenceRadius: number;
  /** A bar's back, mm below its datum line */
  readonly back?: number | undefined;
  readonly helixAngleDeg: number;
  readonly isSplit: boolean;
  readonly pxPerMm: number;
}

/** The half section beside the front view, mm, y up: above the axis cut, below as seen. A bar is cut whole. */
export function SectionView(props: SectionViewProps): ReactNode {
  const { section, kind, referenceRadius, helixAngleDeg, pxPerMm } = props;
  const px = 1 / pxPerMm;
  const { faceWidth: face, length, tipRadius: tip, rootRadius: root, radius, hubRadius } = section;
  const bore = (section.boreDiameter ?? 0) / 2;
  const isRack = kind === 'rack';
  const isRing = kind === 'internal';
  const body: Rectangle = isRack
    ? { left: 0, right: face, low: props.back ?? root, high: root }
    : { left: 0, right: face, low: isRing ? root : bore, high: isRing ? radius : root };
  const hub: Rectangle | undefined =
    hubRadius === undefined || !(length > face)
      ? undefined
      : { left: face, right: length, low: bore, high: hubRadius };
  const faceLine = section.isFaceKnown ? 'line-known' : 'line-rival';
  const endLine = section.isLengthKnown ? 'line-known' : 'line-rival';
  const hubHigh = hub ? hub.high : 0;
  const reach = 10 * px;
  return (
    <>
      <path className="line-thin SectionView-hatch" d={hatchRectangle(body, 6 * px)} />
      {hub && <path className="line-thin SectionView-hatch" d={hatchRectangle(hub, 6 * px)} />}
      {isRack ? (
        <>
          <path className="line-known" d={`M${face} ${tip}H0V${body.low}H${face}M0 ${root}H${face}`} />
          <path className={faceLine} d={`M${face} ${tip}V${body.low}`} />
        </>
      ) : (
        <>
          {/* Above the axis: teeth are not hatched (ISO 2203). */}
          <path
            className="line-known"
            d={
              isRing
                ? `M${face} ${tip}H0V${radius}H${face}M0 ${root}H${face}`
                : `M${face} ${tip}H0V${bore}${bore > 0 ? `H${hub ? length : face}` : ''}M0 ${root}H${face}`
            }
          />
          <path
            className={faceLine}
            d={`M${face} ${isRing ? tip : hubHigh > 0 ? hubHigh : bore}V${isRing ? radius : tip}`}
          />
          {/* Below the axis: the outside. */}
          <path className="line-known" d={`M0 0V${-radius}H${face}`} />
          <path className={faceLine} d={`M${face} ${-hubHigh}V${-radius}`} />
          {hub && (
            <>
              <path
                className="line-known"
                d={`M${face} ${hub.high}H${length}M${face} ${-hub.high}H${length}`}
              />
              <path className={endLine} d={`M${length} ${hub.high}V${-hub.high}`} />
            </>
          )}
          {!isRing && helixAngleDeg !== 0 && (
            <path className="line-thin" d={slantLines(face, tip, helixAngleDeg)} />
          )}
          <path
            className="line-axis"
            d={`M${-reach} 0H${length + reach}M${-reach / 2} ${referenceRadius}H${face + reach / 2}${isRing ? '' : `M${-reach / 2} ${-referenceRadius}H${face + reach / 2}`}`}
          />
          {props.isSplit && !isRing && (
            <path
              className="line-thin"
              d={drawFreehand([face * 0.3, -tip], [face * 0.45, -hubHigh], 3 * px)}
            />
          )}
        </>
      )}
    </>
  );
}

/** Three narrow lines show which way the flanks slant (ISO 2203). Right hand: rising to the right seen from outside. */
function slantLines(face: number, tip: number, helixAngleDeg: number): string {
  const rise = face * Math.tan((helixAngleDeg * Math.PI) / 180);
  const step = tip * 0.1;
  return [-1, 0, 1]
    .map((k) => {
      const middle = -tip * 0.5 + k * step;
      return `M${face * 0.15} ${middle - rise * 0.35}L${face * 0.85} ${middle + rise * 0.35}`;
    })
    .join('');
}
