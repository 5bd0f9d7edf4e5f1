/**
 * Roughness of the road classes: geometric mean of the spectral density of the height at 0.1 cycles/m [m³].
 * Each class spans from half to twice its mean. The standard leaves class H open above; its mean goes on by the rule.
 *
 * @source ISO 8608, table of classes by Gd(n0) (means read in a public transcription, the rest from memory)
 */
export const ROAD_CLASSES = {
  A: 16e-6,
  B: 64e-6,
  C: 256e-6,
  D: 1024e-6,
  E: 4096e-6,
  F: 16384e-6,
  G: 65536e-6,
  H: 262144e-6,
} as const;
export type RoadClass = keyof typeof ROAD_CLASSES;
