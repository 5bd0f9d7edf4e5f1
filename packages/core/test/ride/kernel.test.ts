import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { compiledKernel, plainKernel } from '../../src/ride/kernel.ts';
import type { ElementPath, RideModel } from '../../src/ride/model.ts';
import { runRideOn } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { anyLedge, anyWaves } from '../course/any-course.ts';
import { anyModel } from './any-model.ts';
import { mustFinish } from './energy.ts';
import { unevenRig } from './invented-rigs.ts';

const plain = plainKernel();
const compiled = compiledKernel();

/** Closes faster in bump: z + z². */
const TRAVEL = [-0.2, -0.1, 0, 0.1, 0.2];
const BENT: ElementPath = {
  travel: TRAVEL,
  compression: TRAVEL.map((z) => z + z * z),
  ratio: TRAVEL.map((z) => 1 + 2 * z),
};

/** Everything that a stop and a shock can have, and somebody on a seat. */
const furnished = (model: RideModel): RideModel => {
  const { front, rear } = model.axles;
  return {
    ...model,
    seat: { mass: 85, rate: 40_000, damping: 900, ahead: -0.3, left: 0.4 },
    axles: {
      front: {
        ...front,
        antiRollRate: 9000,
        shock: {
          ...front.shock,
          gas: { force: 300, rate: 900 },
          ends: { closedAt: 0.07, openAt: 0.06, rate: 2e6 },
        },
        stop: { ...front.stop, oilFactor: 500, friction: { limit: 0.3, halfTravel: 0.002 } },
      },
      rear: {
        ...rear,
        spring: { ...rear.spring, path: BENT },
        shock: { ...rear.shock, path: BENT },
        stop: {
          ...rear.stop,
          path: BENT,
          friction: { limit: 0.2, halfTravel: 0.003 },
          maxwell: { rate: 60_000, damping: 2500 },
        },
      },
    },
  };
};

describe('the compiled kernel', () => {
  it('is there, and is WebAssembly', () => {
    expect(compiled).not.toBeNull();
  });

  it.each([
    ['as it is', (model: RideModel) => model],
    ['with all that stops, shocks and seats can have', furnished],
  ])('gives what the same source gives as TypeScript, bit for bit, on any rig %s', (_name, of) => {
    fc.assert(
      fc.property(anyModel, fc.oneof(anyLedge, anyWaves), (model, shape) => {
        const track = sampleCourse(shape);
        const options = { speed: 8, duration: 0.9, historyRate: 100 };
        const theirs = runRideOn(plain, of(model), track, options);
        expect(runRideOn(compiled!, of(model), track, options)).toEqual(theirs);
      }),
      { seed: 7, numRuns: 25, endOnFailure: true },
    );
  });

  it('does not remember: a run after a longer one on longer ground is as the first was', () => {
    const drop: CourseShape = { kind: 'drop', height: 0.4 };
    const whoops: CourseShape = {
      kind: 'whoops',
      height: 0.3,
      spacing: 5,
      count: 200,
      start: 1,
      rightPhase: 0.4,
    };
    const options = { speed: 9, duration: 1.5 };
    for (const kernel of [compiledKernel()!, plainKernel()]) {
      const run = (model: RideModel, shape: CourseShape) =>
        mustFinish(runRideOn(kernel, model, sampleCourse(shape), options));
      const first = run(unevenRig, drop);
      run(furnished(unevenRig), whoops);
      expect(run(unevenRig, drop)).toEqual(first);
    }
  });
});
