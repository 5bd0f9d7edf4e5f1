import type { Problem } from '../finding/problem.ts';
import type { DensityRange, WantedCurve } from '../stopdesign/density-for-curve.ts';
import type { VentHoles } from './stop-air.ts';

interface Asked {
  readonly height: number;
  readonly diameters: readonly [number, number];
  readonly bore: number;
  readonly cell: number;
  readonly wall: number;
  readonly skin?: number;
  readonly foot?: number;
  readonly cap?: number;
  readonly vents?: VentHoles | null;
  readonly target: WantedCurve | null;
  readonly density: readonly number[] | null;
}

/** Thinnest place of a gyroid sheet ÷ cell edge ÷ density, ρ up to 0.5. @source computed for this house, check values 10.3 */
const WALL_SHARE = 0.285;
/** Above this the lattice law does not hold, and powder or strings stay in the cells. */
const DENSEST = 0.6;
/** A stop harder or softer than this over its curve, force ÷ crush at the end [N/m], was hardly written in these units. */
const STIFFEST = 2e7;
const SOFTEST = 5e3;

/** Densities that walls of a cell allow. */
export const printableRange = (cell: number, wall: number): DensityRange => ({
  least: wall / (cell * WALL_SHARE),
  most: DENSEST,
});

const millimetres = (length: number): string => `${Number((1000 * length).toPrecision(4))} mm`;
const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What cannot be about a stop to print; null when nothing. */
export function designFault(asked: Asked): Problem | null {
  const { cell, wall, target, density } = asked;
  const shape = shapeFault(asked);
  if (shape !== null) return { code: 'stop-shape', where: {}, ...shape };
  const range = printableRange(cell, wall);
  const outOfRange = (found: string, accepted: string): Problem => ({
    code: 'stop-design-range',
    where: {},
    found,
    accepted,
  });
  if (range.least >= range.most)
    return outOfRange(
      percent(range.least),
      'a thinner wall or a larger cell: the least density must stay below 60 %',
    );
  const wrong = density?.find((rho) => !(rho >= range.least * (1 - 1e-9) && rho <= range.most));
  if (wrong !== undefined)
    return outOfRange(
      percent(wrong),
      `densities from ${percent(range.least)} to ${percent(range.most)} with this wall and cell`,
    );
  const fault = target === null ? null : targetFault(target, asked);
  return fault === null ? null : { code: 'stop-design-target', where: {}, ...fault };
}

function shapeFault({
  height,
  diameters,
  bore,
  cell,
  wall,
  skin = 0,
  foot = 0,
  cap = 0,
  vents = null,
}: Asked) {
  const narrow = Math.min(...diameters);
  if (!(height > 0)) return { found: `a height of ${millimetres(height)}`, accepted: 'more than zero' };
  if (!(narrow > 0)) return { found: `a diameter of ${millimetres(narrow)}`, accepted: 'more than zero' };
  if (!(cell > 0 && wall > 0)) return { found: 'such cells', accepted: 'cell and wall above zero' };
  if (!(bore >= 0 && bore < narrow))
    return {
      found: `a bore of ${millimetres(bore)}`,
      accepted: `less than the smallest diameter, ${millimetres(narrow)}`,
    };
  const wide = (narrow - bore) / 2;
  if (!(skin >= 0 && skin < wide / 2))
    return {
      found: `a skin of ${millimetres(skin)}`,
      accepted: `from none to half of what is between bore and outside, ${millimetres(wide / 2)}`,
    };
  if (!(foot >= 0 && cap >= 0 && foot + cap < height / 2))
    return {
      found: `solid ends of ${millimetres(foot)} and ${millimetres(cap)}`,
      accepted: 'none or thicker, together less than half of the height',
    };
  if (vents !== null && !(Number.isInteger(vents.count) && vents.count > 0 && vents.diameter > 0))
    return {
      found: 'such vents',
      accepted: 'a whole number of holes and their diameter, for example "2 x 4 mm"',
    };
  if (vents !== null && skin === 0)
    return { found: 'vents without a skin', accepted: 'a skin: open sides hold no air' };
  return null;
}

/** What cannot be about a wanted curve, and at which of its points; null when nothing. */
export function targetFault(
  { crush, force }: WantedCurve,
  { height, foot = 0, cap = 0 }: Pick<Asked, 'height' | 'foot' | 'cap'>,
): { readonly found: string; readonly accepted: string; readonly point?: number } | null {
  const at = (i: number): string => `${(1000 * crush[i]).toFixed(1)} mm, ${force[i].toFixed(0)} N`;
  const negative = crush.findIndex((c, i) => c < 0 || force[i] < 0);
  if (negative >= 0)
    return { found: at(negative), accepted: 'crush and force of zero or more', point: negative };
  if (crush.length < 3) return { found: `${crush.length} points`, accepted: 'three points or more' };
  if (crush[0] !== 0 || force[0] !== 0)
    return { found: at(0), accepted: 'a first point of no crush and no force', point: 0 };
  const i = crush.findIndex((c, k) => k > 0 && !(c > crush[k - 1] && force[k] > force[k - 1]));
  if (i > 0)
    return { found: at(i), accepted: 'crush and force above those before: a stop does not fall', point: i };
  const last = crush.length - 1;
  const rate = force[last] / crush[last];
  if (rate > STIFFEST || rate < SOFTEST)
    return {
      found: `${Number((rate / 1000).toPrecision(3))} N/mm over ${millimetres(crush[last])}`,
      accepted: '5 N/mm to 20 kN/mm: look at the units of both columns',
    };
  const most = 0.8 * (height - foot - cap);
  return crush[last] < most
    ? null
    : {
        found: `${millimetres(crush[last])} of crush`,
        accepted: `less than four fifths of the lattice, ${millimetres(most)}`,
      };
}
