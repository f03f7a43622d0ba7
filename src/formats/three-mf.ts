import { strToU8, zipSync } from 'fflate';
import type { Mesh } from '../solid/mesh.ts';

/**
 * A mesh as a 3MF package (3MF Core Specification 1.3): unit millimeter, one object, its name and metadata. Same
 * input, same bytes: the entries carry a fixed local time and coordinates six decimals.
 *
 * @param metadata our own names get this project's XML namespace; `Title` and `Description` are the standard's
 */
export function encodeThreeMf(
  mesh: Mesh,
  name: string,
  metadata: Readonly<Record<string, string>>,
): Uint8Array {
  const parts: Record<string, Uint8Array> = {
    '[Content_Types].xml': strToU8(contentTypes),
    '_rels/.rels': strToU8(relations),
    '3D/3dmodel.model': strToU8(writeModel(mesh, name, metadata)),
  };
  // Local time on purpose: the zip format stores local time, so the bytes agree in every time zone.
  return zipSync(parts, { level: 6, mtime: new Date(2026, 0, 1) });
}

const contentTypes =
  '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">' +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>';

const relations =
  '<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
  '<Relationship Target="/3D/3dmodel.model" Id="model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>';

const standardNames = new Set(['Title', 'Description', 'Application']);

function writeModel(mesh: Mesh, name: string, metadata: Readonly<Record<string, string>>): string {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" xmlns:st="urn:sparetooth:part:1">',
  ];
  for (const [key, value] of Object.entries(metadata)) {
    lines.push(
      `<metadata name="${standardNames.has(key) ? key : `st:${key}`}">${escapeXml(value)}</metadata>`,
    );
  }
  lines.push(`<resources><object id="1" type="model" name="${escapeXml(name)}"><mesh><vertices>`);
  const { positions, triangles } = mesh;
  for (let k = 0; k < positions.length; k += 3) {
    lines.push(
      `<vertex x="${round(positions[k])}" y="${round(positions[k + 1])}" z="${round(positions[k + 2])}"/>`,
    );
  }
  lines.push('</vertices><triangles>');
  for (let k = 0; k < triangles.length; k += 3) {
    lines.push(`<triangle v1="${triangles[k]}" v2="${triangles[k + 1]}" v3="${triangles[k + 2]}"/>`);
  }
  lines.push('</triangles></mesh></object></resources><build><item objectid="1"/></build></model>');
  return lines.join('\n');
}

/** Six decimals of a mm, a nanometer, without exponents or a negative zero. */
function round(value: number): string {
  const rounded = Math.round(value * 1e6) / 1e6;
  return rounded === 0 ? '0' : String(Number(rounded.toFixed(6)));
}

function escapeXml(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD]/g, '?');
}
