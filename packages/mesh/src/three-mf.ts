import { strToU8, zipSync } from 'fflate';
import { ByteText } from './byte-text.ts';
import type { SolidMesh } from './solid-mesh.ts';

/** A body in a file, and where its own origin stands on the plate [m]. */
export interface PlacedMesh {
  readonly name: string;
  readonly mesh: SolidMesh;
  readonly at: readonly [x: number, y: number];
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const CONTENT_TYPES =
  '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n';
const RELATIONS =
  '<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>\n';
/** Files of a package carry a time; always the same, so that the same solid is the same file. */
const WHEN = new Date(1980, 0, 1);
/** Effort of the packing: higher ones take twice the time for a few per cent. */
const PACKING = 4;

/**
 * Solids as a 3MF file: core specification only, unit millimetre, corners to a hundred-thousandth of it, so that no two fall together.
 *
 * @source 3MF Core Specification 1.2, chapters 2 to 4; checked against its schema in `npm run validate:mesh`
 */
export function threeMfOf(title: string, parts: readonly PlacedMesh[]): Uint8Array {
  return zipSync(
    {
      '[Content_Types].xml': strToU8(CONTENT_TYPES),
      '_rels/.rels': strToU8(RELATIONS),
      '3D/3dmodel.model': modelOf(title, parts),
    },
    { level: PACKING, mtime: WHEN },
  );
}

function modelOf(title: string, parts: readonly PlacedMesh[]): Uint8Array {
  const text = new ByteText();
  text.put(
    `<?xml version="1.0" encoding="UTF-8"?>\n<model unit="millimeter" xml:lang="en" xmlns="${CORE}">\n`,
  );
  text.put(`<metadata name="Title">${escaped(title)}</metadata>\n`);
  text.put('<metadata name="Application">Lastinch</metadata>\n<resources>\n');
  parts.forEach(({ name, mesh: { points, triangles } }, part) => {
    text.put(`<object id="${part + 1}" type="model" name="${escaped(name)}"><mesh><vertices>\n`);
    for (let i = 0; i < points.length; i += 3) {
      text.put('<vertex x="');
      text.putMillimetres(points[i]);
      text.put('" y="');
      text.putMillimetres(points[i + 1]);
      text.put('" z="');
      text.putMillimetres(points[i + 2]);
      text.put('"/>\n');
    }
    text.put('</vertices><triangles>\n');
    for (let i = 0; i < triangles.length; i += 3) {
      text.put('<triangle v1="');
      text.putWhole(triangles[i]);
      text.put('" v2="');
      text.putWhole(triangles[i + 1]);
      text.put('" v3="');
      text.putWhole(triangles[i + 2]);
      text.put('"/>\n');
    }
    text.put('</triangles></mesh></object>\n');
  });
  text.put('</resources>\n<build>\n');
  parts.forEach(({ at: [x, y] }, part) => {
    const moved = `1 0 0 0 1 0 0 0 1 ${(1000 * x).toFixed(3)} ${(1000 * y).toFixed(3)} 0`;
    text.put(`<item objectid="${part + 1}" transform="${moved}"/>\n`);
  });
  text.put('</build>\n</model>\n');
  return text.bytes();
}

const escaped = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 forbids them even when escaped
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/g, '')
    .replace(/[&<>"]/g, (one) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[one] ?? '&quot;');
