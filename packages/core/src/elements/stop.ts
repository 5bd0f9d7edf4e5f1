import { cubicIntegral, cubicValue, type MonotoneCubic } from '../numerics/monotone-cubic.ts';

/**
 * Bump stop with the metal behind it:
 *
 *     F = max(0, 1 + rateFactor·v)·(curve(c) + metalRate·m),   c = crush or 0, m = crush beyond the metal's place or 0
 *
 * The rate factor multiplies metal too: that is the law of the house's reference cases, where it stands for the loss
 * in whatever is being crushed. It is an ad-hoc law: `rateFactor` has no physical part behind it, it makes a press
 * curve stiffer when closing fast and softer when opening, and so loses energy. Read its size from a drop test.
 *
 * @param curve – force [N] against crush [m], from a press test
 * @param crush – [m], 0 while the stop is not touched: metal may stand before it
 * @param metalCrush – crush beyond the metal's place [m], 0 while metal is not reached
 * @param speed – closing speed [m/s], compression positive
 * @returns force along the stop [N], ≥ 0 while touched
 * @invariant dissipated power rateFactor·v²·elastic force ≥ 0
 * @validity crush within the table; beyond it the end slope is carried on and a run reports it
 */
export function stopForce(
  curve: MonotoneCubic,
  rateFactor: number,
  metalRate: number,
  crush: number,
  metalCrush: number,
  speed: number,
): number {
  return closingGain(rateFactor, speed) * stopElastic(curve, metalRate, crush, metalCrush);
}

/** What the closing speed does to the force: 1 when still, never negative. */
export function closingGain(rateFactor: number, speed: number): number {
  return Math.max(0, 1 + rateFactor * speed);
}

/**
 * Force without what the speed does to it [N].
 * @param frictionGain – 1 + the share that friction adds to the curve; at 1 this is what is given back
 */
export function stopElastic(
  curve: MonotoneCubic,
  metalRate: number,
  crush: number,
  metalCrush: number,
  frictionGain = 1,
): number {
  return frictionGain * cubicValue(curve, crush) + metalRate * metalCrush;
}

/** Energy held in a crushed stop and the metal behind it [J], by the elastic part of the law. */
export function stopEnergy(
  curve: MonotoneCubic,
  metalRate: number,
  crush: number,
  metalCrush: number,
): number {
  return cubicIntegral(curve, crush) + (metalRate * metalCrush * metalCrush) / 2;
}

/**
 * Force of a stop and the metal behind it along the stop [N], from its parts. Beyond where it should have let go it is the
 * smooth continuation of the law, and may pull: inside a tried step that is wanted.
 * @param friction – 1 and the share that friction adds
 * @param gain – of the closing speed, see `closingGain`
 */
export function stopSum(
  friction: number,
  curve: number,
  metal: number,
  gain: number,
  viscous: number,
  oil: number,
): number {
  return gain * (friction * curve + metal) + viscous + oil;
}
