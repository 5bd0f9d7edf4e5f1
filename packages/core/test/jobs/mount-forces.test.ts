import { describe, expect, it } from 'vitest';
import { CORNERS, endOf, sideOf } from '../../src/finding/place.ts';
import { durationOf } from '../../src/jobs/driving.ts';
import { FeltGrounds } from '../../src/jobs/felt-ground.ts';
import { mountForces } from '../../src/jobs/mount-forces.ts';
import { rideModels } from '../../src/ride/from-setup.ts';
import { runRide } from '../../src/ride/run.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { readRig } from '../../src/rigfile/index.ts';
import { NOMINAL_DRAWS } from '../../src/stance/draws.ts';
import { storyText } from '../travel/stories/story.ts';
import { must } from './ochre.ts';

/** Newton's second law: what all mounts push lifts the body, and the ride says how fast that goes up. */
describe('forces on the mounts of a ride', () => {
  const rig = must(readRig(storyText('s11-bracket')));
  const setup = must(resolveSetup(rig, 'as-measured'));
  const model = rideModels(setup, NOMINAL_DRAWS)(0);
  const track = new FeltGrounds('point').of(rig.courses.ledge.shape, setup);
  const speed = 3;
  const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
  const run = runRide(model, track, {
    speed,
    duration: durationOf(track, wheelbase, speed),
    historyRate: 1000,
  });
  const { history } = run;
  if (history === null) throw new Error('a history was asked for');
  const forces = CORNERS.map((corner) => mountForces(model, history, endOf(corner), sideOf(corner)));

  it('hit the stops, and no strap or open shock that would pull beside them', () => {
    expect(run.status).toBe('finished');
    expect(run.corners.frontLeft.contacts.stop).toBeGreaterThan(0);
    for (const corner of CORNERS) expect(run.corners[corner].contacts.droop).toBe(0);
  });

  it('carry the body at rest', () => {
    const atRest = forces.reduce((sum, { spring, shock }, k) => {
      const { ratio } = model.axles[endOf(CORNERS[k])].spring;
      return sum + spring[0] * ratio + shock[0] * model.axles[endOf(CORNERS[k])].shock.ratio;
    }, 0);
    expect(atRest / (model.sprung.mass * model.gravity)).toBeCloseTo(1, 9);
  });

  it('lift it as fast as the ride says, sample by sample', () => {
    const weight = model.sprung.mass * model.gravity;
    let worst = 0;
    for (let k = 1; k < history.count - 1; k += 1) {
      const pushed = forces.reduce((sum, { spring, shock, stop, metal }, corner) => {
        const axle = model.axles[endOf(CORNERS[corner])];
        return sum + spring[k] * axle.spring.ratio + shock[k] * axle.shock.ratio + stop[k] + metal[k];
      }, 0);
      const lifted = model.sprung.mass * history.bodyAcceleration[k];
      worst = Math.max(worst, Math.abs(pushed - weight - lifted));
    }
    // The shaft's speed between two samples: a jump of the ground is smeared over a millisecond.
    expect(worst / weight).toBeLessThan(0.02);
  });
});
