import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shaftIn } from '../../src/linkage/shaft.ts';
import { shaftOver } from '../../src/linkage/shaft-travel.ts';
import { posesOn, sampleRange } from '../../src/linkage/travel-range.ts';
import { KINDS } from './invented.ts';
import { shaftOfHeight } from './plain-axle.ts';

const shaft = shaftOfHeight(0.2);

test.each(KINDS)('on the links of a $kind no pose is longer, shorter or more bent than told', (axle) => {
  const poses = posesOn(axle);
  const sampled = sampleRange(axle, { bump: 0.1, droop: 0.12, lock: 0 }, poses);
  expect(sampled.missed).toBe(0);
  const travel = shaftOver(shaft, axle, sampled);
  const wheel = fc.double({ min: -0.12, max: 0.1, noNaN: true });
  fc.assert(
    fc.property(wheel, wheel, (left, right) => {
      const pose = poses((left + right) / 2, Math.asin((left - right) / (2 * axle.halfTrack)));
      if (pose === null || travel === null) throw new Error('every place of this range can be reached');
      const state = shaftIn(shaft, axle, pose);
      expect(state.length).toBeLessThanOrEqual(travel.longest.value + 1e-7);
      expect(state.length).toBeGreaterThanOrEqual(travel.shortest.value - 1e-7);
      expect(state.caseAngle).toBeLessThanOrEqual(travel.caseAngle.value + 1e-7);
      expect(state.pinionAngle).toBeLessThanOrEqual(travel.pinionAngle.value + 1e-7);
    }),
    { seed: 9, numRuns: 300 },
  );
});
