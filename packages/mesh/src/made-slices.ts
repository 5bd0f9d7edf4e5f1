import { curveOf } from '@lastinch/core/stops';
import { sliceAreas } from './slice-areas.ts';
import type { MadeSlice } from './solid-figures.ts';
import type { SolidMesh } from './solid-mesh.ts';
import type { SolidRequest } from './solid-request.ts';

/** Planes through each slice: its mean area to some 0.01 %. */
const PLANES = 24;

/** Solid share of a body at a height of its lattice as its curve was worked out with, and the area of its outline [m²]. */
export function askedAt({
  body,
}: Pick<SolidRequest, 'body'>): (z: number) => { share: number; area: number } {
  const [radius, density] = [curveOf(body.radius), curveOf(body.density)];
  return (z) => {
    const r = radius(z);
    const area = Math.PI * (r ** 2 - body.bore ** 2);
    const skin = Math.PI * (r ** 2 - (r - body.skin) ** 2);
    return { share: (skin + density(z) * (area - skin)) / area, area };
  };
}

/** What share of its outline each slice of the lattice fills, by planes through the mesh. */
export function madeSlices(request: SolidRequest, mesh: SolidMesh): readonly MadeSlice[] {
  const { body, cell, plate } = request;
  const count = Math.max(1, Math.round(body.height / cell));
  const areas = sliceAreas(mesh, plate, plate + body.height, count * PLANES);
  const asked = askedAt(request);
  return Array.from({ length: count }, (_, i) => {
    let [solid, outline, wanted] = [0, 0, 0];
    for (let p = 0; p < PLANES; p += 1) {
      const { share, area } = asked(((i + (p + 0.5) / PLANES) * body.height) / count);
      solid += areas[i * PLANES + p];
      outline += area;
      wanted += share * area;
    }
    return {
      from: (i * body.height) / count,
      to: ((i + 1) * body.height) / count,
      asked: wanted / outline,
      made: solid / outline,
    };
  });
}
