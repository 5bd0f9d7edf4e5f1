import type { AxleModel, RideModel } from '@lastinch/core';

/** A rig without anything that switches, as the ride checks write it: springs, shock slopes, tyres. SI. */
export interface LinearRig {
  readonly sprung: RideModel['sprung'];
  readonly front: LinearAxle;
  readonly rear: LinearAxle;
}

interface LinearAxle {
  readonly mass: number;
  readonly rollInertia: number;
  readonly halfTrack: number;
  readonly springStation: number;
  readonly springRate: number;
  readonly shockStation: number;
  readonly shockSlope: number;
  readonly tyreRate: number;
  readonly tyreDamping: number;
}

/** Further away than any motion of these checks. */
const NEVER = 5;

/** The rig as a model of the ride engine; stop, metal and droop limit stand too far away to be met. */
export function linearModel({ sprung, front, rear }: LinearRig): RideModel {
  const axle = (axle: LinearAxle): AxleModel => ({
    mass: axle.mass,
    rollInertia: axle.rollInertia,
    halfTrack: axle.halfTrack,
    spring: { halfStation: axle.springStation, rate: axle.springRate, ratio: 1 },
    shock: {
      halfStation: axle.shockStation,
      ratio: 1,
      speed: [-1, 0, 1],
      force: [-axle.shockSlope, 0, axle.shockSlope],
    },
    stop: {
      halfStation: axle.springStation,
      ratio: 1,
      gap: { left: NEVER, right: NEVER },
      crush: [0, 0.01, 0.02],
      force: [0, 1000, 3000],
      rateFactor: 0,
    },
    metal: { atCrush: { left: 0.02, right: 0.02 }, rate: 2e7 },
    droopLimit: { at: NEVER, rate: 5e5, rateFactor: 0 },
    tyre: { rate: axle.tyreRate, damping: axle.tyreDamping },
  });
  return { sprung, axles: { front: axle(front), rear: axle(rear) }, gravity: 9.80665 };
}
