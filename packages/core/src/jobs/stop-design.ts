import { bad, good, type Result } from '../finding/problem.ts';
import { columnAt, columnEnergy, type Layer } from '../stopdesign/column.ts';
import { type DensityRange, densityForCurve, type WantedCurve } from '../stopdesign/density-for-curve.ts';
import { latticeModulus } from '../stopdesign/lattice-law.ts';
import { type PrintMaterial, type PrintMaterialName, usualMaterial } from '../stopdesign/print-material.ts';
import { endsHold, HALF_HELD, type PrintedBody, SLICES, slenderness } from '../stopdesign/printed-body.ts';
import { foldingBand } from '../stopdesign/skin-law.ts';
import { along, type CurveMiss, missesOf } from './curve-miss.ts';
import {
  middlePrint,
  type OnePrint,
  type Pressed,
  pressed,
  spreadOf,
  type ZoneScatter,
  zoneScatter,
} from './print-spread.ts';
import { type StopAir, stopAir, type VentHoles } from './stop-air.ts';
import { designFault, printableRange } from './stop-design-faults.ts';

export interface StopDesignRequest {
  /** Foot to tip, solid ends and all [m]. */
  readonly height: number;
  /** Outside, at the foot and at the tip [m]. */
  readonly diameters: readonly [number, number];
  readonly bore: number;
  /** Edge of a lattice cell, and the thinnest wall that the printer makes whole [m]. */
  readonly cell: number;
  readonly wall: number;
  /** Solid skin around the lattice, and solid plates at foot and tip [m]; none unless given. */
  readonly skin?: number;
  readonly foot?: number;
  readonly cap?: number;
  /** Holes through the skin; null or left out: none. */
  readonly vents?: VentHoles | null;
  readonly material: PrintMaterialName | PrintMaterial;
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
  'untold',
  'may-close',
  'few-cells',
  'edge-soft',
  'edge-hard',
  'skin-folds',
  'shut-air',
  'vents-choke',
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

/** Strain at a height above the foot [m], and that at which it closes. */
interface SliceStrain {
  readonly at: number;
  readonly strain: number;
  readonly closesAt: number;
}

export interface Miss {
  readonly share: number;
  /** [m] */
  readonly crush: number;
}

/** A printed graded stop: sheet lattice, with or without skin, solid ends and vents. */
export interface StopDesign {
  readonly range: DensityRange;
  /** Heights above the foot [m] and relative density there. */
  readonly at: readonly number[];
  readonly density: readonly number[];
  /** Outline, solid parts and density as one. */
  readonly body: PrintedBody;
  readonly curve: readonly DesignPoint[];
  /** Where beyond a tenth of the crush it is softer, and where harder, than wanted, and by which share of the force. */
  readonly tooSoft: Miss | null;
  readonly tooHard: Miss | null;
  /** Stretches of the wanted curve that it does not follow. */
  readonly missed: readonly CurveMiss[];
  /** Largest strain of a slice at the end of the curve, and the strain at which that slice closes. */
  readonly strain: number;
  readonly closesAt: number;
  /** Up the height at the end of the curve: strain there, and that at which it closes. */
  readonly strains: readonly SliceStrain[];
  /** The same at each place of the curve. */
  readonly states: readonly { readonly crush: number; readonly slices: readonly SliceStrain[] }[];
  /** Put in and held at the end [J], and how much of it a stroke loses. */
  readonly energy: number;
  readonly lost: { readonly least: number; readonly most: number };
  readonly slenderness: number;
  /** Strain at which the skin folds by itself; null without a skin. */
  readonly skinFolds: { readonly least: number; readonly most: number } | null;
  /** How many times stiffer the lattice would be with the whole hold of its solid ends. */
  readonly endsHold: number;
  /** Null without a skin: open sides hold no air. */
  readonly air: StopAir | null;
  /** How the curve moves with each part of the height. */
  readonly scatter: readonly ZoneScatter[];
  readonly doubts: readonly DesignDoubt[];
}

const SLENDER = 1.5;
const LEAST_CELLS = 3;
/** Share by which force may miss and still be called met. */
const MET = 0.05;
const POINTS = 10;
const EDGE_SHARE = 0.2;
/** How far a forward curve goes: share of the strain at which the softest slice closes. */
const FORWARD = 0.75;
/** Below this share of the crush forces are small, and so is what it matters to miss them. */
const BEGINNING = 0.1;
/**
 * Lost ÷ put in of one slow stroke from rest and back. A loss factor η of 0.08 to 0.2 loses π/2·η of it.
 * @source loss factors of TPU, from memory (check values 1.12); π·η·k·(X/2)² over k·X²/2
 */
export const LOST: readonly [number, number] = [(Math.PI / 2) * 0.08, (Math.PI / 2) * 0.2];

/**
 * The density along the height of a printed stop, its curve with what print and material leave open, and what it misses.
 *
 * @validity first slow strokes at room temperature; buckling of the whole left out
 * @failure `stop-shape`, `stop-design-range` (walls too thick for the cell, or a density out of it), `stop-design-target`
 */
export function designStop(request: StopDesignRequest): Result<StopDesign> {
  const { height, diameters, bore, cell, wall, target, trials, seed } = request;
  const fault = designFault(request);
  if (fault !== null) return bad(fault);
  const range = printableRange(cell, wall);
  const material = typeof request.material === 'string' ? usualMaterial(request.material) : request.material;
  const vents = request.vents ?? null;
  const [skin, foot, cap] = [request.skin ?? 0, request.foot ?? 0, request.cap ?? 0];
  const lattice = height - foot - cap;
  const radiusAt = (z: number) => (diameters[0] + ((diameters[1] - diameters[0]) * z) / height) / 2;
  const body: PrintedBody = {
    height: lattice,
    radius: { at: [0, lattice], value: [radiusAt(foot), radiusAt(height - cap)] },
    bore: bore / 2,
    skin,
    foot,
    cap,
    density: alongHeight(lattice, request.density ?? [range.least, range.least]),
  };
  const isShut = skin > 0 && vents === null;
  const found = target === null ? null : followed(body, material, isShut, target, range);
  const made = found?.body ?? body;
  const print = middlePrint(made, material, isShut);
  const middle = pressed(print);
  const end = target === null ? forwardEnd(middle.layers) : target.crush[target.crush.length - 1];
  const crush = Array.from({ length: POINTS + 1 }, (_, i) => (end * i) / POINTS);
  const forces = crush.map(middle.forceAt);
  const spread = spreadOf({ body: made, material, isShut, trials, seed }, crush, forces);
  const curve = crush.map((c, i) => ({
    crush: c,
    wanted: target === null ? null : along(target, c),
    force: Number.isFinite(forces[i]) ? forces[i] : null,
    ...spread[i],
  }));
  const off = curve.flatMap(({ wanted: want, force, crush: c }) =>
    want !== null && force !== null && c >= BEGINNING * end ? [{ share: force / want - 1, crush: c }] : [],
  );
  const tooSoft = worstOf(off.map(({ share, crush: c }) => ({ share: -share, crush: c })));
  const tooHard = worstOf(off);
  const missed = target === null ? [] : missesOf(target, middle.forceAt, { met: MET, from: BEGINNING * end });
  const strains = strainsOf(made, middle, end);
  const deepest = strains.reduce((worst, one) => (used(one) > used(worst) ? one : worst));
  const energy = columnEnergy(middle.layers, middle.stateAt(end));
  const air = skin > 0 ? stopAir(print, middle, { end, vents }) : null;
  const doubts: DesignDoubt[] = material.told.length === 0 ? ['no-coupon'] : [];
  if (material.told.length > 0 && material.told.length < 4) doubts.push('untold');
  if (slenderness(made) > SLENDER) doubts.push('slender');
  if (missed.length > 0) doubts.push('missed');
  if (curve.some(({ high }) => high === null)) doubts.push('may-close');
  if ((Math.min(...diameters) - bore) / 2 - skin < LEAST_CELLS * (cell / 2)) doubts.push('few-cells');
  if ((found?.atLeast ?? 0) > EDGE_SHARE) doubts.push('edge-soft');
  if ((found?.atMost ?? 0) > EDGE_SHARE) doubts.push('edge-hard');
  const skinFolds = skin > 0 ? foldsOf(made, print) : null;
  if (skinFolds !== null && deepest.strain > skinFolds.least) doubts.push('skin-folds');
  if (air !== null && vents === null) doubts.push('shut-air');
  if (air?.vented === 'choked') doubts.push('vents-choke');
  return good({
    range,
    at: made.density.at.map((z) => foot + z),
    density: made.density.value,
    body: made,
    curve,
    tooSoft,
    tooHard,
    missed,
    strain: deepest.strain,
    closesAt: deepest.closesAt,
    strains,
    states: crush.map((c) => ({ crush: middle.stateAt(c).crush, slices: strainsOf(made, middle, c) })),
    energy,
    lost: { least: LOST[0] * energy, most: LOST[1] * energy },
    slenderness: slenderness(made),
    skinFolds,
    endsHold: endsHold(made),
    air,
    scatter: zoneScatter(print, [end / 2, end]),
    doubts,
  });
}

const worstOf = (misses: readonly Miss[]): Miss | null =>
  misses.reduce<Miss | null>((worst, one) => (one.share > (worst?.share ?? 0) ? one : worst), null);

function alongHeight(height: number, value: readonly number[]) {
  const all = value.length === 1 ? [value[0], value[0]] : value;
  return { at: all.map((_, i) => (height * i) / (all.length - 1)), value: all };
}

/**
 * The density that follows a curve. Air that a skin shuts in carries its share: the walls are asked for the rest, which is
 * known once there is a first density.
 */
function followed(
  body: PrintedBody,
  material: PrintMaterial,
  isShut: boolean,
  target: WantedCurve,
  range: DensityRange,
) {
  const { material: middle, air } = middlePrint(body, material, isShut);
  let found = densityForCurve(body, middle, HALF_HELD, target, range);
  for (let turn = 0; isShut && turn < AIR_TURNS; turn += 1) {
    const whole = pressed({ body: found.body, material: middle, hold: HALF_HELD, air });
    const walls = pressed({ body: found.body, material: middle, hold: HALF_HELD, air: 0 });
    const force: number[] = [];
    target.crush.forEach((c, i) => {
      const byAir = whole.forceAt(c) - walls.forceAt(c);
      const rest = target.force[i] - (Number.isFinite(byAir) ? byAir : 0);
      // Where air alone is harder than wanted, the walls can only be as soft as they come.
      force.push(i === 0 ? 0 : Math.max(rest, 1.001 * force[i - 1], 1e-3 * target.force[i]));
    });
    found = densityForCurve(found.body, middle, HALF_HELD, { crush: target.crush, force }, range, true);
  }
  return found;
}

const AIR_TURNS = 2;

/** Crush when the first slice of the lattice has come to a share of its closing [m]. */
function forwardEnd(layers: readonly Layer[]): number {
  const force = Math.min(
    ...layers.slice(0, SLICES).map(({ area, law }) => area * law.stress(FORWARD * law.locksAt)),
  );
  return columnAt(layers, force).crush;
}

/** Places up the height whose strain is told. */
const STRAIN_PLACES = 12;

function strainsOf(body: PrintedBody, { layers, stateAt }: Pressed, end: number) {
  const { strain } = stateAt(end);
  const step = body.height / SLICES;
  return Array.from({ length: STRAIN_PLACES }, (_, k) => {
    const i = Math.round((k * (SLICES - 1)) / (STRAIN_PLACES - 1));
    return { at: (body.foot ?? 0) + (i + 0.5) * step, strain: strain[i], closesAt: layers[i].law.locksAt };
  });
}

const used = ({ strain, closesAt }: { readonly strain: number; readonly closesAt: number }): number =>
  strain / closesAt;

/** Strain at which the skin folds, by its wall at mid-height and the thinnest lattice behind it. */
function foldsOf({ skin, radius, density }: PrintedBody, { material }: OnePrint) {
  const modulus = material.solidModulus;
  const mean = radius.value.reduce((sum, r) => sum + r, 0) / radius.value.length;
  const behind = latticeModulus(material, Math.min(...density.value));
  const [least, most] = foldingBand(modulus, { thickness: skin, radius: mean }, behind);
  return { least: least / modulus, most: most / modulus };
}
