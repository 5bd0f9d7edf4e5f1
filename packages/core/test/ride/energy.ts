import { expect } from 'vitest';
import type { EnergyBalance, RideRun } from '../../src/ride/result.ts';

/** Below what is accepted when nobody says otherwise: the books are held to it all the same. */
const STRICT = 1e-4;

/**
 * How far the books of a run may stay open [J]. It is not a free number: each accepted step may err by `tolerance` of
 * the engine's unit, which costs at most that share of the energies that are moved about, those that the run turned
 * over and those that it held to begin with. Errors of steps do not all have one sign, so they add up like the root of
 * the number of steps.
 */
export function allowedResidual({ energy, counters }: RideRun, tolerance = STRICT): number {
  return tolerance * Math.sqrt(counters.steps) * (turnedOver(energy) + Math.abs(energy.storedAtStart));
}

/**
 * The books of a run must close: stored at the end − at the start + taken out − put in = 0. Where they do not, a test has
 * failed, whatever it was about.
 * @returns the run
 */
export function assertEnergy(run: RideRun, tolerance = STRICT): RideRun {
  const { storedAtEnd, storedAtStart, dissipated, putInByGround, relativeResidual } = run.energy;
  const residual = Math.abs(storedAtEnd - storedAtStart + dissipated - putInByGround);
  const allowed = allowedResidual(run, tolerance);
  expect(residual, `energy books open by ${residual} J, allowed ${allowed} J`).toBeLessThanOrEqual(allowed);
  // The run's own figure must say the same.
  expect(relativeResidual).toBeCloseTo(residual / Math.max(1, turnedOver(run.energy)), 9);
  return run;
}

const turnedOver = ({ storedAtEnd, storedAtStart, dissipated, putInByGround }: EnergyBalance): number =>
  Math.max(Math.abs(putInByGround), Math.abs(dissipated), Math.abs(storedAtEnd - storedAtStart));

/** A run that must finish, with its books closed. */
export function mustFinish(run: RideRun, tolerance = STRICT): RideRun {
  expect(run.status).toBe('finished');
  expect(run.time).toBe(run.duration);
  return assertEnergy(run, tolerance);
}
