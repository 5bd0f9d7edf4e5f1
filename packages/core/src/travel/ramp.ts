import { cornerAt, type End, type Side } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf, figureOf, unsure } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import type { Ramp } from './articulation-result.ts';
import { type RolledAxle, rollUnder } from './rolled-axle.ts';

/** The usual ramp; an index from another one is not comparable. */
const RAMP = (20 * Math.PI) / 180;

/** A ramp, nominal readings first, then one entry a trial. */
export interface SampledRamp {
  readonly side: Side;
  readonly twist: Column;
  readonly height: Column;
  readonly index: Column;
  readonly lifts: End | null;
  readonly known: boolean;
  readonly ends: boolean;
}

/**
 * One front wheel up a ramp. Both axles pass the same roll moment through the body, in opposite senses, until the
 * lighter of the two low tyres has no load left, or both are held by contacts:
 *
 *     moment = min over ends of (load of the low tyre · track),   twist = roll of the front axle + roll of the rear one
 *     height = front track · sin(twist),   index = 1000 · height ÷ (sin 20° · wheelbase)
 *
 * @validity the rig climbs by one wheel without pitching; tyres and frame do not give, both of which raise a real index
 * @source statics; index: distance along the slope of a 20° ramp ÷ wheelbase × 1000 (general usage)
 */
export function rampOf(
  setup: Setup,
  side: Side,
  front: RolledAxle,
  rear: RolledAxle,
  draws: Draws,
): SampledRamp {
  const length = draws.trials + 1;
  const track = draws.of(setup.ends.front.base.track);
  const wheelbase = draws.of(setup.rig.wheelbase);
  const moment = columnOf(length, (i) => Math.min(front.liftingMoment[i], rear.liftingMoment[i]));
  const rolls = [front, rear].map((axle) => columnOf(length, (i) => rollUnder(axle, i, moment[i])));
  const twist = columnOf(length, (i) => rolls.reduce((sum, roll) => sum + roll[i], 0));
  const height = columnOf(length, (i) => track[i] * Math.sin(twist[i]));
  const isHeld = [front, rear].every(({ held }, k) => rolls[k][0] >= held[0]);
  const endsAt = (i: number) =>
    [front, rear].every(({ held, heldBy }, k) => rolls[k][i] < held[i] || heldBy[i] >= 0);
  const known = [front, rear].every(({ shared }) => shared.moves.needs.length === 0);
  return {
    side,
    twist,
    height,
    index: columnOf(length, (i) => (1000 * height[i]) / (Math.sin(RAMP) * wheelbase[i])),
    lifts: isHeld ? null : front.liftingMoment[0] <= rear.liftingMoment[0] ? 'front' : 'rear',
    known: known && rolls[0].every((_, i) => endsAt(i)),
    ends: endsAt(0),
  };
}

/** What is told of it. */
export function rampFigures({ side, twist, height, index, lifts, known, ends }: SampledRamp): Ramp {
  const figure = (dimension: 'angle' | 'length' | 'ratio', column: Column) => {
    const made = figureOf(dimension, column);
    return known ? made : unsure(made);
  };
  return {
    corner: cornerAt('front', side),
    twist: figure('angle', twist),
    height: figure('length', height),
    index: figure('ratio', index),
    lifts,
    ends,
  };
}
