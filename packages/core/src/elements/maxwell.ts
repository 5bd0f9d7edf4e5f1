import { cubicSlope, cubicValue, type MonotoneCubic } from '../numerics/monotone-cubic.ts';

/**
 * Viscous branch of a part: a spring in series with a damper, beside the elastic part. Its memory is one inner
 * displacement u, where spring and damper meet:
 *
 *     F = k·(x − u),   du/dt = (k ÷ c)·(x − u)
 *
 * Slow motion passes through the damper and gives no force; fast motion only meets the spring.
 *
 * @invariant holds k·(x − u)²/2 and loses k²·(x − u)²/c ≥ 0: it can only take energy out
 * @validity linear. Beside a stop that starts soft it is stiffer at first touch than the stop itself.
 * @source J. C. Maxwell's element; in vehicle rubber Berg, Vehicle System Dynamics 30 (1998) 197 (from memory)
 */
export interface MaxwellBranch {
  /** Spring k [N/m], > 0. */
  readonly rate: number;
  /** Damper c [N·s/m], > 0. */
  readonly damping: number;
}

/** Force of the branch [N]; below zero it pulls, and a stop that nothing is glued to then lets go. */
export function maxwellForce({ rate }: MaxwellBranch, travel: number, inner: number): number {
  return springPull(rate, travel, inner);
}

/** The same from plain numbers [N]. */
export function springPull(rate: number, travel: number, inner: number): number {
  return rate * (travel - inner);
}

/** du/dt [m/s]. */
export function maxwellFlow({ rate, damping }: MaxwellBranch, travel: number, inner: number): number {
  return (rate / damping) * (travel - inner);
}

/** Energy held by its spring [J]. */
export function maxwellEnergy({ rate }: MaxwellBranch, travel: number, inner: number): number {
  return (rate * (travel - inner) ** 2) / 2;
}

/** Power lost in its damper [W]. */
export function maxwellLoss({ rate, damping }: MaxwellBranch, travel: number, inner: number): number {
  return (rate * (travel - inner)) ** 2 / damping;
}

/**
 * What the branch is to a steady sine: rate in phase k·(ωc)² ÷ (k² + (ωc)²) and across it k²·ωc ÷ (k² + (ωc)²) [N/m].
 * @param angular – ω [rad/s]
 */
export function maxwellModuli({ rate, damping }: MaxwellBranch, angular: number) {
  const viscous = angular * damping;
  const share = rate / (rate ** 2 + viscous ** 2);
  return { storage: share * viscous ** 2, loss: share * rate * viscous };
}

/** Energy lost in one steady sine of travel ±amplitude [J]: π·loss·amplitude². */
export function maxwellLoopEnergy(branch: MaxwellBranch, amplitude: number, angular: number): number {
  return Math.PI * maxwellModuli(branch, angular).loss * amplitude ** 2;
}

/**
 * Where the face of a stop stands by itself after it let go, held back by a damper that has not run out yet: the crush
 * at which curve(crush)·gain = k·(u − crush). Touched again before it has recovered, it is met later than its gap says.
 *
 * @param gain – what multiplies the curve at that moment, 1 plus the friction share, > 0
 * @param inner – u [m]; at or below zero the stop stands at full length
 * @returns [m], 0 ≤ it < inner; exact to rounding
 */
export function restingCrush(
  curve: MonotoneCubic,
  gain: number,
  { rate }: MaxwellBranch,
  inner: number,
): number {
  if (inner <= 0) return 0;
  // Rising and continuous, negative at 0 and positive at u: Newton kept inside the bracket always arrives.
  let low = 0;
  let high = inner;
  let crush = inner / 2;
  for (let k = 0; k < 60 && high - low > 1e-15 * inner; k += 1) {
    const excess = gain * cubicValue(curve, crush) - rate * (inner - crush);
    if (excess === 0) return crush;
    if (excess > 0) high = crush;
    else low = crush;
    const step = crush - excess / (gain * cubicSlope(curve, crush) + rate);
    const next = step > low && step < high ? step : (low + high) / 2;
    if (next === crush) return crush;
    crush = next;
  }
  return crush;
}
