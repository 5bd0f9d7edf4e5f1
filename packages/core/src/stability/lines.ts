import type { Dimension, Figure } from '../finding/figure.ts';
import { cornerAt, ENDS, type End, type Side } from '../finding/place.ts';
import { piecewiseLinear } from '../numerics/piecewise-linear.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf, figureOf } from '../stance/columns.ts';
import { type Draws, drawsOf, NOMINAL_DRAWS } from '../stance/draws.ts';
import { dampingColumns, modeColumns } from '../stance/end-stance.ts';
import { tyreRate } from '../stance/tyre-rate.ts';
import { flatRearFrequency, flatSpeed } from './flat-ride.ts';
import { packDown, type Washboard } from './pack-down.ts';
import type { StabilityLineId } from './result.ts';
import type { RollCentres } from './roll-centre.ts';
import { mirrored, type RollModel, type SampledRoll, sampleRoll } from './roll-model.ts';
import { rollPerG, rollStiffness, stopTouchesAt } from './roll-rates.ts';
import { rigidSlope, sideSlope } from './side-slope.ts';

export interface NamedWashboard extends Washboard {
  readonly name: string;
}

/** A line before it becomes a figure: nominal value, then one a trial; not finite where there is none. */
export interface SampledLine {
  readonly id: StabilityLineId;
  readonly place: 'rig' | End;
  readonly of: string;
  readonly dimension: Dimension;
  readonly column: Column;
  /** Rests on a length that nobody measured, or is rough by its own law: nobody knows how sure it is. */
  readonly unsure: boolean;
}

export interface LineOptions {
  readonly rollCentres: RollCentres;
  readonly roadSpeed: number;
  readonly washboards: readonly NamedWashboard[];
}

export interface SampledLines {
  readonly lines: readonly SampledLine[];
  readonly lowerSide: Side;
}

/** Tilting a rig is a search in each trial: so many are enough for its half-widths, to 1 % and their own scatter. */
const SLOPE_TRIALS = 256;

/** All lines of a setup, sampled. */
export function sampleLines(setup: Setup, draws: Draws, options: LineOptions): SampledLines {
  const lines: SampledLine[] = [];
  const roll = sampleRoll(setup, options.rollCentres, draws);
  const liftUnknown = ENDS.some((end) => roll.moves[end].needs.length > 0);
  const add = (
    id: StabilityLineId,
    place: 'rig' | End,
    dimension: Dimension,
    column: Column,
    { of = '', unsure = liftUnknown } = {},
  ) => lines.push({ id, place, of, dimension, column, unsure });
  const length = draws.trials + 1;
  const per = (formula: (i: number) => number) => columnOf(length, formula);
  const { ends } = setup;
  const track = { front: draws.of(ends.front.base.track), rear: draws.of(ends.rear.base.track) };

  add('cg-height', 'rig', 'length', roll.centre.height);
  add(
    'static-stability-factor',
    'rig',
    'ratio',
    per((i) => (track.front[i] + track.rear[i]) / 4 / roll.centre.height[i]),
  );
  const slope = slopeLines(setup, draws, options.rollCentres);
  for (const [id, column] of slope.columns) add(id, 'rig', 'angle', column);
  rollLines(setup, roll, length, add);
  rideLines(setup, roll, draws, options, add);
  const packs = {
    front: packLines(setup, 'front', roll, draws, options),
    rear: packLines(setup, 'rear', roll, draws, options),
  };
  for (const end of ENDS)
    for (const { name, sinks, swing, rough } of packs[end]) {
      add('washboard-sinks', end, 'length', sinks, { of: name, unsure: rough });
      add('washboard-swing', end, 'length', swing, { of: name, unsure: rough });
    }
  return { lines, lowerSide: slope.lowerSide };
}

type Add = (
  id: StabilityLineId,
  place: 'rig' | End,
  dimension: Dimension,
  column: Column,
  more?: { of?: string; unsure?: boolean },
) => void;

function slopeLines(setup: Setup, draws: Draws, rollCentres: RollCentres) {
  const few =
    draws.trials > SLOPE_TRIALS ? drawsOf(setup.rig, { trials: SLOPE_TRIALS, seed: draws.seed }) : draws;
  const roll = sampleRoll(setup, rollCentres, few);
  const wheelbase = few.of(setup.rig.wheelbase);
  const tilted = (model: RollModel, left: number, i: number) => {
    const share = roll.centre.behindFrontAxle[i] / wheelbase[i];
    const rigid = rigidSlope({ share, left, height: roll.centre.height[i] }, model);
    return { rigid, ...sideSlope(model, rigid) };
  };
  const left = roll.centre.left;
  const right = tilted(roll.model(0), left[0], 0);
  const other = tilted(mirrored(roll.model(0)), -left[0], 0);
  const lowerSide: Side = other.tips < right.tips ? 'left' : 'right';
  const names = {
    rigid: 'slope-rigid',
    firstLift: 'slope-first-lift',
    tips: 'slope-tips',
    lean: 'slope-lean',
  } as const;
  const columns = new Map<StabilityLineId, Column>();
  for (const id of Object.values(names)) columns.set(id, new Float64Array(few.trials + 1));
  for (let i = 0; i <= few.trials; i += 1) {
    const model = roll.model(i);
    const at = lowerSide === 'right' ? tilted(model, left[i], i) : tilted(mirrored(model), -left[i], i);
    for (const [key, id] of Object.entries(names) as [keyof typeof names, StabilityLineId][])
      columns.get(id)![i] = at[key];
  }
  return { lowerSide, columns };
}

function rollLines(setup: Setup, roll: SampledRoll, length: number, add: Add) {
  const models = Array.from({ length }, (_, i) => roll.model(i));
  const stiffness = models.map(({ ends }) => ({
    front: rollStiffness(ends.front),
    rear: rollStiffness(ends.rear),
  }));
  const perG = models.map(rollPerG);
  const per = (formula: (i: number) => number) => columnOf(length, formula);
  const lever = per((i) => {
    const { sprungHeight, rearShare, ends } = models[i];
    return sprungHeight - (1 - rearShare) * ends.front.rollCentre - rearShare * ends.rear.rollCentre;
  });
  const transfer = (end: End) => per((i) => perG[i]?.ends[end].loadTransfer ?? Number.NaN);
  const [front, rear] = [transfer('front'), transfer('rear')];
  add('roll-lever', 'rig', 'length', lever);
  add(
    'roll-whole',
    'rig',
    'rollRate',
    per((i) => stiffness[i].front.whole + stiffness[i].rear.whole),
    { unsure: false },
  );
  add(
    'roll-gradient',
    'rig',
    'angle',
    per((i) => perG[i]?.bodyRoll ?? Number.NaN),
  );
  for (const end of ENDS) {
    const of = (part: 'springs' | 'gas' | 'bar' | 'tyres' | 'whole') => per((i) => stiffness[i][end][part]);
    add(
      'roll-centre',
      end,
      'length',
      per((i) => models[i].ends[end].rollCentre),
    );
    add('roll-springs', end, 'rollRate', of('springs'), { unsure: false });
    if (of('gas')[0] > 0) add('roll-gas', end, 'rollRate', of('gas'), { unsure: false });
    if (setup.ends[end].base.antiRollBar) add('roll-bar', end, 'rollRate', of('bar'), { unsure: false });
    add('roll-tyres', end, 'rollRate', of('tyres'), { unsure: false });
    add('roll-whole', end, 'rollRate', of('whole'), { unsure: false });
    const own = end === 'front' ? front : rear;
    add('load-transfer', end, 'force', own);
    add(
      'load-transfer-share',
      end,
      'ratio',
      per((i) => own[i] / (front[i] + rear[i])),
    );
    add(
      'stop-touches',
      end,
      'acceleration',
      per((i) => stopTouchesAt(models[i].ends[end], perG[i]?.ends[end].tilt ?? Number.NaN)),
    );
  }
}

function rideLines(setup: Setup, roll: SampledRoll, draws: Draws, { roadSpeed }: LineOptions, add: Add) {
  const sure = { unsure: false };
  const modes = {
    front: modeColumns(setup, 'front', roll.weights, draws),
    rear: modeColumns(setup, 'rear', roll.weights, draws),
  };
  for (const end of ENDS) {
    const damping = dampingColumns(setup, end, roll.weights, draws);
    add('ride-frequency', end, 'frequency', modes[end].ride, sure);
    add('hop-frequency', end, 'frequency', modes[end].hop, sure);
    add('damping-compression', end, 'ratio', damping.compression, sure);
    add('damping-rebound', end, 'ratio', damping.rebound, sure);
  }
  const wheelbase = draws.of(setup.rig.wheelbase);
  const [front, rear] = [modes.front.ride, modes.rear.ride];
  const per = (formula: (i: number) => number) => columnOf(front.length, formula);
  add(
    'flat-ride-ratio',
    'rig',
    'ratio',
    per((i) => rear[i] / front[i]),
    sure,
  );
  add(
    'flat-ride-wanted',
    'rig',
    'ratio',
    per((i) => flatRearFrequency(front[i], wheelbase[i], roadSpeed) / front[i]),
    sure,
  );
  add(
    'flat-ride-speed',
    'rig',
    'speed',
    per((i) => flatSpeed(front[i], rear[i], wheelbase[i])),
    sure,
  );
}

function packLines(setup: Setup, end: End, roll: SampledRoll, draws: Draws, { washboards }: LineOptions) {
  const { base, spring, shockSetting } = setup.ends[end];
  const rate = tyreRate(setup.ends[end], draws);
  const sprung = roll.weights.sprungEnd[end];
  const shock = piecewiseLinear(shockSetting.speed, shockSetting.force);
  return washboards.map((washboard) => {
    const length = draws.trials + 1;
    const [sinks, swing] = [new Float64Array(length), new Float64Array(length)];
    let rough = false;
    for (let i = 0; i < length; i += 1) {
      const at = draws.trial(i);
      const gas = roll.model(i).ends[end].gas.rate;
      const packed = packDown(
        {
          sprungMass: sprung[i] / 2,
          unsprungMass: at(base.unsprungMass) / 2,
          springRate: at(spring.rate) * at(base.springRatio) ** 2 + gas,
          tyreRate: rate[i],
          tyreDamping: at(base.tyre.damping),
          shock,
          shockRatio: at(base.shock.ratio),
        },
        washboard,
      );
      sinks[i] = packed?.sinks ?? Number.NaN;
      swing[i] = packed?.swing ?? Number.NaN;
      if (i === 0) rough = packed === null || packed.tyreShare >= 1;
    }
    return { name: washboard.name, sinks, swing, rough };
  });
}

/** The figure of a line; null where the nominal rig has none, its tolerance null where some trial has none. */
export function figureOfLine({ dimension, column, unsure }: SampledLine): Figure | null {
  if (!Number.isFinite(column[0])) return null;
  const { value, tolerance } = figureOf(dimension, column);
  return { dimension, value, tolerance: unsure || !Number.isFinite(tolerance) ? null : tolerance };
}

/** Free bump left at an end: the lesser of both sides, nominal [m]. */
export const freeBumpAt = (setup: Setup, end: End, rollCentres: RollCentres): number => {
  const { corners } = sampleRoll(setup, rollCentres, NOMINAL_DRAWS);
  return Math.min(corners[cornerAt(end, 'left')].freeBump[0], corners[cornerAt(end, 'right')].freeBump[0]);
};
