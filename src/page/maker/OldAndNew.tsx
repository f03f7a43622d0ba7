import '../drawing/GearDrawing.css';
import '../drawing/DrawingSheet.css';
import { type ReactNode, useMemo } from 'react';
import type { DesignDrawing, FormDrawing } from '../../index.ts';
import { chooseScale } from '../drawing/choose-scale.ts';
import { hatchRectangle } from '../drawing/hatch.ts';
import { TitleBlock, type TitleBlockProps } from '../drawing/TitleBlock.tsx';
import { tracePoints } from '../drawing/trace-path.ts';
import { useSize } from '../drawing/use-size.ts';

/** Room over the drawing for the buttons that stand there, px. */
const top = 72;
const between = 40;
const edge = 24;

/**
 * The old gear and the new part, one over the other: the new one in the wide line, the old one in the long-dashed
 * double-dotted line, from the front and as a half section.
 */
export function OldAndNew(props: {
  readonly drawing: DesignDrawing;
  readonly isWorking: boolean;
  readonly unit: 'mm' | 'in';
  readonly titleBlock: Omit<TitleBlockProps, 'scale' | 'unit' | 'isNarrow'>;
}): ReactNode {
  const { drawing, isWorking, unit, titleBlock } = props;
  const { old, meant } = drawing;
  const [ref, { width, height }] = useSize<HTMLElement>({ width: 720, height: 560 });
  const isNarrow = width < 560;
  const isRack = meant.kind === 'rack';
  const half = Math.max(reachOf(old), reachOf(meant));
  const up = isRack ? Math.max(...boundsOf(old), ...boundsOf(meant)) : half;
  const length = Math.max(lengthOf(old), lengthOf(meant));
  const hasSection = !isNarrow && !isRack;
  const foot = titleBlock.note === undefined ? 64 : 88;
  const legend = isNarrow ? 28 : 32;
  const wide = 2 * half + (hasSection ? length : 0);
  const scale = chooseScale(
    (s) =>
      wide * s <= width - 2 * edge - (hasSection ? between : 0) && 2 * up * s <= height - top - foot - legend,
  );
  const s = scale.pxPerMm;
  const left = (width - wide * s - (hasSection ? between : 0)) / 2;
  const x = left + half * s;
  const y = top + (height - top - foot - legend) / 2;
  const sectionX = left + 2 * half * s + between;
  const paths = useMemo(() => ({ old: pathsOf(old), meant: pathsOf(meant) }), [old, meant]);
  return (
    <figure className={isWorking ? 'GearDrawing DrawingSheet-working' : 'GearDrawing'} ref={ref}>
      <svg
        className="DrawingSheet-lines"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`The new part in a wide line over the old gear in a dash and two dots. ${tellDifference(old, meant)}`}
      >
        <g transform={`translate(${x} ${y}) scale(${s} ${-s})`}>
          <path className="line-known" d={paths.meant} strokeLinejoin="round" />
          <path className="line-rival" d={paths.old} />
          {!isRack && (
            <>
              <path
                className="line-axis"
                d={`M${-half - 8 / s} 0H${half + 8 / s}M0 ${-half - 8 / s}V${half + 8 / s}`}
              />
              <circle className="line-axis" r={meant.referenceRadius} />
            </>
          )}
        </g>
        {hasSection && (
          <g transform={`translate(${sectionX} ${y}) scale(${s} ${-s})`}>
            {hatch(meant, s).map((d) => (
              <path key={d} className="line-thin" d={d} />
            ))}
            <path className="line-known" d={halfSection(meant)} />
            <path className="line-rival" d={halfSection(old)} />
            <path className="line-axis" d={`M${-8 / s} 0H${length + 8 / s}`} />
          </g>
        )}
        <path className="line-known" d={`M${edge} ${height - foot - 12}h40`} />
        <path className="line-rival" d={`M${edge + 104} ${height - foot - 12}h40`} />
        <text className="ProofSheet-mark" x={edge + 48} y={height - foot - 7}>
          new
        </text>
        <text className="ProofSheet-mark" x={edge + 152} y={height - foot - 7}>
          old
        </text>
      </svg>
      <TitleBlock {...titleBlock} scale={scale.name} unit={unit} isNarrow={isNarrow} />
    </figure>
  );
}

function pathsOf(form: FormDrawing): string {
  const loop = (points: Float64Array): string =>
    points.length === 0 ? '' : `${tracePoints(points, 0, points.length / 2 - 1)}Z`;
  const circle = (r: number): string => `M${r} 0A${r} ${r} 0 0 1 ${-r} 0A${r} ${r} 0 0 1 ${r} 0Z`;
  const hubs = form.hubs.map(({ diameter }) => circle(diameter / 2)).join('');
  return `${loop(form.outline)}${loop(form.bore)}${hubs}${form.rimRadius === undefined ? '' : circle(form.rimRadius)}`;
}

function reachOf(form: FormDrawing): number {
  if (form.rimRadius !== undefined) return form.rimRadius;
  if (form.kind !== 'rack') return form.tipRadius;
  let reach = 0;
  for (let k = 0; k < form.outline.length; k += 2) reach = Math.max(reach, Math.abs(form.outline[k]));
  return reach;
}

function boundsOf({ outline }: FormDrawing): number[] {
  let most = 0;
  for (let k = 1; k < outline.length; k += 2) most = Math.max(most, Math.abs(outline[k]));
  return [most];
}

function lengthOf({ faceWidth, hubs }: FormDrawing): number {
  return hubs.reduce((sum, hub) => sum + hub.length, faceWidth);
}

/** Lower hub, teeth, upper hub along the axis, each with its radius; mm from the lowest face. */
function stretches(form: FormDrawing): { from: number; to: number; radius: number; isTeeth: boolean }[] {
  const of = (side: 'top' | 'bottom') =>
    form.hubs.filter((hub) => hub.side === side).sort((a, b) => b.diameter - a.diameter);
  const list: { from: number; to: number; radius: number; isTeeth: boolean }[] = [];
  let at = 0;
  const push = (length: number, radius: number, isTeeth = false): void => {
    list.push({ from: at, to: at + length, radius, isTeeth });
    at += length;
  };
  for (const hub of of('bottom').reverse()) push(hub.length, hub.diameter / 2);
  push(form.faceWidth, form.rimRadius ?? form.tipRadius, true);
  for (const hub of of('top')) push(hub.length, hub.diameter / 2);
  return list;
}

/** Above the axis: outside, bore and root of the half that is cut. */
function halfSection(form: FormDrawing): string {
  const parts = stretches(form);
  const inside = form.kind === 'internal' ? form.tipRadius : form.boreRadius;
  const end = parts[parts.length - 1].to;
  let path = `M0 ${inside}`;
  for (const { from, to, radius } of parts) path += `L${from} ${radius}L${to} ${radius}`;
  path += `L${end} ${inside}Z`;
  const teeth = parts.find((one) => one.isTeeth);
  return teeth ? `${path}M${teeth.from} ${form.rootRadius}H${teeth.to}` : path;
}

/** Teeth are not hatched (ISO 2203). */
function hatch(form: FormDrawing, s: number): string[] {
  return stretches(form).map(({ from, to, radius, isTeeth }) =>
    hatchRectangle(
      form.kind === 'internal'
        ? { left: from, right: to, low: form.rootRadius, high: radius }
        : { left: from, right: to, low: form.boreRadius, high: isTeeth ? form.rootRadius : radius },
      6 / s,
    ),
  );
}

function tellDifference(old: FormDrawing, meant: FormDrawing): string {
  const rows: string[] = [];
  const add = (what: string, before: number, after: number): void => {
    if (Math.abs(after - before) >= 0.005)
      rows.push(`${what} ${after.toFixed(2)} mm in place of ${before.toFixed(2)}`);
  };
  add('across the tips', 2 * old.tipRadius, 2 * meant.tipRadius);
  add('bore', 2 * old.boreRadius, 2 * meant.boreRadius);
  add('width', old.faceWidth, meant.faceWidth);
  return rows.length === 0 ? 'Its sizes are the same.' : `${rows.join(', ')}.`;
}
