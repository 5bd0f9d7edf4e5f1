/**
 * The universal joint: two yokes on a cross. Its output runs unevenly, twice a turn, as soon as it is bent; how
 * several of them in a row add up is worked out without any small-angle step.
 */

/**
 * Output speed ÷ input speed of one joint:
 *
 *     ω₂/ω₁ = cos β ÷ (1 − sin²β·cos²θ)
 *
 * @param angle – β, between the two shafts [rad], 0 … under π/2
 * @param turn – θ of the driving shaft [rad], 0 where its yoke lies in the plane of both shafts
 * @returns between cos β and 1 ÷ cos β
 * @source a public text on the universal joint (read); derived again in `docs/theory/shaft.md`
 */
export function speedRatio(angle: number, turn: number): number {
  return Math.cos(angle) / (1 - (Math.sin(angle) * Math.cos(turn)) ** 2);
}

/**
 * Unevenness of a joint's output: (largest − smallest speed) ÷ input speed.
 *
 *     U = 1/cos β − cos β = tan β·sin β
 *
 * @source as `speedRatio`
 */
export const unevenness = (angle: number): number => Math.tan(angle) * Math.sin(angle);

/**
 * Largest angular acceleration of the output at steady input, per square of the input speed [1]:
 *
 *     α/ω² = cos β·sin²β·sin 2θ ÷ (1 − sin²β·cos²θ)²
 *
 * at its largest, where (with c = cos 2θ, A = 1 − sin²β/2, B = sin²β/2)  B·c² + A·c − 2B = 0.
 *
 * @param angle – β [rad], 0 … under π/2
 * @returns ≥ 0; sin²β for small angles
 * @source derivative of `speedRatio`, its extreme exact and not by the usual approximation
 */
export function peakAcceleration(angle: number): number {
  const square = Math.sin(angle) ** 2;
  if (square === 0) return 0;
  const b = square / 2;
  const a = 1 - b;
  // The root as 4B ÷ (A + √…), which does not cancel for small angles.
  const c = (4 * b) / (a + Math.sqrt(a * a + 8 * b * b));
  return (Math.cos(angle) * square * Math.sqrt(1 - c * c)) / (a - b * c) ** 2;
}

/**
 * The largest angle at which a joint's peak acceleration stays within a bound.
 *
 * @param bound – α/ω² [1], > 0
 * @returns angle [rad], under π/2
 */
export function angleOfAcceleration(bound: number): number {
  let low = 0;
  let high = Math.PI / 2;
  // Fifty halvings: rounding of a double.
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (peakAcceleration(middle) > bound) high = middle;
    else low = middle;
  }
  return low;
}

/** One joint of a row, seen along the line of drive. */
export interface BentJoint {
  /** Between the two shafts that it joins [rad], 0 … under π/2. */
  readonly angle: number;
  /**
   * Turn of its bend and yoke against those of the joint before it [rad]: the angle from that joint's plane to this
   * one's about the shaft between, less the twist of the two yokes of that shaft (0 for yokes in line). Ignored at
   * the first joint.
   */
  readonly turn: number;
}

/**
 * The one joint that runs as unevenly as a whole row of them.
 *
 * A joint takes the direction (cos φ, sin φ) of its driving yoke to (cos φ, cos β·sin φ), a straight map of the plane;
 * the shaft between two joints turns it. The product of all is a turn, one squeeze and a turn again (its singular
 * values), so a row of joints *is* one joint between two turns, with cos β = smaller ÷ larger singular value. In the
 * small it is the sum of β²·e^(2i·turn) with signs in turn, the form known from driveline handbooks.
 *
 * @param joints – in the order of drive
 * @returns its angle [rad]; 0 for equal joints whose bends lie in one plane, yokes in line
 * @invariant the same read from either end
 * @validity rigid yokes at right angles on their cross, axes that meet; no play, no wind-up
 * @source composition of the closed form of one joint; singular values of a 2×2 matrix (from memory)
 */
export function equivalentAngle(joints: readonly BentJoint[]): number {
  let [a, b, c, d] = [1, 0, 0, 1];
  joints.forEach(({ angle, turn }, index) => {
    if (index > 0) {
      // Yokes in line stand square to the crosses' other pins: a quarter turn lies between two joints.
      const [cos, sin] = [Math.cos(Math.PI / 2 - turn), Math.sin(Math.PI / 2 - turn)];
      [a, b, c, d] = [cos * a - sin * c, cos * b - sin * d, sin * a + cos * c, sin * b + cos * d];
    }
    c *= Math.cos(angle);
    d *= Math.cos(angle);
  });
  const sum = Math.hypot(a + d, b - c);
  const difference = Math.hypot(a - d, b + c);
  // (1 − K) ÷ (1 + K) = tan²(β/2) for K = cos β: small angles keep all their digits.
  return 2 * Math.atan(Math.sqrt(difference / sum));
}
