import { describe, expect, it } from 'vitest';
import { drawsToDrive, durationOf } from '../../src/jobs/driving.ts';
import { FeltGrounds } from '../../src/jobs/felt-ground.ts';
import { rideModels } from '../../src/ride/from-setup.ts';
import { plainKernel } from '../../src/ride/kernel.ts';
import * as at from '../../src/ride/layout.ts';
import { rideOf, sizeOf, writeStart } from '../../src/ride/start.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { ochre } from './ochre.ts';

const MPH = 0.44704;

describe('a stop that is let go and met again in one moment', () => {
  // Its friction and its viscous branch balance to rounding there. These rides of the demo once stood still for ever.
  it.each([
    [2, 27],
    [7, 29],
    [10, 35],
    [21, 29],
    [23, 41],
    [34, 34],
  ])('does not stop the clock: trial %i at %i mph', (trial, mph) => {
    const resolved = resolveSetup(ochre, 'soft-stop-seat-down');
    if (!resolved.ok) throw new Error('the demo lost a setup');
    const { shape } = ochre.courses.whoops;
    const track = new FeltGrounds().of(shape, resolved.value);
    const model = rideModels(resolved.value, drawsToDrive(ochre, { trials: 39, seed: 1 }))(trial);
    const speed = mph * MPH;
    const duration = durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed);
    const ride = rideOf(model, track, { speed, duration, tolerance: 3e-4 });
    const kernel = plainKernel();
    const memory = kernel.memoryFor(sizeOf(ride));
    writeStart(memory, ride);
    kernel.takeSteps(20_000);
    expect(memory[memory[at.FROM] + at.TIME]).toBe(duration);
  });
});
