import { expect } from 'vitest';
import type { RideModel } from '../../src/ride/model.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { DEFAULT_TOLERANCE } from '../../src/ride/run.ts';

/** What one unit of accepted error is in the engine: a position of 20 mm. */
const UNIT_OF_ERROR = 0.02;

/**
 * The books of a run must close: stored at the end − at the start + taken out − put in = 0.
 *
 * How far they may stay open is not a free number. Each accepted step may err by `tolerance` of the engine's unit, which
 * costs at most that share of the energies that are moved about: what the run turned over, and the weight lifted by
 * one unit. Errors of steps do not add up with one sign, so they grow like the root of the number of steps.
 */
export function allowedResidual(model: RideModel, run: RideRun, tolerance = DEFAULT_TOLERANCE): number {
  const { energy, counters } = run;
  const weight = (model.sprung.mass + model.axles.front.mass + model.axles.rear.mass) * model.gravity;
  return tolerance * Math.sqrt(counters.steps) * (turnedOver(energy) + weight * UNIT_OF_ERROR);
}

/** Books that do not close are a failed test, whatever the test was about. @returns the run */
export function assertEnergy(model: RideModel, run: RideRun, tolerance = DEFAULT_TOLERANCE): RideRun {
  const { storedAtEnd, storedAtStart, dissipated, putInByGround, relativeResidual } = run.energy;
  const residual = Math.abs(storedAtEnd - storedAtStart + dissipated - putInByGround);
  const allowed = allowedResidual(model, run, tolerance);
  expect(residual, `energy books open by ${residual} J, allowed ${allowed} J`).toBeLessThanOrEqual(allowed);
  // The run's own figure must say the same.
  expect(relativeResidual).toBeCloseTo(residual / Math.max(1, turnedOver(run.energy)), 9);
  return run;
}

const turnedOver = ({ storedAtEnd, storedAtStart, dissipated, putInByGround }: RideRun['energy']): number =>
  Math.max(Math.abs(putInByGround), Math.abs(dissipated), Math.abs(storedAtEnd - storedAtStart));

/** A run that must finish, with its books closed. */
export function mustFinish(model: RideModel, run: RideRun, tolerance = DEFAULT_TOLERANCE): RideRun {
  expect(run.status).toBe('finished');
  expect(run.time).toBe(run.duration);
  return assertEnergy(model, run, tolerance);
}
