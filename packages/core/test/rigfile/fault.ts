import type { ProblemCode } from '../../src/finding/codes.ts';
import { rigWith, SMALLEST } from './smallest-rig.ts';

/** One fault in a file: the problem that must come, at its line and key, with what was found and what is accepted. */
export type Fault = readonly [
  what: string,
  text: string,
  code: ProblemCode,
  line: number | undefined,
  key: string | undefined,
  found: string | RegExp,
  accepted: string | RegExp,
];

export const withCurve = (rows: string) =>
  rigWith(['usableCrush: 3/4 in\nrear', `usableCrush: 3/4 in\n    curve: ${rows}\nrear`]);
export const withSettings = (rows: string) =>
  rigWith(['  spring: { rate: 160', `  shock: { settings: { trail: ${rows} } }\n  spring: { rate: 160`]);
export const withSetup = (patch: string) => `${SMALLEST}setups:\n  other:\n    front: ${patch}\n`;
export const BROKEN_BRACKET = 'schema: 1\nfront: { axle: { track: 60 in }\nrear: {}\n';
