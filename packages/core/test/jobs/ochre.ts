import { readFileSync } from 'node:fs';
import type { Result } from '../../src/finding/problem.ts';
import type { RideAnswer, RideRequest } from '../../src/jobs/protocol.ts';
import { rideRig } from '../../src/jobs/ride.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { readRig } from '../../src/rigfile/read.ts';

/** The value of a result that must be one; fails with its problems when it is not. */
export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.problems)}`);
  return result.value;
}

/** The demo rig, read from its file. Invented, every reading: no expectation rests on them. */
export const ochre: Rig = must(
  readRig(readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8'), {
    file: 'ochre.rig.yaml',
  }),
);

/** Over Ochre's whoops as it is, with few trials, unless something else is asked. */
export function asked(change: Partial<RideRequest> & { readonly courseName?: string } = {}): RideRequest {
  const courseName = change.courseName ?? 'whoops';
  return {
    rig: ochre,
    setup: 'as-it-is',
    courseName,
    course: ochre.courses[courseName].shape,
    speed: 9,
    historyRate: 0,
    trials: 6,
    seed: 1,
    ...change,
  };
}

export const rode = (change: Partial<RideRequest> = {}): RideAnswer => must(rideRig(asked(change)));
