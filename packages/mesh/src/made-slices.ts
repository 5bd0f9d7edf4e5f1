import { curveOf } from '@lastinch/core/stops';
import { slabVolumes } from './slab-volumes.ts';
import type { MadeSlice } from './solid-figures.ts';
import type { SolidMesh } from './solid-mesh.ts';
import type { SolidRequest } from './solid-request.ts';

/** Places in each slice at which what was asked is taken: its mean to some 0.01 %. */
const PLACES = 24;

/** Solid share of a body at a height of its lattice as its curve was worked out with, and the area of its outline [m²]. */
function askedAt({ body }: Pick<SolidRequest, 'body'>): (z: number) => { share: number; area: number } {
  const [radius, density] = [curveOf(body.radius), curveOf(body.density)];
  return (z) => {
    const r = radius(z);
    const area = Math.PI * (r ** 2 - body.bore ** 2);
    const skin = Math.PI * (r ** 2 - (r - body.skin) ** 2);
    return { share: (skin + density(z) * (area - skin)) / area, area };
  };
}

/** What share of its outline each slice of the lattice fills. */
export function madeSlices(request: SolidRequest, mesh: SolidMesh): readonly MadeSlice[] {
  const { body, cell, plate } = request;
  const count = Math.max(1, Math.round(body.height / cell));
  const volumes = slabVolumes(mesh, plate, plate + body.height, count);
  const asked = askedAt(request);
  const thick = body.height / count;
  return Array.from({ length: count }, (_, i) => {
    let [outline, wanted] = [0, 0];
    for (let p = 0; p < PLACES; p += 1) {
      const { share, area } = asked((i + (p + 0.5) / PLACES) * thick);
      outline += (area * thick) / PLACES;
      wanted += (share * area * thick) / PLACES;
    }
    return { from: i * thick, to: (i + 1) * thick, asked: wanted / outline, made: volumes[i] / outline };
  });
}
