import type { Problem, Result } from '../../src/finding/problem.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { type ReadRigOptions, readRig } from '../../src/rigfile/index.ts';

/** The least that makes a rig: everything else is filled. */
export const SMALLEST = `schema: 1
measured:
  wheelbase: 100 in
  weights: { frontLeft: 1000 lb, frontRight: 1000 lb, rearLeft: 900 lb, rearRight: 900 lb }
front:
  axle: { track: 60 in }
  contacts:
    sump: { gap: 4 in }
  spring: { rate: 160 lb/in }
  stop:
    gap: 2 in
    usableCrush: 3/4 in
rear:
  axle: { track: 60 in }
  contacts:
    tube: { gap: 4 1/2 in }
  spring: { rate: 150 lb/in }
  stop:
    gap: 2 in
    usableCrush: 3/4 in
`;

/** The smallest rig with some of its text replaced; each piece must be there, so that no test silently tests nothing. */
export function rigWith(...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the rig has no "${from}"`);
    return text.replace(from, () => to);
  }, SMALLEST);
}

export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  return result.value;
}

export const rigOf = (text: string, options?: ReadRigOptions): Rig => must(readRig(text, options));

export function problemsOf(
  text: string,
  options: ReadRigOptions = { file: 'a.rig.yaml' },
): readonly Problem[] {
  const read = readRig(text, options);
  return read.ok ? [] : read.problems;
}
