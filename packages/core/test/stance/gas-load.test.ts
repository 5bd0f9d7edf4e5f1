import { expect, test } from 'vitest';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { stanceOf } from '../../src/stance/stance.ts';
import { must, rigOf, rigWith } from '../rigfile/smallest-rig.ts';

const withShock = (text: string) =>
  stanceOf(
    must(
      resolveSetup(
        rigOf(
          rigWith(
            ['axle: { track: 60 in }', 'axle: { track: 60 in, unsprungMass: 500 lb }'],
            [
              '{ rate: 160 lb/in }',
              `{ rate: 24 N/mm, freeLength: 500 mm, ratio: 1 }\n  shock: { ratio: 0.9, ${text} }`,
            ],
          ),
        ),
        'as-measured',
      ),
    ),
  ).ends.front;

test('the gas of a shock takes its part of the weight off the coil, which then stands longer', () => {
  // Trade notes, arithmetic: 7/8 in at 200 psi is 535 N, 22 mm on 24 N/mm. The least rise that is not zero, shaft nearly out.
  const lengths = 'rideLength: 624 mm, collapsedLength: 375 mm, extendedLength: 625 mm';
  const bare = withShock(lengths);
  const gassed = withShock(`${lengths}, gasPressure: 200 psi, rodDiameter: 7/8 in, gasRise: 0.01`);
  const lighter = bare.springLoad.left.value - gassed.springLoad.left.value;
  expect(lighter / 0.9).toBeGreaterThan(533);
  expect(lighter / 0.9).toBeLessThan(537);
  expect(gassed.springLoad.right.value).toBeCloseTo(gassed.springLoad.left.value, 6);
});
