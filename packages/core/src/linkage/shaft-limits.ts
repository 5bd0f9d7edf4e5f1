import type { JointKind, ShaftJoint, ShaftState, ShaftTube } from './shaft.ts';
import { angleOfAcceleration } from './universal-joint.ts';

/**
 * Angle at which joints of a kind usually bind, the low end of its band [rad]: single near 30°, double 25 to 32°
 * (special ones to 40°), constant-velocity 22 to 25° for a plunging ball joint. A starting point: the maker's figure
 * or the joint turned by hand at full droop decides.
 *
 * @source common practice, no source
 */
const BINDS_AT: Readonly<Record<JointKind, number>> = {
  single: (30 * Math.PI) / 180,
  double: (25 * Math.PI) / 180,
  'constant-velocity': (22 * Math.PI) / 180,
};

export const bindsAt = ({ bindsAt: own, kind }: ShaftJoint): number => own ?? BINDS_AT[kind];

/** What a shaft should keep. All of it common practice, no source. */
export const SHAFT_PRACTICE = {
  /** Peak angular acceleration that the bend gives to the shaft's own mass [rad/s²]. */
  shaftAcceleration: 1000,
  /** Peak angular acceleration left at the pinion [rad/s²]. */
  pinionAcceleration: 300,
  /** Least bend of a joint with needle rollers: a straight one wears dents into its races [rad]. */
  leastAngle: (0.5 * Math.PI) / 180,
  /** Spline that must stay engaged at full droop, and what must be left to go in at full bump [m]. */
  engaged: 0.025,
  leftIn: 0.02,
  /** Share of the whirling speed that a shaft may reach. */
  whirlShare: 0.75,
  /** How far a pinion is set below its aim, because it rises under torque [rad]. */
  pinionLow: { least: (1 * Math.PI) / 180, most: (2 * Math.PI) / 180 },
} as const;

/**
 * Speed of the shaft at a road speed:
 *
 *     ω = v·i ÷ r
 *
 * @param roadSpeed – v [m/s]
 * @param tyreRadius – r, loaded [m]
 * @param axleRatio – i, turns of the shaft ÷ turns of the wheel
 * @returns [rad/s]
 * @validity no slip of the tyre; a wheel rolls on up to 3 % more than its loaded radius, so the shaft turns that much slower
 */
export const shaftSpeed = (roadSpeed: number, tyreRadius: number, axleRatio: number): number =>
  (roadSpeed * axleRatio) / tyreRadius;

/**
 * The largest angle of a universal joint at a shaft speed by the rule of thumb that its bend may shake the shaft with
 * no more than 1000 rad/s²; 5.8° at 3000 rpm, 11.5° at 1500 rpm. It falls with one over the speed: speed × angle stays
 * near 17 300 rpm·degrees.
 *
 * @param speed – of the shaft [rad/s], > 0
 * @returns [rad], under π/2
 * @source common practice, no source. A rounded table of the trade keeps within 3 % of this bound from 1500 to 4000 rpm
 * and is 4 to 8 % stricter above; a magazine article (read) names the bound itself, and 300 rad/s² at the pinion.
 */
export const angleForSpeed = (speed: number): number =>
  angleOfAcceleration(SHAFT_PRACTICE.shaftAcceleration / speed ** 2);

/** Speed up to which the rules of thumb hold for a shaft as it stands [rad/s]; Infinity for a straight one. */
export const speedForAngles = ({ shaftJerk, pinionJerk }: ShaftState) => ({
  shaft: Math.sqrt(SHAFT_PRACTICE.shaftAcceleration / shaftJerk),
  pinion: Math.sqrt(SHAFT_PRACTICE.pinionAcceleration / pinionJerk),
});

/** Steel [Pa], [kg/m³]; from memory. */
const STEEL = { modulus: 206e9, density: 7850 };

/**
 * Whirling speed of a tube between two joints, its first in bending:
 *
 *     ω = (π/L)²·√(E·I ÷ μ),   √(I ÷ A) = √(D² + d²) ÷ 4
 *
 * @param length – L, between the joints [m]
 * @returns [rad/s]; 0 for a tube without a wall
 * @validity even thin tube hinged at both ends; yokes, slip, welds and soft mounts lower it, dents much more
 * @source beam theory, hinged at both ends. 1.57·√(E·I/m)/L² Hz: a mechanical engineer's data handbook, strengths of
 * materials, "uniform shaft in short bearings" (read in an excerpt)
 */
export function whirlSpeed(tube: ShaftTube, length: number): number {
  const { outside, wall, modulus = STEEL.modulus, density = STEEL.density } = tube;
  const inside = Math.max(0, outside - 2 * wall);
  if (!(outside > inside)) return 0;
  const radius = Math.hypot(outside, inside) / 4;
  return (Math.PI / length) ** 2 * radius * Math.sqrt(modulus / density);
}

/**
 * Where the pinion should point, against level [rad], nose up positive: along the case's output with two equal joints
 * (their angles then cancel), at the case when the joint there is even by itself; either way one to two degrees low.
 *
 * @source common practice, no source
 */
export function pinionAim(
  kindAtCase: JointKind,
  { shaftSlope, caseSlope }: ShaftState,
): { readonly low: number; readonly high: number } {
  const aim = kindAtCase === 'single' ? caseSlope : shaftSlope;
  const { least, most } = SHAFT_PRACTICE.pinionLow;
  return { low: aim - most, high: aim - least };
}
