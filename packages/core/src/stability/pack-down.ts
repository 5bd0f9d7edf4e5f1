import { linearValue, type PiecewiseLinear } from '../numerics/piecewise-linear.ts';

/** Washboard under both tracks alike. */
export interface Washboard {
  /** Crest to crest [m]. */
  readonly spacing: number;
  /** Trough to crest [m]. */
  readonly height: number;
  /** [m/s] */
  readonly speed: number;
}

/** One corner, body still or nearly so. SI; rates at the axle. */
export interface ShakenCorner {
  readonly sprungMass: number;
  readonly unsprungMass: number;
  readonly springRate: number;
  readonly tyreRate: number;
  readonly tyreDamping: number;
  /** Force against shaft speed, compression positive. */
  readonly shock: PiecewiseLinear;
  readonly shockRatio: number;
}

export interface PackDown {
  /** How much lower the body rides than at rest [m]; negative: higher. */
  readonly sinks: number;
  /** Suspension travel to each side of that [m]. */
  readonly swing: number;
  /** Largest tyre load taken off ÷ static load: from 1 on the tyre leaves the ground, and this is only a rough figure. */
  readonly tyreShare: number;
}

const POINTS = 64;
const ROUNDS = 60;
const GRAVITY = 9.80665;

/** Mean of a shock's force over a swing, and its slope at the shaft as one straight damper [N, N·s/m]. */
function overOneSwing(shock: PiecewiseLinear, fastest: number): { mean: number; damping: number } {
  let mean = 0;
  let first = 0;
  for (let k = 0; k < POINTS; k += 1) {
    const cos = Math.cos((2 * Math.PI * (k + 0.5)) / POINTS);
    const force = linearValue(shock, fastest * cos);
    mean += force / POINTS;
    first += (2 * force * cos) / POINTS;
  }
  return { mean, damping: first / fastest };
}

/**
 * Packing down: on washboard a shock that pulls more in rebound than it pushes in bump draws the body down until the springs
 * make up for the mean of its force. Harmonic balance: the travel is u₀ + U·cos ωt with ω = 2π·speed ÷ spacing; the shock is
 * replaced by its mean over that swing and by the straight damper c of the same first harmonic,
 *
 *     c = ρ·(1 ÷ πUω)·∮ F(ρUω·cos θ)·cos θ dθ,   sinks u₀ = −ρ·mean F ÷ k
 *
 * which for two straight slopes is u₀ = (c_rebound − c_bump)·Uω ÷ (πk), and U is that of the two-mass model with c and the
 * tyre's rate and damping:
 *
 *     U = T·a ÷ |(T − mᵤω²)(1 − S/(mₛω²)) + S|,   T = kₜ + iωcₜ,   S = k + iωc,   a = height/2
 *
 * @returns null where no steady swing was found
 * @validity the swing is nearly a sine: well above the ride frequency; seated springs, stop not touched, tyre on the ground;
 *   a tyre that lies across the ripples sees less of them
 * @source harmonic balance (describing function), e.g. Nayfeh and Mook, Nonlinear Oscillations (from memory)
 */
export function packDown(corner: ShakenCorner, { spacing, height, speed }: Washboard): PackDown | null {
  const omega = (2 * Math.PI * speed) / spacing;
  let swing = height / 2;
  for (let round = 0; round < ROUNDS; round += 1) {
    const { mean, damping } = overOneSwing(corner.shock, corner.shockRatio * swing * omega);
    const { travel, tyre } = response(corner, damping * corner.shockRatio ** 2, omega, height / 2);
    if (Math.abs(travel - swing) <= 1e-9 * travel) {
      const load = (corner.sprungMass + corner.unsprungMass) * GRAVITY;
      return {
        sinks: (-corner.shockRatio * mean) / corner.springRate,
        swing: travel,
        tyreShare: tyre / load,
      };
    }
    swing = (swing + travel) / 2;
  }
  return null;
}

/** Size of the suspension travel [m] and of the tyre's force about rest [N] of the two-mass model. */
function response(corner: ShakenCorner, damping: number, omega: number, ground: number) {
  const { sprungMass, unsprungMass, springRate, tyreRate, tyreDamping } = corner;
  const square = omega * omega;
  const [s, si] = [springRate, omega * damping];
  const [t, ti] = [tyreRate, omega * tyreDamping];
  // (T − m·ω²)·(1 − S ÷ (M·ω²)) + S, and wheel = travel·(1 − S ÷ (M·ω²)).
  const [b, bi] = [1 - s / (sprungMass * square), -si / (sprungMass * square)];
  const a = t - unsprungMass * square;
  const [under, underI] = [a * b - ti * bi + s, a * bi + ti * b + si];
  const size = under * under + underI * underI;
  const [u, ui] = [((t * under + ti * underI) * ground) / size, ((ti * under - t * underI) * ground) / size];
  const [wheel, wheelI] = [u * b - ui * bi, u * bi + ui * b];
  return {
    travel: Math.hypot(u, ui),
    tyre: Math.hypot(t, ti) * Math.hypot(ground - wheel, wheelI),
  };
}
