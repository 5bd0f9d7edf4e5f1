import { expect, test } from 'vitest';
import { wholeRides } from '../whole-rides.ts';

/** The stepper's own loss at its usual accuracy stays far below what the cases allow. */
const LARGEST_RESIDUAL = 2e-3;

test.each(wholeRides().map((ride) => [ride.name, ride] as const))(
  'the reference ride %s is met within its tolerances and its energy books close',
  (_name, { ok, run, lines }) => {
    const off = lines.filter((line) => !line.ok);
    expect(off, JSON.stringify(off, null, 1)).toEqual([]);
    expect(ok).toBe(true);
    expect(lines.length).toBeGreaterThan(0);
    expect(run.energy.relativeResidual).toBeLessThan(LARGEST_RESIDUAL);
  },
);
