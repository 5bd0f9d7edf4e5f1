import fc from 'fast-check';
import type { AxleModel, RideModel } from '../../src/ride/model.ts';
import { anyShock, anyStop } from '../elements/any-table.ts';

/** Rigs that somebody could build, light to heavy, soft to hard. Invented: no expectation rests on the numbers. */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const sided = (min: number, max: number) => fc.record({ left: between(min, max), right: between(min, max) });

const anyAxle: fc.Arbitrary<AxleModel> = fc.record({
  mass: between(110, 330),
  rollInertia: between(30, 90),
  halfTrack: between(0.65, 0.95),
  spring: fc.record({
    halfStation: between(0.35, 0.6),
    rate: between(18_000, 60_000),
    ratio: between(0.7, 1.1),
  }),
  shock: fc
    .tuple(between(0.4, 0.65), between(0.6, 1), anyShock)
    .map(([halfStation, ratio, { x, y }]) => ({ halfStation, ratio, speed: x, force: y })),
  stop: fc
    .tuple(between(0.35, 0.6), between(0.7, 1.1), sided(0.01, 0.12), anyStop, between(0, 0.3))
    .map(([halfStation, ratio, gap, { x, y }, rateFactor]) => ({
      halfStation,
      ratio,
      gap,
      crush: x,
      force: y,
      rateFactor,
    })),
  // Behind the stop, and now and then before it.
  metal: fc.record({ atCrush: sided(-0.02, 0.06), rate: between(5e6, 3e7) }),
  droopLimit: fc.record({
    at: between(0.04, 0.2),
    rate: between(2e5, 8e5),
    rateFactor: between(0, 0.3),
  }),
  tyre: fc.record({ rate: between(1.2e5, 4e5), damping: between(50, 1200) }),
});

export const anyModel: fc.Arbitrary<RideModel> = fc.record({
  sprung: fc.record({
    mass: between(800, 2600),
    rollInertia: between(300, 1000),
    pitchInertia: between(1000, 3500),
    toFrontAxle: between(1, 1.7),
    toRearAxle: between(1, 1.7),
  }),
  axles: fc.record({ front: anyAxle, rear: anyAxle }),
  gravity: fc.constant(9.80665),
});
