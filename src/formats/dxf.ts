import { DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import type { FlatCurve, FlatLayer } from '../solid/flatten-part.ts';

/**
 * Plane curves as DXF text (AC1021) in mm, 1:1: closed polylines with arcs as bulges, circles as circles, one layer a
 * kind. Flanks are arcs rather than splines: cutters and their programs follow arcs, many of them turn splines into
 * chords of their own choosing. Coordinates are rounded to a nanometer. Same curves, same bytes.
 */
export function encodeDxf(curves: readonly FlatCurve[]): Uint8Array {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Sparetooth' });
  // Long dash, gap, short dash, gap: axes and pitch circles (ISO 128-2 line 04).
  dxf.addLType('CENTER', 'Center ____ _ ____', [3, -0.5, 0.5, -0.5]);
  for (const layer of new Set(curves.map((curve) => curve.layer))) {
    const { color, line } = styles[layer];
    dxf.addLayer(nameLayer(layer), color, line);
  }
  for (const curve of curves) {
    const layerName = nameLayer(curve.layer);
    if (curve.kind === 'circle') {
      dxf.addCircle(point3d(round(curve.x), round(curve.y), 0), round(curve.radius), { layerName });
    } else if (curve.kind === 'line') {
      const [from, to] = [curve.from, curve.to].map(([x, y]) => point3d(round(x), round(y), 0));
      dxf.addLine(from, to, { layerName });
    } else {
      const { points, bulges } = curve.loop;
      const vertices = Array.from(bulges, (bulge, k) => ({
        point: point2d(round(points[2 * k]), round(points[2 * k + 1])),
        bulge: Math.abs(bulge) < leastBulge ? 0 : bulge,
      }));
      dxf.addLWPolyline(vertices, { flags: LWPolylineFlags.Closed, layerName });
    }
  }
  return new TextEncoder().encode(dxf.stringify());
}

/** Colors by number: 7 is black on white and white on black; the others only tell what is not to be cut apart. */
const styles: Readonly<Record<FlatLayer, { readonly color: number; readonly line: string }>> = {
  outline: { color: 7, line: 'Continuous' },
  bore: { color: 7, line: 'Continuous' },
  holes: { color: 7, line: 'Continuous' },
  'other-outlines': { color: 8, line: 'Continuous' },
  edges: { color: 8, line: 'Continuous' },
  'pitch-circle': { color: 8, line: 'CENTER' },
};

export function nameLayer(layer: FlatLayer): string {
  return layer.toUpperCase();
}

/** Six decimals, so that no number is written with an exponent, which some readers don't know. */
function round(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

/** A flatter arc would be written with an exponent; it stands less than a two-millionth of its chord over it. */
const leastBulge = 1e-6;
