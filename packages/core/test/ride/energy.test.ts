import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import type { EnergyBalance, RideRun } from '../../src/ride/result.ts';
import { runRide } from '../../src/ride/run.ts';
import { allowedResidual, assertEnergy } from './energy.ts';
import { unevenRig } from './invented-rigs.ts';

const run = runRide(
  unevenRig,
  sampleCourse({ kind: 'whoops', height: 0.28, spacing: 5, count: 4, start: 1, rightPhase: 0.5 }),
  { speed: 9, duration: 3 },
);

/** The same run with something left out of its books. */
const cooked = (change: Partial<EnergyBalance>): RideRun => {
  const energy = { ...run.energy, ...change };
  const residual = energy.storedAtEnd - energy.storedAtStart + energy.dissipated - energy.putInByGround;
  const most = Math.max(energy.putInByGround, energy.dissipated);
  return { ...run, energy: { ...energy, relativeResidual: Math.abs(residual) / most } };
};

describe('the check of the energy books', () => {
  it('passes a sound run', () => {
    assertEnergy(run);
    expect(run.energy.putInByGround).toBeGreaterThan(5000);
    expect(run.energy.dissipated).toBeGreaterThan(5000);
  });

  it('asks for less than a hundredth of what was turned over', () => {
    expect(allowedResidual(run)).toBeLessThan(0.01 * run.energy.putInByGround);
  });

  it('fails a run that forgot one part in fifty of its losses, or had them with the wrong sign', () => {
    const { dissipated } = run.energy;
    expect(() => assertEnergy(cooked({ dissipated: 0.98 * dissipated }))).toThrow('energy books open');
    expect(() => assertEnergy(cooked({ dissipated: -dissipated }))).toThrow('energy books open');
  });

  it('fails a run that tells a better residual than it has', () => {
    expect(() => assertEnergy({ ...run, energy: { ...run.energy, relativeResidual: 0 } })).toThrow();
  });

  it('fails a run whose books are no numbers', () => {
    expect(() => assertEnergy(cooked({ storedAtEnd: Number.NaN }))).toThrow('energy books open');
  });
});
