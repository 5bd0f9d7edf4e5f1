/**
 * Friction branch of a rubber or foam part, which makes the loop of a slow press. Berg's law: from the last reversal
 * (xs, Fs) the force runs toward ±Fmax along a hyperbola whose first slope is always Fmax ÷ x2,
 *
 *     closing   F = Fs + (x − xs)(Fmax − Fs) ÷ (x2·(1 − α) + (x − xs))
 *     opening   F = Fs + (x − xs)(Fmax + Fs) ÷ (x2·(1 + α) − (x − xs)),     α = Fs ÷ Fmax
 *
 * x travel, Fmax the limit, x2 the travel in which half of it is reached from zero. It has no rate in it.
 *
 * In a stop this house lets F be a share of the elastic force (limit a plain number below one): a press loop is narrow
 * where the force is small, and a stop whose friction grows with its load never pulls.
 *
 * @invariant |F| never exceeds the limit
 * @validity empirical. The law remembers one reversal only: a press with many small reversals on the way can give back
 *   up to 0.273·limit·x2 more than it took on the next long stroke. A single press and release always loses.
 * @source Berg, Vehicle System Dynamics 30 (1998) 197 (from memory)
 */
export interface FrictionBranch {
  /** What the branch runs toward, > 0: a force [N], or a share of the elastic force [1]. */
  readonly limit: number;
  /** Travel from rest in which half the limit is reached [m], > 0. */
  readonly halfTravel: number;
}

/** Where the motion last turned round, or began. A part touched for the first time starts from zero and zero. */
export interface Reversal {
  readonly travel: number;
  /** In the unit of the limit; its size at most the limit. */
  readonly force: number;
}

/** Berg's force at a travel, in the unit of the limit; which side of the reversal it lies on says which way it moves. */
export function frictionForce(
  travel: number,
  reversal: Reversal,
  { limit, halfTravel }: FrictionBranch,
): number {
  return bergForce(travel, reversal.travel, reversal.force, limit, halfTravel);
}

/** The same from plain numbers: travel and force of the reversal, limit and half travel of the branch. */
export function bergForce(
  travel: number,
  turnedAt: number,
  turnedWith: number,
  limit: number,
  halfTravel: number,
): number {
  const moved = travel - turnedAt;
  if (moved === 0) return turnedWith;
  const way: number = moved > 0 ? 1 : -1;
  const room = limit - way * turnedWith;
  const far = Math.abs(moved);
  return turnedWith + (way * far * room) / ((halfTravel * room) / limit + far);
}

/** d force ÷ d travel, ≥ 0: limit ÷ halfTravel at the reversal, less and less beyond. */
export function frictionRate(
  travel: number,
  reversal: Reversal,
  { limit, halfTravel }: FrictionBranch,
): number {
  const moved = travel - reversal.travel;
  const first = limit / halfTravel;
  if (moved === 0) return first;
  const room = limit - Math.sign(moved) * reversal.force;
  const scale = (halfTravel * room) / limit;
  return first * (scale / (scale + Math.abs(moved))) ** 2;
}

/**
 * Force at the ends of a steady loop of travel ±amplitude:
 * F0 = Fmax ÷ (2·x2)·(√(x2² + X0² + 6·x2·X0) − x2 − X0). From rest it takes ten cycles and more to get there.
 */
export function frictionAmplitude(amplitude: number, { limit, halfTravel }: FrictionBranch): number {
  const root = Math.sqrt(halfTravel ** 2 + amplitude ** 2 + 6 * halfTravel * amplitude);
  return (limit / (2 * halfTravel)) * (root - halfTravel - amplitude);
}

/**
 * Energy lost in one steady loop of travel ±amplitude [J when the limit is a force]:
 * E = 2·(−2·F0·X0 + (Fmax + F0)·(2·X0 − c·ln(1 + 2·X0 ÷ c))), c = x2·(1 + F0 ÷ Fmax).
 */
export function frictionLoopEnergy(amplitude: number, branch: FrictionBranch): number {
  const { limit, halfTravel } = branch;
  const end = frictionAmplitude(amplitude, branch);
  const scale = halfTravel * (1 + end / limit);
  const swept = 2 * amplitude - scale * Math.log1p((2 * amplitude) / scale);
  return 2 * (-2 * end * amplitude + (limit + end) * swept);
}
