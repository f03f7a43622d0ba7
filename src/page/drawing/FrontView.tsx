import { type ReactNode, useMemo } from 'react';
import type { DrawnGear, Wheel, WheelDrawing } from '../../index.ts';
import { isSplit } from '../state/is-split.ts';
import { drawFreehand } from './freehand.ts';
import { chooseMissing } from './missing-teeth.ts';
import type { Section } from './section-profile.ts';
import { type GearPaths, type RackPiece, traceGear, traceRack } from './trace-path.ts';
import { useBefore } from './use-before.ts';

export interface FrontViewProps {
  readonly wheel: Wheel;
  readonly drawing: WheelDrawing;
  readonly kind: 'external' | 'internal' | 'rack';
  readonly section: Section;
  readonly pxPerMm: number;
}

/** From this share on the leading gear is drawn as known; below, it is one of many. */
const leadsFrom = 0.2;
/** The faintest rival that is still seen. */
const faintest = 0.3;

/** A rival's opacity: as strong as it is likely beside the leading gear. */
export function strengthOf(gear: DrawnGear, lead: DrawnGear): number {
  return Math.max(faintest, Math.min(1, Math.sqrt(gear.share / Math.max(lead.share, 1e-9))));
}

/** The gear from the front, mm, y up: what it is in the wide line, what it could be over it. */
export function FrontView({ wheel, drawing, kind, section, pxPerMm }: FrontViewProps): ReactNode {
  const lead = drawing.gears[0];
  const before = useBefore(drawing);
  const gone = useMemo(() => chooseMissing(wheel, lead.teeth), [wheel, lead.teeth]);
  const paths = useMemo(() => drawing.gears.map((gear) => traceOf(gear, kind, gone)), [drawing, kind, gone]);
  const left = useMemo(
    () =>
      (before?.gears ?? [])
        .filter((old) => !drawing.gears.some((gear) => isSameGear(gear, old)))
        .map((old) => ({ key: keyOf(old), path: traceOf(old, kind, gone).paths.whole })),
    [before, drawing, kind, gone],
  );
  const px = 1 / pxPerMm;
  const reach = section.radius + 10 * px;
  return (
    <>
      <path
        className={lead.share >= leadsFrom ? 'line-known' : 'line-rival'}
        d={paths[0].paths.kept}
        strokeLinejoin="round"
      />
      {paths[0].paths.gone && <path className="line-rival" d={paths[0].paths.gone} />}
      {drawing.gears.slice(1).map((gear, i) => (
        <path
          key={keyOf(gear)}
          className="line-rival FrontView-rival"
          style={{ opacity: strengthOf(gear, lead) }}
          d={paths[i + 1].paths.whole}
        />
      ))}
      {left.map(({ key, path }) => (
        <path key={`out ${key}`} className="line-rival FrontView-out" d={path} />
      ))}
      {kind === 'rack' && paths[0].piece ? (
        <RackRest piece={paths[0].piece} px={px} />
      ) : (
        <>
          <circle className="line-axis" r={lead.referenceDiameterMm / 2} />
          <path className="line-axis" d={`M${-reach} 0H${reach}M0 ${-reach}V${reach}`} />
        </>
      )}
      {kind === 'internal' && <circle className="line-rival" r={section.radius} />}
      {section.boreDiameter !== undefined && <circle className="line-known" r={section.boreDiameter / 2} />}
      {section.hubRadius !== undefined && <circle className="line-known" r={section.hubRadius} />}
      {kind === 'external' && isSplit(wheel) && (
        <path className="line-thin" d={splitLine(lead, section, px)} />
      )}
    </>
  );
}

interface Traced {
  readonly paths: GearPaths;
  readonly piece?: RackPiece | undefined;
}

function traceOf(gear: DrawnGear, kind: FrontViewProps['kind'], gone: ReadonlySet<number>): Traced {
  if (kind !== 'rack') return { paths: traceGear(gear, kind === 'external' ? gone : none) };
  const piece = traceRack(gear);
  return { paths: { whole: piece.path, kept: piece.path, gone: '' }, piece };
}

const none: ReadonlySet<number> = new Set();

/** The bar below the teeth, broken off at both ends. */
function RackRest({ piece, px }: { readonly piece: RackPiece; readonly px: number }): ReactNode {
  const { halfLength, root, back } = piece;
  return (
    <>
      <path className="line-known" d={`M${-halfLength} ${back}H${halfLength}`} />
      {[-halfLength, halfLength].map((x) => (
        <path key={x} className="line-thin" d={drawFreehand([x, root], [x, back], 4 * px)} />
      ))}
      <path className="line-axis" d={`M${-halfLength - 10 * px} 0H${halfLength + 10 * px}`} />
    </>
  );
}

/** Through the rim at the lower right, from the hole out through a gap. */
function splitLine(gear: DrawnGear, section: Section, px: number): string {
  const pitch = (2 * Math.PI) / gear.teeth;
  const gap = (Math.round((-Math.PI / 3 - pitch / 2) / pitch) + 0.5) * pitch;
  const from = (section.boreDiameter ?? gear.rootDiameterMm * 0.2) / 2;
  const to = gear.rootDiameterMm / 2;
  return drawFreehand(
    [from * Math.cos(gap), from * Math.sin(gap)],
    [to * Math.cos(gap), to * Math.sin(gap)],
    3.5 * px,
  );
}

function keyOf(gear: DrawnGear): string {
  return `${gear.teeth} ${gear.moduleMm.toFixed(4)}`;
}

function isSameGear(a: DrawnGear, b: DrawnGear): boolean {
  return keyOf(a) === keyOf(b);
}
