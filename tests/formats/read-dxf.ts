import DxfParser from 'dxf-parser';

/** A closed or open curve of a flat file: corners and the bulge of the piece that leaves each. */
export interface ReadCurve {
  readonly layer: string;
  readonly kind: 'loop' | 'circle' | 'line';
  readonly points: readonly { readonly x: number; readonly y: number; readonly bulge: number }[];
  readonly radius?: number;
}

interface Parsed {
  readonly header: Readonly<Record<string, unknown>>;
  readonly tables: { readonly layer: { readonly layers: Readonly<Record<string, unknown>> } };
  readonly entities: readonly (Readonly<Record<string, unknown>> & {
    readonly type: string;
    readonly layer: string;
    readonly shape?: boolean;
    readonly vertices?: readonly { x: number; y: number; bulge?: number }[];
    readonly center?: { x: number; y: number };
    readonly radius?: number;
  })[];
}

/** A DXF file by a reader that shares no code with the writer. */
export function readDxf(bytes: Uint8Array): {
  readonly units: number;
  readonly layers: readonly string[];
  readonly curves: readonly ReadCurve[];
} {
  const parsed = new DxfParser().parseSync(new TextDecoder().decode(bytes)) as unknown as Parsed;
  const curves = parsed.entities.map(({ type, layer, shape, vertices = [], center, radius }): ReadCurve => {
    const points = vertices.map(({ x, y, bulge = 0 }) => ({ x, y, bulge }));
    if (type === 'CIRCLE' && center && radius !== undefined)
      return { layer, kind: 'circle', points: [{ ...center, bulge: 0 }], radius };
    if (type === 'LINE') return { layer, kind: 'line', points };
    if (type !== 'LWPOLYLINE' || !shape) throw new Error(`${type} on ${layer} is not expected`);
    return { layer, kind: 'loop', points };
  });
  return {
    units: Number(parsed.header.$INSUNITS),
    layers: Object.keys(parsed.tables.layer.layers),
    curves,
  };
}
