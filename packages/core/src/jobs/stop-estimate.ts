import { type GasChamber, gasEnergy, gasForce, pressureAt, rodArea } from '../elements/gas-chamber.ts';
import type { Figure } from '../finding/figure.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { type Block, blockArea, bondedModulus, shapeFactor } from '../stopdesign/block.ts';
import { columnAt, columnEnergy, columnPressed, type Layer } from '../stopdesign/column.ts';
import { filledRubber } from '../stopdesign/filled-rubber.ts';
import {
  CELLS_TO,
  closingStrain,
  FOAM_DENSITIES,
  FOAM_MODULUS,
  FOAM_SOLID,
  leastFoam,
  mostFoam,
} from '../stopdesign/foam-law.ts';
import { modulusBand } from '../stopdesign/hardness.ts';
import type { Hardness } from '../stopdesign/hardness-text.ts';
import { type LayerLaw, neoHookeanLaw } from '../stopdesign/layer-law.ts';

/** Ends glued or moulded to plates, greased so that they slip, or dry: somewhere between. */
export type EstimateEnds = 'bonded' | 'greased' | 'dry';

/** One height of a block, solid or with a bore. */
export interface BlockStep {
  readonly height: number;
  readonly diameter: number;
  /** [m]; 0 for none. */
  readonly bore: number;
}

export type StopEstimateRequest =
  | {
      readonly kind: 'rubber' | 'polyurethane';
      readonly hardness: Hardness;
      /** From one end to the other; several where the block is stepped. */
      readonly steps: readonly BlockStep[];
      readonly ends: EstimateEnds;
    }
  | {
      readonly kind: 'foam';
      /** Weight ÷ volume [kg/m³]. */
      readonly density: number;
      /** Young's modulus of the solid, least and most [Pa]; null: what such foams are usually made of. */
      readonly solid: readonly [number, number] | null;
      readonly steps: readonly BlockStep[];
    }
  | {
      readonly kind: 'gas';
      readonly rodDiameter: number;
      /** Charge, gauge, rod out [Pa]. */
      readonly pressure: number;
      readonly column: number;
      readonly stroke: number;
    };

/** What is doubtful about an estimate. */
export const ESTIMATE_DOUBTS = [
  'hard',
  'slender',
  'flat',
  'stepped',
  'no-oil',
  'past-ideal',
  'foam',
  'foam-dense',
] as const;
export type EstimateDoubt = (typeof ESTIMATE_DOUBTS)[number];

/** A stop that nobody pressed: force against crush as a band. */
export interface StopEstimate {
  readonly kind: StopEstimateRequest['kind'];
  /** [m]; at each the least, middle and most force [N]. */
  readonly crush: readonly number[];
  readonly least: readonly number[];
  readonly middle: readonly number[];
  readonly most: readonly number[];
  readonly usableCrush: Figure;
  /** Held at the end of the curve [J]: least, middle, most. */
  readonly energy: readonly [number, number, number];
  /** Of each step; empty for gas. */
  readonly shapeFactors: readonly number[];
  /** Charge 60 K warmer ÷ charge, gauge; null but for gas. */
  readonly warmed: number | null;
  readonly doubts: readonly EstimateDoubt[];
}

/**
 * Strain that such a block bears: middle and half of the band, by the most strained step.
 * @source trade notes of this house, from memory
 */
const BEARS = {
  rubber: { middle: 0.375, half: 0.075 },
  polyurethane: { middle: 0.275, half: 0.075 },
} as const;
const POINTS = 12;
/** From this Shore A on the relations between hardness and stiffness part (check of this house). */
const HARD = 85;
/** Height ÷ diameter above which a block may buckle; shape factor above which its law is off by more than a tenth. */
const SLENDER = 1.5;
const FLAT = 1;
/** Ideal gas is good to about here, absolute [Pa]. */
const IDEAL_TO = 100e5;
const COLD = 20;
const HOT = 80;

/**
 * Force against crush by kind, where nothing was pressed: least, middle and most.
 *
 * Blocks: modulus out of hardness as a band; each step neo-Hookean with E_c out of its shape factor where ends are bonded,
 * steps in series. Least is without any hold of the ends where they are dry, or where inner faces of a stepped block hold
 * each other only partly; most is with each step held. Gas: slow (n = 1) to fast (n = 1.4). Foam: open cells that fold to
 * closed ones with their gas, over the band of the solid.
 *
 * @failure `stop-shape` where a size cannot be
 */
export function estimateStop(request: StopEstimateRequest): Result<StopEstimate> {
  switch (request.kind) {
    case 'gas':
      return estimateGas(request);
    case 'foam':
      return estimateFoam(request);
    default:
      return estimateBlock(request);
  }
}

type BlockRequest = Extract<StopEstimateRequest, { kind: 'rubber' | 'polyurethane' }>;

function estimateBlock({ kind, hardness, steps, ends }: BlockRequest): Result<StopEstimate> {
  const fault = stepsFault(steps);
  if (fault !== null) return bad(fault);
  const modulus = modulusBand(hardness.value, hardness.scale);
  const shoreA = hardness.scale === 'shore-a' ? hardness.value : 100;
  const { k, bulk } = filledRubber(shoreA);
  const isStepped = steps.length > 1;
  const layersOf = (young: number, factor: number | null): readonly Layer[] =>
    steps.map((step) => {
      const block: Block = { ...step, ends: factor === null ? 'greased' : 'bonded' };
      const apparent = factor === null ? young : bondedModulus(young, shapeFactor(block), factor, bulk);
      return { height: step.height, area: blockArea(block), law: neoHookeanLaw(apparent / 3) };
    });
  const isHeldForSure = ends === 'bonded' && !isStepped;
  const least = layersOf(modulus.least, isHeldForSure ? k : null);
  const most = layersOf(modulus.most, ends === 'greased' ? null : 1);
  // Where the ends are known, the middle is that of the middle modulus; else half-way in the logarithm of the force.
  const known =
    ends === 'greased'
      ? layersOf(modulus.middle, null)
      : isHeldForSure
        ? layersOf(modulus.middle, (1 + k) / 2)
        : null;
  const bears = BEARS[kind];
  const guide = known ?? least;
  const [from, usable, to] = [bears.middle - bears.half, bears.middle, bears.middle + bears.half].map(
    (strain) => crushAt(guide, strain),
  );
  const crush = Array.from({ length: POINTS + 1 }, (_, i) => (to * i) / POINTS);
  const forces = (layers: readonly Layer[]) => crush.map((c) => columnPressed(layers, c).force);
  const [low, high] = [forces(least), forces(most)];
  const heldAt = (layers: readonly Layer[]) => columnEnergy(layers, columnPressed(layers, to));
  const energies = [heldAt(least), heldAt(most)] as const;
  const height = steps.reduce((sum, step) => sum + step.height, 0);
  const narrowest = Math.min(...steps.map(({ diameter }) => diameter));
  const shapeFactors = steps.map((step) => shapeFactor({ ...step, ends: 'bonded' }));
  const doubts: EstimateDoubt[] = [];
  if (shoreA >= HARD) doubts.push('hard');
  if (height / narrowest > SLENDER) doubts.push('slender');
  if (ends !== 'greased' && Math.max(...shapeFactors) > FLAT) doubts.push('flat');
  if (isStepped) doubts.push('stepped');
  return good({
    kind,
    crush,
    least: low,
    middle: known ? forces(known) : low.map((f, i) => Math.sqrt(f * high[i])),
    most: high,
    usableCrush: { dimension: 'length', value: usable, tolerance: (to - from) / 2 },
    energy: [energies[0], known ? heldAt(known) : Math.sqrt(energies[0] * energies[1]), energies[1]],
    shapeFactors,
    warmed: null,
    doubts,
  });
}

/** A size that cannot be; null when none. */
function stepsFault(steps: readonly BlockStep[]): Problem | null {
  for (const { height, diameter, bore } of steps) {
    const shape = (found: string, accepted: string): Problem => ({
      code: 'stop-shape',
      where: {},
      found,
      accepted,
    });
    if (!(height > 0 && diameter > 0)) return shape('no size', 'height and diameter above zero');
    if (!(bore >= 0 && bore < diameter))
      return shape(`a bore of ${(bore * 1000).toFixed(1)} mm`, 'less than the diameter');
  }
  return null;
}

/** How far a foam is followed: share of the strain at which dense cells close. */
const FOAM_TO = 0.85;
/** What that leaves open of the usable crush, as a share of it: real ones go deeper, since they widen. */
const FOAM_OPEN = 0.2;

type FoamRequest = Extract<StopEstimateRequest, { kind: 'foam' }>;

function estimateFoam({ density, solid, steps }: FoamRequest): Result<StopEstimate> {
  const fault = stepsFault(steps);
  if (fault !== null) return bad(fault);
  const share = density / FOAM_SOLID;
  const range = (found: string, accepted: string) => bad({ code: 'stop-shape', where: {}, found, accepted });
  if (!(share >= FOAM_DENSITIES[0] && share <= FOAM_DENSITIES[1]))
    return range(
      `a foam of ${density.toFixed(0)} kg/m³`,
      `${FOAM_DENSITIES.map((rho) => Math.round(rho * FOAM_SOLID)).join(' to ')} kg/m³`,
    );
  const [soft, hard] = solid ?? FOAM_MODULUS;
  if (!(soft > 0 && hard >= soft)) return range('such a solid', 'a modulus above zero, the least first');
  const layersOf = (law: LayerLaw): readonly Layer[] =>
    steps.map((step) => ({ height: step.height, area: blockArea({ ...step, ends: 'greased' }), law }));
  const least = layersOf(leastFoam(soft, share));
  const most = layersOf(mostFoam(hard, share));
  // Narrow steps are crushed most: the curve ends where the first of them is as far as the law goes, on either side.
  const end = FOAM_TO * closingStrain(share);
  const to = Math.min(crushAt(least, end), crushAt(most, end));
  const crush = Array.from({ length: POINTS + 1 }, (_, i) => (to * i) / POINTS);
  const forces = (layers: readonly Layer[]) => crush.map((c) => columnPressed(layers, c).force);
  const [low, high] = [forces(least), forces(most)];
  const heldAt = (layers: readonly Layer[]) => columnEnergy(layers, columnPressed(layers, to));
  const energies = [heldAt(least), heldAt(most)] as const;
  const height = steps.reduce((sum, step) => sum + step.height, 0);
  const doubts: EstimateDoubt[] = ['foam'];
  if (share > CELLS_TO) doubts.push('foam-dense');
  if (height / Math.min(...steps.map(({ diameter }) => diameter)) > SLENDER) doubts.push('slender');
  if (steps.length > 1) doubts.push('stepped');
  const usable = to / (1 + FOAM_OPEN);
  return good({
    kind: 'foam',
    crush,
    least: low,
    middle: low.map((f, i) => Math.sqrt(f * high[i])),
    most: high,
    usableCrush: { dimension: 'length', value: usable, tolerance: FOAM_OPEN * usable },
    energy: [energies[0], Math.sqrt(energies[0] * energies[1]), energies[1]],
    shapeFactors: [],
    warmed: null,
    doubts,
  });
}

/** Crush of all steps when the most strained one has come to a strain [m]. */
function crushAt(layers: readonly Layer[], strain: number): number {
  const force = Math.min(...layers.map(({ area, law }) => area * law.stress(strain)));
  return columnAt(layers, force).crush;
}

type GasRequest = Extract<StopEstimateRequest, { kind: 'gas' }>;

function estimateGas({ rodDiameter, pressure, column, stroke }: GasRequest): Result<StopEstimate> {
  const shape = (found: string, accepted: string) => bad({ code: 'stop-shape', where: {}, found, accepted });
  if (!(rodDiameter > 0 && stroke > 0)) return shape('no size', 'rod and stroke above zero');
  if (!(pressure >= 0)) return shape('a negative charge', 'a charge by gauge, 0 or more');
  if (!(column > stroke))
    return shape(
      `a gas column of ${(column * 1000).toFixed(1)} mm`,
      'more than the stroke: gas volume ÷ rod area, rod out',
    );
  const chamber = (index: number): GasChamber => ({ area: rodArea(rodDiameter), pressure, column, index });
  const [slow, middle, fast] = [1, 1.2, 1.4].map(chamber);
  const crush = Array.from({ length: POINTS + 1 }, (_, i) => (stroke * i) / POINTS);
  const doubts: EstimateDoubt[] = ['no-oil'];
  if (gasForce(fast, stroke) / fast.area > IDEAL_TO) doubts.push('past-ideal');
  return good({
    kind: 'gas',
    crush,
    least: crush.map((x) => gasForce(slow, x)),
    middle: crush.map((x) => gasForce(middle, x)),
    most: crush.map((x) => gasForce(fast, x)),
    usableCrush: { dimension: 'length', value: stroke, tolerance: 0 },
    energy: [gasEnergy(slow, stroke), gasEnergy(middle, stroke), gasEnergy(fast, stroke)],
    shapeFactors: [],
    warmed: pressure > 0 ? pressureAt(pressure, COLD, HOT) / pressure : null,
    doubts,
  });
}
