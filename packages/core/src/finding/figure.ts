/** The kinds of quantity the program knows. Each has one SI unit in core and several typed units at the edge. */
export const DIMENSIONS = [
  'length', // m
  'mass', // kg (a scale reading "in lb" is a mass)
  'force', // N
  'rate', // N/m
  'damping', // N·s/m
  'pressure', // Pa
  'speed', // m/s
  'acceleration', // m/s²
  'angle', // rad
  'time', // s
  'frequency', // Hz
  'inertia', // kg·m²
  'energy', // J
  'stiffnessOverSpeed', // s/m: rate factor of a stop or strap, force gain per speed
  'wavenumber', // cycles/m
  'roughness', // m³: spectral density of a road's height, m² in each cycle/m
  'power', // W
  'vibrationDose', // m/s^1.75
  'rollRate', // N·m/rad
  'ratio', // 1
] as const;
export type Dimension = (typeof DIMENSIONS)[number];

/**
 * A number ready to be shown: SI value and the half-width of its 95 % interval in SI.
 * `tolerance: null` means that the uncertainty is unknown, and every view must say so.
 */
export interface Figure {
  readonly dimension: Dimension;
  readonly value: number;
  readonly tolerance: number | null;
}
