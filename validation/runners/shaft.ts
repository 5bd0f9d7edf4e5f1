import {
  type AxleGeometry,
  equivalentAngle,
  peakAcceleration,
  type Shaft,
  shaftIn,
  speedRatio,
  whirlSpeed,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { number, numbers, text } from './inputs.ts';

const radians = (degrees: unknown) => (number(degrees) * Math.PI) / 180;
const vector = (value: unknown): [number, number, number] => {
  const [x, y, z] = numbers(value);
  return [x, y, z];
};

const AXLE: AxleGeometry = {
  kind: 'leaf',
  centre: [0, 0, 0],
  links: [],
  halfTrack: 0.8,
  tyreRadius: 0.4,
  struts: {},
};
const STILL = { shift: [0, 0, 0], rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], residual: 0 } as const;

/** Universal joints in a row, in space; whirling tubes. */
export const shaft: Runner = {
  'one-joint': ({ degrees }) => ({
    largest: speedRatio(radians(degrees), 0),
    smallest: speedRatio(radians(degrees), Math.PI / 2),
  }),
  shaft: ({ case: output, pinion, along, twistDegrees, caseKind, evenAtDegrees }) => {
    const joint = { kind: 'single', bindsAt: null, evenAt: 0 } as const;
    const asked: Shaft = {
      caseJoint: {
        ...joint,
        kind: text(caseKind) as 'single' | 'double',
        evenAt: radians(evenAtDegrees),
        point: [0, 0, 0],
        axis: vector(output),
      },
      pinionJoint: { ...joint, point: vector(along), axis: vector(pinion) },
      yokeTwist: radians(twistDegrees),
      slip: null,
      tube: null,
    };
    const { caseAngle, pinionAngle, pinionUnevenness } = shaftIn(asked, AXLE, STILL);
    return { caseAngle, pinionAngle, pinionUnevenness };
  },
  'peak-acceleration': ({ degrees, rpm }) =>
    peakAcceleration(radians(degrees)) * ((number(rpm) * Math.PI) / 30) ** 2,
  whirl: ({ length, outside, wall, modulus, density }) =>
    whirlSpeed(
      {
        outside: number(outside),
        wall: number(wall),
        modulus: number(modulus),
        density: number(density),
      },
      number(length),
    ),
  'cancelling-pairs': ({ first, second }) =>
    numbers(first).map((degrees, k) => {
      const pair = [degrees, numbers(second)[k]].map((each) => ({ angle: radians(each), turn: Math.PI }));
      return (equivalentAngle(pair) * 180) / Math.PI;
    }),
};
