import fc from 'fast-check';
import type { EndFacts, Given, RigFacts } from './typed-rig.ts';

/** A length in m with a tape's half-width, seldom exact. */
const tape = (min: number, max: number): fc.Arbitrary<Given> =>
  fc.tuple(fc.double({ min, max, noNaN: true }), fc.constantFrom(0, 0.0008, 0.0016, 0.003));
const share = (min: number, max: number): fc.Arbitrary<Given> =>
  fc.tuple(fc.double({ min, max, noNaN: true }), fc.constantFrom(0, 0.01, 0.02));

const contact = fc.record({ gap: tape(0.04, 0.25), ratio: share(0.5, 1.4) });

const end: fc.Arbitrary<EndFacts> = fc.record({
  contacts: fc.dictionary(fc.constantFrom('sump', 'bar', 'tube', 'tyre', 'shaft'), contact, {
    minKeys: 1,
    maxKeys: 5,
  }),
  gap: tape(0.04, 0.12),
  stopRatio: share(0.7, 1.2),
  crush: tape(0.015, 0.07),
  stopFree: tape(0.05, 0.12),
  flex: tape(0.004, 0.02),
  coil: fc.record({
    ride: tape(0.28, 0.32),
    solid: tape(0.12, 0.2),
    free: tape(0.38, 0.46),
    reserve: tape(0.005, 0.015),
  }),
  springRate: fc.tuple(fc.double({ min: 15_000, max: 45_000, noNaN: true }), fc.constantFrom(0, 500)),
  springRatio: share(0.7, 1.1),
  shock: fc.record({
    ride: tape(0.5, 0.6),
    closed: tape(0.36, 0.44),
    open: tape(0.62, 0.75),
    ratio: share(0.75, 1),
    reserve: tape(0.005, 0.012),
  }),
  strap: fc.record({ length: tape(0.3, 0.5), stretch: share(0.02, 0.1), tight: tape(0.6, 0.7) }),
  shaft: tape(0.1, 0.2),
});

/** An invented rig of which a test only says what a change does to it. Lengths in m. */
export const anyRig: fc.Arbitrary<RigFacts> = fc.record({
  reserve: tape(0.005, 0.015),
  front: end,
  rear: end,
  stops: fc.record({ other: fc.record({ free: tape(0.05, 0.14), crush: tape(0.015, 0.07) }) }),
  springs: fc.record({
    other: fc.record({
      rate: fc.tuple(fc.double({ min: 15_000, max: 45_000, noNaN: true }), fc.constantFrom(0, 500)),
      free: tape(0.38, 0.5),
      solid: tape(0.12, 0.2),
    }),
  }),
});

/** Thickness of what is put in, cut off or lowered [m]. */
export const anyAmount = fc.double({ min: 0.001, max: 0.08, noNaN: true });
