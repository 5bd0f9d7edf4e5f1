import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightAt, slopeAt } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import { restingCrush } from '../../src/elements/maxwell.ts';
import { cubicSlope, cubicValue, monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import { linearValue, piecewiseLinear } from '../../src/numerics/piecewise-linear.ts';
import { readGroundUnder } from '../../src/ride/ground.ts';
import * as at from '../../src/ride/layout.ts';
import { rideOf, sizeOf, writeStart } from '../../src/ride/start.ts';
import { faceAt } from '../../src/ride/stop-reading.ts';
import {
  cubicAt,
  cubicSize,
  cubicSlopeAt,
  linearAt,
  linearSize,
  writeCubic,
  writeLinear,
} from '../../src/ride/tables.ts';
import { anyShock, anyStop } from '../elements/any-table.ts';
import { unevenRig } from './invented-rigs.ts';

// The kernel reads its tables from its memory. What they say must be what the tables of `numerics` say, which are held
// against SciPy.

const anyShare = fc.double({ min: -0.3, max: 1.3, noNaN: true });

describe('a table in the memory of the kernel', () => {
  it('of straight lines reads as the table it was made from, points included, and takes the room it says', () => {
    fc.assert(
      fc.property(anyShock, anyShare, ({ x, y }, share) => {
        const table = piecewiseLinear(x, y);
        const m = new Float64Array(5 + linearSize(table));
        expect(writeLinear(m, 5, table)).toBe(m.length);
        const inside = x[0] + share * (x[x.length - 1] - x[0]);
        for (const place of [inside, ...x]) expect(linearAt(m, 5, place)).toBe(linearValue(table, place));
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('of a cubic reads as the curve it was made from, with its slope, points included', () => {
    fc.assert(
      fc.property(anyStop, anyShare, ({ x, y }, share) => {
        const curve = monotoneCubic(x, y);
        const m = new Float64Array(3 + cubicSize(curve));
        expect(writeCubic(m, 3, curve)).toBe(m.length);
        const inside = x[0] + share * (x[x.length - 1] - x[0]);
        for (const place of [inside, ...x]) {
          expect(cubicAt(m, 3, place)).toBe(cubicValue(curve, place));
          expect(cubicSlopeAt(m, 3, place)).toBeCloseTo(cubicSlope(curve, place), 6);
        }
      }),
      { seed: 4, numRuns: 200 },
    );
  });
});

describe('what the kernel reads of a ride', () => {
  const track = sampleCourse({
    kind: 'whoops',
    height: 0.3,
    spacing: 5,
    count: 3,
    start: 2,
    rightPhase: 0.7,
  });
  const { front } = unevenRig.axles;
  const maxwell = { rate: 60_000, damping: 2500 };
  const model = {
    ...unevenRig,
    axles: { ...unevenRig.axles, front: { ...front, stop: { ...front.stop, maxwell } } },
  };
  const ride = rideOf(model, track, { speed: 7, duration: 4, tolerance: 1e-4 });
  const m = new Float64Array(sizeOf(ride));
  writeStart(m, ride);

  it('is the ground under each tyre, with how fast it rises', () => {
    const wheelbase = model.sprung.toFrontAxle + model.sprung.toRearAxle;
    for (let time = 0; time < 4; time += 0.0137) {
      for (let corner = 0; corner < 4; corner += 1) {
        readGroundUnder(m, corner, time);
        const side = corner % 2 === 0 ? track.left : track.right;
        const distance = 7 * time - (corner < 2 ? 0 : wheelbase);
        expect(m[at.GROUND_HEIGHT]).toBeCloseTo(heightAt(side, distance), 12);
        expect(m[at.GROUND_RISE]).toBeCloseTo(7 * slopeAt(side, distance), 11);
      }
    }
  });

  it('is the face of a stop that is held back by its viscous branch', () => {
    for (const inner of [-0.01, 0, 1e-6, 0.004, 0.03]) {
      expect(faceAt(m, 0, inner)).toBe(restingCrush(ride.rig.front.stop, 1, maxwell, inner));
      expect(faceAt(m, 2, inner)).toBe(0);
    }
  });
});
