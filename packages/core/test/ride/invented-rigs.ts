import type { AxleModel, RideModel } from '../../src/ride/model.ts';

/** Rigs of the ride tests. Invented, every number: no expectation rests on them. */

const FRONT: AxleModel = {
  mass: 230,
  rollInertia: 60,
  halfTrack: 0.79,
  spring: { halfStation: 0.45, rate: 31_000, ratio: 1 },
  shock: {
    halfStation: 0.54,
    ratio: 0.93,
    speed: [-2, -0.8, -0.2, 0, 0.2, 0.8, 2],
    force: [-4400, -2600, -1000, 0, 400, 1100, 2200],
  },
  stop: {
    halfStation: 0.43,
    ratio: 0.97,
    gap: { left: 0.058, right: 0.064 },
    crush: [0, 0.012, 0.025, 0.035, 0.045],
    force: [0, 600, 2100, 4800, 11_000],
    rateFactor: 0.17,
  },
  metal: { atCrush: { left: 0.044, right: 0.047 }, rate: 2e7 },
  droopLimit: { at: 0.13, rate: 5e5, rateFactor: 0.2 },
  tyre: { rate: 225_000, damping: 420 },
};

const REAR: AxleModel = {
  ...FRONT,
  mass: 215,
  rollInertia: 55,
  halfTrack: 0.81,
  spring: { halfStation: 0.48, rate: 36_000, ratio: 0.95 },
  shock: { ...FRONT.shock, halfStation: 0.57, ratio: 0.9 },
  stop: { ...FRONT.stop, halfStation: 0.46, ratio: 1.03, gap: { left: 0.066, right: 0.061 } },
  metal: { atCrush: { left: 0.045, right: 0.043 }, rate: 1.6e7 },
  tyre: { rate: 240_000, damping: 380 },
};

/** Every number of one end differs from the other's and, where it can, left from right; no ratio is one. */
export const unevenRig: RideModel = {
  sprung: { mass: 1420, rollInertia: 530, pitchInertia: 1800, toFrontAxle: 1.22, toRearAxle: 1.39 },
  axles: { front: FRONT, rear: REAR },
  gravity: 9.80665,
};

const even = (axle: AxleModel): AxleModel => ({
  ...axle,
  stop: { ...axle.stop, gap: { left: axle.stop.gap.left, right: axle.stop.gap.left } },
  metal: { ...axle.metal, atCrush: { left: axle.metal.atCrush.left, right: axle.metal.atCrush.left } },
});

/** Left is like right. */
export const evenRig: RideModel = { ...unevenRig, axles: { front: even(FRONT), rear: even(REAR) } };

/** All four corners alike, centre of gravity in the middle: it can only heave when the ground is even. */
export const fourfoldRig: RideModel = {
  ...unevenRig,
  sprung: { ...unevenRig.sprung, toFrontAxle: 1.3, toRearAxle: 1.3 },
  axles: { front: even(FRONT), rear: even(FRONT) },
};

/** Without anything that takes energy out. */
export function lossless(model: RideModel): RideModel {
  const still = (axle: AxleModel): AxleModel => ({
    ...axle,
    shock: { ...axle.shock, force: axle.shock.speed.map(() => 0) },
    stop: { ...axle.stop, rateFactor: 0 },
    droopLimit: { ...axle.droopLimit, rateFactor: 0 },
    tyre: { ...axle.tyre, damping: 0 },
  });
  return { ...model, axles: { front: still(model.axles.front), rear: still(model.axles.rear) } };
}

/** Left and right changed over. */
export function mirroredRig(model: RideModel): RideModel {
  const swap = (axle: AxleModel): AxleModel => ({
    ...axle,
    stop: { ...axle.stop, gap: { left: axle.stop.gap.right, right: axle.stop.gap.left } },
    metal: {
      ...axle.metal,
      atCrush: { left: axle.metal.atCrush.right, right: axle.metal.atCrush.left },
    },
  });
  return { ...model, axles: { front: swap(model.axles.front), rear: swap(model.axles.rear) } };
}

/** The same rig told in other units of mass, length and time. */
export function inOtherUnits(
  model: RideModel,
  { mass, length, time }: { readonly mass: number; readonly length: number; readonly time: number },
): RideModel {
  const force = (mass * length) / time ** 2;
  const rate = force / length;
  const perSpeed = time / length;
  const inertia = mass * length ** 2;
  const all = (values: readonly number[], by: number): number[] => values.map((value) => value * by);
  const sides = (of: { readonly left: number; readonly right: number }) => ({
    left: of.left * length,
    right: of.right * length,
  });
  const axle = (a: AxleModel): AxleModel => ({
    mass: a.mass * mass,
    rollInertia: a.rollInertia * inertia,
    halfTrack: a.halfTrack * length,
    spring: { ...a.spring, halfStation: a.spring.halfStation * length, rate: a.spring.rate * rate },
    shock: {
      ...a.shock,
      halfStation: a.shock.halfStation * length,
      speed: all(a.shock.speed, 1 / perSpeed),
      force: all(a.shock.force, force),
    },
    stop: {
      ...a.stop,
      halfStation: a.stop.halfStation * length,
      gap: sides(a.stop.gap),
      crush: all(a.stop.crush, length),
      force: all(a.stop.force, force),
      rateFactor: a.stop.rateFactor * perSpeed,
    },
    metal: { atCrush: sides(a.metal.atCrush), rate: a.metal.rate * rate },
    droopLimit: {
      at: a.droopLimit.at * length,
      rate: a.droopLimit.rate * rate,
      rateFactor: a.droopLimit.rateFactor * perSpeed,
    },
    tyre: { rate: a.tyre.rate * rate, damping: a.tyre.damping * force * perSpeed },
  });
  return {
    sprung: {
      mass: model.sprung.mass * mass,
      rollInertia: model.sprung.rollInertia * inertia,
      pitchInertia: model.sprung.pitchInertia * inertia,
      toFrontAxle: model.sprung.toFrontAxle * length,
      toRearAxle: model.sprung.toRearAxle * length,
    },
    axles: { front: axle(model.axles.front), rear: axle(model.axles.rear) },
    gravity: (model.gravity * length) / time ** 2,
  };
}
