import { bad, good, type Result } from '@lastinch/core';
import { curveOf } from '@lastinch/core/stops';
import { bodyOfStop, SHEET_FACES } from './body-of-stop.ts';
import { contourOf } from './contour.ts';
import { gridFor } from './grid.ts';
import { thinnestWall } from './gyroid.ts';
import { madeSlices } from './made-slices.ts';
import { requestFaults } from './request-faults.ts';
import { meshVolume, onlyShells, type Shell, shellsOf } from './shells.ts';
import type { Loose, SolidFigures } from './solid-figures.ts';
import type { SolidMesh } from './solid-mesh.ts';
import type { SolidRequest } from './solid-request.ts';

/** A stop as one closed body, with what it came out as. */
export interface Solid {
  readonly mesh: SolidMesh;
  readonly figures: SolidFigures;
}

/** A loose part, or a hollow, below this is a crumb of the cutting at an edge [m³]. */
const CRUMB = 1e-9;
/** Places at which the thinnest wall is looked for. */
const PLACES = 100;

/**
 * The solid of a stop: one watertight body whose walls carry the density. z runs up from the face of the foot; the
 * lattice stands on the plate.
 *
 * @param onProgress – share done, rising
 * @invariant each edge belongs to two triangles that run it in opposite directions; one outer shell
 * @validity slices of one cell keep the density within 3 %; a single height within a cell may be a little further off,
 *   since a gyroid is not quite as full at each height
 * @failure `stop-shape`, `stop-solid-seat`, `stop-solid-cells` (too many), `stop-solid-parts` (it falls apart)
 */
export function solidOf(
  request: SolidRequest,
  onProgress: (share: number) => void = () => {},
): Result<Solid> {
  const faults = requestFaults(request);
  if (faults.length > 0) return bad(...faults);
  const { body, cell, plate, cap } = request;
  const grid = gridFor(request);
  if (grid === null)
    return bad({
      code: 'stop-solid-cells',
      where: {},
      found: `${(1000 * cell).toFixed(1)} mm`,
      accepted: 'a larger cell, or a smaller stop',
    });
  const cut = contourOf(bodyOfStop(request, grid), grid, SHEET_FACES, (share) => onProgress(0.85 * share));
  const found = shellsOf(cut);
  const isWhole = ({ volume }: Shell) => Math.abs(volume) > CRUMB;
  const bodies = found.shells.filter((shell) => isWhole(shell) && shell.volume > 0);
  if (bodies.length !== 1)
    return bad({
      code: 'stop-solid-parts',
      where: {},
      found: `${bodies.length} parts`,
      accepted: 'one: denser walls, a smaller cell, or a plate, a cap or a skin that holds them together',
    });
  const crumbs = found.shells.filter((shell) => !isWhole(shell));
  const mesh = crumbs.length === 0 ? cut : onlyShells(cut, found, (at) => isWhole(found.shells[at]));
  onProgress(0.9);
  const slices = madeSlices(request, mesh);
  onProgress(1);
  return good({
    mesh,
    figures: {
      height: plate + body.height + cap,
      plate,
      volume: meshVolume(mesh),
      slices,
      worst: Math.max(...slices.map(({ asked, made }) => Math.abs(made / asked - 1))),
      wall: thinnestOf(request),
      triangles: mesh.triangles.length / 3,
      grid,
      crumbs: looseOf(crumbs),
      hollows: looseOf(found.shells.filter((shell) => isWhole(shell) && shell.volume < 0)),
    },
  });
}

const looseOf = (shells: readonly Shell[]): Loose => ({
  count: shells.length,
  volume: shells.reduce((sum, { volume }) => sum + Math.abs(volume), 0),
});

function thinnestOf({ body, cell }: SolidRequest): SolidFigures['wall'] {
  const density = curveOf(body.density);
  let wall = { thinnest: Number.POSITIVE_INFINITY, at: 0 };
  for (let i = 0; i <= PLACES; i += 1) {
    const at = (body.height * i) / PLACES;
    const thinnest = thinnestWall(density(at), cell);
    if (thinnest < wall.thinnest) wall = { thinnest, at };
  }
  return wall;
}
