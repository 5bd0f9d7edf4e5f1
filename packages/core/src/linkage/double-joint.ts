/**
 * How a double joint shares its bend between its two crosses.
 *
 * The two crosses are a coupling length apart; a centring ball holds the point where both axes meet at a fixed place on
 * the axis of the first shaft, and lets the second slide. Triangle first cross, meeting point, second cross:
 *
 *     sin β₂ = sin β ÷ (2·cos(β₀/2))      β₁ = β − β₂
 *
 * With β₀ = 0 the ball sits half way and the halves are equal to first order only; a ball set further towards the
 * fixed side makes them equal at one angle β₀ > 0.
 *
 * @param angle – β, of the whole joint [rad], 0 … under 2π/3
 * @param evenAt – β₀, at which it is made to run evenly [rad]
 * @returns the bend of each cross, from the case side [rad]; their sum is β
 * @validity a joint with a sliding centring ball; one that is centred by gears or yokes is even at every angle
 * @source law of sines; that the ball is set off towards the fixed side for one even angle: a maker's technical page
 * (read, name withheld)
 */
export function doubleJointHalves(angle: number, evenAt = 0): readonly [first: number, second: number] {
  const second = Math.asin(Math.sin(angle) / (2 * Math.cos(evenAt / 2)));
  return [angle - second, second];
}
