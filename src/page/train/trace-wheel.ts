import type { TrainDrawing } from '../../index.ts';
import { tracePoints } from '../drawing/trace-path.ts';

type DrawnWheel = TrainDrawing['wheels'][number];

/** A wheel's lines as path data about its own axis, mm, y up. */
export interface WheelPaths {
  /** What is there; closed, so that it can be filled */
  readonly body: string;
  /** Teeth that are gone */
  readonly gone: string;
  /** What moves along a bar or a screw while its body stays; repeats after `repeat` mm */
  readonly sliding: string;
  readonly repeat: number;
}

/** The paths of a wheel, as far as it is known: its teeth, the teeth that are gone, a screw's turns. */
export function traceWheel(wheel: DrawnWheel, gone: ReadonlySet<number>): WheelPaths {
  const still = { sliding: '', repeat: 0, gone: '' };
  if (wheel.form === 'worm') return traceWorm(wheel);
  if (wheel.form === 'rack' && wheel.outline) {
    const points = wheel.outline;
    return { ...still, body: `${tracePoints(points, 0, points.length / 2 - 1)}Z` };
  }
  if (!wheel.outline) return { ...still, body: circle(wheel.reach) };
  const { outline, perTooth } = wheel;
  const total = outline.length / 2;
  if (wheel.form === 'internal')
    return { ...still, body: `${circle(wheel.reach)}${tracePoints(outline, 0, total - 1)}Z` };
  if (gone.size === 0) return { ...still, body: `${tracePoints(outline, 0, total - 1)}Z` };
  let body = '';
  let lost = '';
  for (let tooth = 0; tooth < total / perTooth; tooth++) {
    const start = tooth * perTooth;
    const end = (start + perTooth) % total;
    if (gone.has(tooth)) {
      lost += tracePoints(outline, start, start + perTooth);
      body += `${body === '' ? 'M' : 'L'}${write(outline, start)}A${round(wheel.rootRadius)} ${round(wheel.rootRadius)} 0 0 1 ${write(outline, end)}`;
    } else {
      body += `${body === '' ? 'M' : 'L'}${tracePoints(outline, start, start + perTooth).slice(1)}`;
    }
  }
  return { ...still, body: `${body}Z`, gone: lost };
}

/** A screw from the side: its outline, and its turns as slanted lines that move along when it turns. */
function traceWorm({ reach, moduleMm = 1, teeth = 1 }: DrawnWheel): WheelPaths {
  const pitch = Math.PI * moduleMm;
  const half = 5 * pitch;
  const slant = pitch * teeth * 0.5;
  let sliding = '';
  for (let x = -half - pitch * 2; x <= half + pitch * 2; x += pitch) {
    sliding += `M${round(x - slant / 2)} ${round(-reach)}L${round(x + slant / 2)} ${round(reach)}`;
  }
  const body = `M${round(-half)} ${round(-reach)}H${round(half)}V${round(reach)}H${round(-half)}Z`;
  return { body, gone: '', sliding, repeat: pitch };
}

function circle(radius: number): string {
  const r = round(radius);
  return `M${r} 0A${r} ${r} 0 1 1 ${-r} 0A${r} ${r} 0 1 1 ${r} 0Z`;
}

function write(points: ArrayLike<number>, k: number): string {
  return `${round(points[2 * k])} ${round(points[2 * k + 1])}`;
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
