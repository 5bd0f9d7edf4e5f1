import type { EndShape, RigShape } from '../../src/rig-shape.ts';

/** An invented rig: only for looking at pictures and for geometry, never an expected value of physics. */
const end = (track: number, more: Partial<EndShape>): EndShape => ({
  track,
  tyreRadius: 0.43,
  frame: 0.72,
  pad: 0.51,
  stop: {
    spread: 0.8,
    length: 0.11,
    spacer: 0,
    freeBump: { left: 0.06, right: 0.065 },
    fullCrush: { left: 0.1, right: 0.105 },
  },
  hardTravel: { left: 0.125, right: 0.13 },
  coil: { spread: 0.8, perch: 0.44, seat: 0.7, spacer: 0, slack: 0.11 },
  shock: { spread: 1.0, lower: 0.4, upper: 0.9, lean: 0.2, bodyShare: 0.55 },
  droop: { left: 0.1, right: 0.1 },
  ...more,
});

export const inventedRig: RigShape = {
  wheelbase: 2.45,
  centreBehindFront: 1.1,
  ends: {
    front: end(1.6, {}),
    rear: end(1.6, {
      shock: { spread: 0.96, lower: 0.4, upper: 0.92, lean: 0.3, bodyShare: 0.55 },
      coil: { spread: 0.92, perch: 0.44, seat: 0.72, spacer: 0, slack: 0.1 },
      stop: {
        spread: 0.78,
        length: 0.09,
        spacer: 0,
        freeBump: { left: 0.07, right: 0.07 },
        fullCrush: { left: 0.11, right: 0.11 },
      },
    }),
  },
};
