import { bad, good, type Result } from '../finding/problem.ts';
import { normalTrials } from '../numerics/sampling.ts';
import { columnAt, columnEnergy, columnPressed, type Layer } from '../stopdesign/column.ts';
import { type DensityRange, densityForCurve, type WantedCurve } from '../stopdesign/density-for-curve.ts';
import type { LatticeMaterial } from '../stopdesign/lattice-law.ts';
import { type PrintedBody, printedLayers, slenderness } from '../stopdesign/printed-body.ts';

/** Printed elastomers whose modulus is known as a band, by Shore A. */
export const PRINT_MATERIALS = ['tpu-85a', 'tpu-95a'] as const;
export type PrintMaterialName = (typeof PRINT_MATERIALS)[number];

export interface StopDesignRequest {
  /** [m] */
  readonly height: number;
  /** Outside, at the foot and at the tip [m]. */
  readonly diameters: readonly [number, number];
  readonly bore: number;
  /** Edge of a lattice cell, and the thinnest wall that the printer makes whole [m]. */
  readonly cell: number;
  readonly wall: number;
  readonly material: PrintMaterialName;
  /** The curve to follow, or the densities to take from foot to tip. */
  readonly target: WantedCurve | null;
  readonly density: readonly number[] | null;
  readonly trials: number;
  readonly seed: number;
}

export const DESIGN_DOUBTS = [
  'slender',
  'missed',
  'no-coupon',
  'may-close',
  'few-cells',
  'edge-soft',
  'edge-hard',
] as const;
export type DesignDoubt = (typeof DESIGN_DOUBTS)[number];

/** A place of the curve of a design [m], [N]. */
export interface DesignPoint {
  readonly crush: number;
  /** Null where no curve was asked for. */
  readonly wanted: number | null;
  /** Null where all of it is closed: solid, as good as metal. */
  readonly force: number | null;
  /** 95 % interval over print and material; the upper end is null where some trials had closed up before. */
  readonly low: number | null;
  readonly high: number | null;
}

export interface Miss {
  readonly share: number;
  /** [m] */
  readonly crush: number;
}

/** A printed graded stop: sheet lattice, open at its sides. */
export interface StopDesign {
  readonly range: DensityRange;
  /** Heights above the foot [m] and relative density there. */
  readonly at: readonly number[];
  readonly density: readonly number[];
  readonly curve: readonly DesignPoint[];
  /** Where beyond a tenth of the crush it is softer, and where harder, than wanted, and by which share of the force. */
  readonly tooSoft: Miss | null;
  readonly tooHard: Miss | null;
  /** Largest strain of a slice at the end of the curve, and the strain at which that slice closes. */
  readonly strain: number;
  readonly closesAt: number;
  /** Held at the end [J]. */
  readonly energy: number;
  readonly slenderness: number;
  readonly doubts: readonly DesignDoubt[];
}

/**
 * Young's modulus of a printed solid [Pa], least to most.
 * @source typical filament-printed TPU, from memory; print direction and range of strain decide (check values 1.11)
 */
const MODULUS: Readonly<Record<PrintMaterialName, readonly [number, number]>> = {
  'tpu-85a': [10e6, 25e6],
  'tpu-95a': [25e6, 70e6],
};
/** The other numbers of a lattice, as bands: nobody publishes them for a home printer. Half-widths are 95 %. */
const BANDS = {
  densityPower: { middle: 0, half: 0.5 },
  softening: { middle: 2, half: 2 },
  closing: { middle: 1.2, half: 0.2 },
} as const;
/** A print is heavier or lighter than drawn by so much (common practice, no source), 95 %. */
const PRINT_SCATTER = 0.05;
/** Thinnest place of a gyroid sheet ÷ cell edge ÷ density, ρ up to 0.5. @source computed for this house, check values 10.3 */
const WALL_SHARE = 0.285;
/** Above this the lattice law does not hold, and powder or strings stay in the cells. */
const DENSEST = 0.6;
const SLENDER = 1.5;
const LEAST_CELLS = 3;
/** Share by which force may miss and still be called met. */
const MET = 0.05;
const POINTS = 10;
const EDGE_SHARE = 0.2;
/** How far a forward curve goes: share of the strain at which the softest slice closes. */
const FORWARD = 0.75;

/** Densities that walls of a cell allow. */
export const printableRange = (cell: number, wall: number): DensityRange => ({
  least: wall / (cell * WALL_SHARE),
  most: DENSEST,
});

/**
 * The density along the height of a printed stop, its curve with what print and material leave open, and what it misses.
 *
 * @validity first slow strokes at room temperature; no skin, sides open, so no air is held; bonded ends and buckling left out
 * @failure `stop-shape`, `stop-design-range` (walls too thick for the cell, or a density out of it), `stop-design-target`
 */
export function designStop(request: StopDesignRequest): Result<StopDesign> {
  const { height, diameters, bore, cell, wall, target, trials, seed } = request;
  const shape = (found: string, accepted: string) => bad({ code: 'stop-shape', where: {}, found, accepted });
  if (!(height > 0 && Math.min(...diameters) > 0 && cell > 0 && wall > 0))
    return shape('no size', 'height, diameter, cell and wall above zero');
  if (!(bore >= 0 && bore < Math.min(...diameters)))
    return shape('such a bore', 'less than the smallest diameter');
  const range = printableRange(cell, wall);
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const limits = `densities from ${percent(range.least)} to ${percent(range.most)}`;
  if (range.least >= range.most)
    return outOfRange(
      percent(range.least),
      'a thinner wall or a larger cell: the least density must stay below 60 %',
    );
  const wrong = request.density?.find((rho) => !(rho >= range.least && rho <= range.most));
  if (wrong !== undefined) return outOfRange(percent(wrong), `${limits} with this wall and cell`);
  if (target !== null) {
    const fault = targetFault(target, height);
    if (fault !== null) return bad({ code: 'stop-design-target', where: {}, ...fault });
  }

  const nominal = materialOf(request.material, [0, 0, 0, 0]);
  const body: PrintedBody = {
    height,
    radius: { at: [0, height], value: [diameters[0] / 2, diameters[1] / 2] },
    bore: bore / 2,
    skin: 0,
    density: alongHeight(height, request.density ?? [range.least, range.least]),
  };
  const designed = target === null ? null : densityForCurve(body, nominal, 0, target, range);
  const made = designed?.body ?? body;
  const layers = printedLayers(made, nominal, 0);
  const end = target === null ? forwardEnd(layers) : target.crush[target.crush.length - 1];
  const crush = Array.from({ length: POINTS + 1 }, (_, i) => (end * i) / POINTS);
  const forces = crush.map((c) => forceAt(layers, c));
  const spread = spreadOf(made, request, crush, forces, { trials, seed });
  const wanted = target === null ? null : crush.map((c) => along(target, c));
  const known = (value: number): number | null => (Number.isFinite(value) ? value : null);
  const curve = crush.map((c, i) => ({
    crush: c,
    wanted: wanted?.[i] ?? null,
    force: known(forces[i]),
    ...spread[i],
  }));
  const off = curve.flatMap(({ wanted: want, force, crush: c }) =>
    want !== null && force !== null && c >= 0.1 * end ? [{ share: force / want - 1, crush: c }] : [],
  );
  const tooSoft = worstOf(off.map(({ share, crush: c }) => ({ share: -share, crush: c })));
  const tooHard = worstOf(off);
  const last = columnPressed(layers, Math.min(end, 0.98 * closedCrush(layers)));
  const deepest = last.strain.reduce(
    (best, e, i) => (e / layers[i].law.locksAt > last.strain[best] / layers[best].law.locksAt ? i : best),
    0,
  );
  const doubts: DesignDoubt[] = ['no-coupon'];
  if (slenderness(made) > SLENDER) doubts.push('slender');
  const missed = Math.max(tooSoft?.share ?? 0, tooHard?.share ?? 0);
  if (missed > MET || forces.some((force) => force === Number.POSITIVE_INFINITY)) doubts.push('missed');
  if (curve.some(({ high }) => high === null)) doubts.push('may-close');
  if ((Math.min(...diameters) - bore) / 2 < LEAST_CELLS * (cell / 2)) doubts.push('few-cells');
  if ((designed?.atLeast ?? 0) > EDGE_SHARE) doubts.push('edge-soft');
  if ((designed?.atMost ?? 0) > EDGE_SHARE) doubts.push('edge-hard');
  return good({
    range,
    at: made.density.at,
    density: made.density.value,
    curve,
    tooSoft,
    tooHard,
    strain: last.strain[deepest],
    closesAt: layers[deepest].law.locksAt,
    energy: columnEnergy(layers, last),
    slenderness: slenderness(made),
    doubts,
  });
}

const worstOf = (misses: readonly Miss[]): Miss | null =>
  misses.reduce<Miss | null>((worst, one) => (one.share > (worst?.share ?? 0) ? one : worst), null);

const outOfRange = (found: string, accepted: string) =>
  bad<StopDesign>({ code: 'stop-design-range', where: {}, found, accepted });

function targetFault({ crush, force }: WantedCurve, height: number) {
  if (crush.length < 3) return { found: `${crush.length} points`, accepted: 'three points or more' };
  if (crush[0] !== 0 || force[0] !== 0)
    return { found: 'another start', accepted: 'a first point of no crush and no force' };
  const i = crush.findIndex((c, k) => k > 0 && !(c > crush[k - 1] && force[k] > force[k - 1]));
  if (i > 0)
    return {
      found: `${(1000 * crush[i]).toFixed(1)} mm, ${force[i].toFixed(0)} N`,
      accepted: 'crush and force above those before: a stop does not fall',
    };
  const deep = crush[crush.length - 1];
  return deep < 0.8 * height
    ? null
    : { found: `${(1000 * deep).toFixed(1)} mm of crush`, accepted: 'less than four fifths of the height' };
}

function alongHeight(height: number, value: readonly number[]) {
  const all = value.length === 1 ? [value[0], value[0]] : value;
  return { at: all.map((_, i) => (height * i) / (all.length - 1)), value: all };
}

/** @param z – standard normals: modulus, density power, softening, closing */
function materialOf(name: PrintMaterialName, z: ArrayLike<number>): LatticeMaterial {
  const [low, high] = MODULUS[name].map(Math.log);
  const band = ({ middle, half }: { middle: number; half: number }, k: number) => middle + (half / 2) * z[k];
  return {
    structure: 'sheet-gyroid',
    solidModulus: Math.exp((low + high) / 2 + ((high - low) / 4) * z[0]),
    densityPower: band(BANDS.densityPower, 1),
    softening: Math.max(0, band(BANDS.softening, 2)),
    closing: Math.max(0.8, band(BANDS.closing, 3)),
  };
}

/** Infinite once every slice has closed. */
function forceAt(layers: readonly Layer[], crush: number): number {
  return crush < 0.98 * closedCrush(layers) ? columnPressed(layers, crush).force : Number.POSITIVE_INFINITY;
}

const closedCrush = (layers: readonly Layer[]): number =>
  layers.reduce((sum, { height, law }) => sum + height * law.locksAt, 0);

/** Crush when the first slice has come to a share of its closing [m]. */
function forwardEnd(layers: readonly Layer[]): number {
  const force = Math.min(...layers.map(({ area, law }) => area * law.stress(FORWARD * law.locksAt)));
  return columnAt(layers, force).crush;
}

/** Half-width in the logarithm of the force, twice its root mean square over trials, at each crush. */
function spreadOf(
  made: PrintedBody,
  { material }: StopDesignRequest,
  crush: readonly number[],
  nominal: readonly number[],
  { trials, seed }: { readonly trials: number; readonly seed: number },
): readonly { readonly low: number | null; readonly high: number | null }[] {
  const numbers = 5;
  const z = normalTrials(trials, numbers, seed);
  const squares = crush.map(() => 0);
  for (let t = 0; t < trials; t += 1) {
    const draw = z.subarray(t * numbers, (t + 1) * numbers);
    const heavier = 1 + (PRINT_SCATTER / 2) * draw[4];
    const value = made.density.value.map((rho) => rho * heavier);
    const layers = printedLayers(
      { ...made, density: { ...made.density, value } },
      materialOf(material, draw),
      0,
    );
    crush.forEach((c, i) => {
      if (i > 0) squares[i] += Math.log(forceAt(layers, c) / nominal[i]) ** 2;
    });
  }
  return squares.map((sum, i) => {
    if (!Number.isFinite(nominal[i])) return { low: null, high: null };
    const half = 2 * Math.sqrt(sum / trials);
    // Where a trial has closed up its force has no end: the lower side is that of the places before.
    if (Number.isFinite(half))
      return { low: nominal[i] * Math.exp(-half), high: nominal[i] * Math.exp(half) };
    const known = squares.slice(0, i).filter(Number.isFinite);
    const before = 2 * Math.sqrt((known[known.length - 1] ?? 0) / trials);
    return { low: nominal[i] * Math.exp(-before), high: null };
  });
}

/** On straight lines through a curve. */
function along({ crush, force }: WantedCurve, at: number): number {
  const k = crush.findIndex((c) => c >= at);
  const i = k === -1 ? crush.length - 1 : Math.max(1, k);
  return force[i - 1] + ((force[i] - force[i - 1]) * (at - crush[i - 1])) / (crush[i] - crush[i - 1]);
}
