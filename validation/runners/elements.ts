import {
  ATMOSPHERE,
  asSolidAxle,
  barRateAtAxle,
  blowDownTime,
  type Cams,
  type CourseShape,
  CRITICAL_RATIO,
  contactLength,
  cubicValue,
  dampingOfPush,
  dampingRatioTable,
  frictionAmplitude,
  frictionForce,
  frictionLoopEnergy,
  type GasChamber,
  gasEnergy,
  gasForce,
  gasRate,
  gasStopCurve,
  handPushTable,
  heightAt,
  linearValue,
  maxwellLoopEnergy,
  maxwellModuli,
  measuredTable,
  monotoneCubic,
  movingFootprint,
  piecewiseLinear,
  pressureAt,
  rateBySize,
  rateFromPress,
  rateOnLine,
  rodArea,
  type ShockTable,
  sampleCourse,
  stopLoss,
  twoCams,
  ventFlow,
  ventPressure,
  withSealFriction,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { independentMotion } from './independent-rig.ts';
import { number, numbers } from './inputs.ts';

type Inputs = Readonly<Record<string, unknown>>;

const INCH = 0.0254;
const POUND_FORCE = 4.4482216152605;
const PSI = POUND_FORCE / INCH ** 2;

const branch = ({ limit, halfTravel }: Inputs) => ({ limit: number(limit), halfTravel: number(halfTravel) });
const maxwell = ({ rate, damping }: Inputs) => ({ rate: number(rate), damping: number(damping) });
const angular = ({ frequency }: Inputs) => 2 * Math.PI * number(frequency);
const gas = ({ area, pressure, column }: Inputs, index: unknown): GasChamber => ({
  area: number(area),
  pressure: number(pressure),
  column: number(column),
  index: number(index),
});

/** The rows of a list of lists of numbers. */
const rows = (value: unknown): number[][] => {
  if (!Array.isArray(value)) throw new Error('A check gives no rows where rows are due');
  return value.map(numbers);
};

const tableAt = ({ speed, force }: ShockTable, at: unknown): number[] => {
  const table = piecewiseLinear(speed, force);
  return numbers(at).map((v) => linearValue(table, v));
};

/** Share of a wave that is left under a footprint, on a long road of that one wave, by its largest height far from the ends. */
function footprintGain(length: number, wavelength: number): number {
  const wave = { n: 1 / wavelength, common: 1, commonPhase: 0, own: 0, leftPhase: 0, rightPhase: 0 };
  const road = sampleCourse({ kind: 'waves', waves: [wave], fadeIn: 0, length: 12 * wavelength });
  const felt = movingFootprint(road.left, length);
  // The mean of a wave over a foot is a wave of the same phase: read where the ground is highest.
  return Math.abs(heightAt(felt, 5.25 * wavelength));
}

/** Force laws of parts against closed forms and general libraries. */
export const elements: Runner = {
  'friction-path': (inputs) => {
    let reversal = { travel: 0, force: 0 };
    return numbers(inputs.turns).map((travel) => {
      reversal = { travel, force: frictionForce(travel, reversal, branch(inputs)) };
      return reversal.force;
    });
  },
  'friction-amplitude': (inputs) =>
    numbers(inputs.amplitudes).map((amplitude) => frictionAmplitude(amplitude, branch(inputs))),
  'friction-energy': (inputs) =>
    numbers(inputs.amplitudes).map((amplitude) => frictionLoopEnergy(amplitude, branch(inputs))),
  'maxwell-moduli': (inputs) => maxwellModuli(maxwell(inputs), angular(inputs)),
  'maxwell-energy': (inputs) => maxwellLoopEnergy(maxwell(inputs), number(inputs.amplitude), angular(inputs)),
  'combined-loop': (inputs) =>
    frictionLoopEnergy(number(inputs.amplitude), branch(inputs)) +
    maxwellLoopEnergy(maxwell(inputs), number(inputs.amplitude), angular(inputs)),
  'stop-loss': ({ crush, force, usableCrush, hysteresis, dynamicFactor }) => {
    const loss = stopLoss(numbers(crush), numbers(force), {
      usableCrush: number(usableCrush),
      hysteresis: number(hysteresis),
      dynamicFactor: number(dynamicFactor),
    });
    if (loss.friction === null || loss.maxwell === null) throw new Error('A check of losses found none');
    return { limit: loss.friction.limit, ...loss.maxwell };
  },
  'gas-force': (inputs) =>
    numbers(inputs.strokes).map((stroke) => gasForce(gas(inputs, inputs.index), stroke)),
  'gas-rate': (inputs) =>
    numbers(inputs.indices).map((index) => gasRate(gas(inputs, index), number(inputs.stroke))),
  'gas-work': (inputs) =>
    numbers(inputs.indices).map((index) => gasEnergy(gas(inputs, index), number(inputs.stroke))),
  'gas-curve': (inputs) => {
    const { crush, force } = gasStopCurve(gas(inputs, inputs.index), number(inputs.stroke));
    const curve = monotoneCubic(crush, force);
    return numbers(inputs.at).map((place) => cubicValue(curve, place));
  },
  'gas-warm': ({ pressure, from, to }) =>
    (pressureAt(number(pressure), number(from), number(to)) + ATMOSPHERE) / (number(pressure) + ATMOSPHERE),
  'rod-force': ({ rods, pressures }) =>
    numbers(rods).map((rod) =>
      numbers(pressures).map((pressure) => (pressure * PSI * rodArea(rod * INCH)) / POUND_FORCE),
    ),
  'vent-flow': ({ area, temperature, cases }) =>
    rows(cases).map(([discharge, upstream, downstream]) =>
      ventFlow({ area: number(area), discharge }, upstream, downstream, number(temperature)),
    ),
  'vent-critical': () => CRITICAL_RATIO,
  'vent-pressure': ({ area, discharge, faceArea, speed }) =>
    ventPressure({ area: number(area), discharge: number(discharge) }, number(faceArea), number(speed)) ??
    Number.NaN,
  'vent-blow-down': ({ area, discharge, volume, temperature, from, to }) =>
    blowDownTime(
      { area: number(area), discharge: number(discharge) },
      {
        volume: number(volume),
        from: number(from),
        to: number(to),
        temperature: number(temperature),
      },
    ),
  'damping-ratio': ({ sprungMass, rateAtAxle, ratios }) =>
    numbers(ratios).map((ratio) => {
      const table = dampingRatioTable(
        { compression: ratio, rebound: ratio },
        { sprungMass: number(sprungMass), rateAtAxle: number(rateAtAxle), shockRatio: 1 },
      );
      return tableAt(table, [10 * INCH])[0] / POUND_FORCE;
    }),
  'seal-friction': ({ speed, force, friction, at }) =>
    tableAt(withSealFriction(measuredTable(numbers(speed), numbers(force)), number(friction)), at),
  'hand-push': ({ speed, push, pull, gas: charge, friction, at }) => {
    const read = { speed: number(speed), push: number(push), pull: number(pull) };
    return tableAt(handPushTable(read.speed, dampingOfPush(read, number(charge), number(friction))), at);
  },
  'tyre-by-size': ({ sizes }) =>
    rows(sizes).map(([width, aspect, rim, pressure]) =>
      rateOnLine(rateBySize({ width, aspect, rim: rim * INCH }), pressure),
    ),
  'tyre-press': ({ deflection, load, at }) =>
    numbers(at).map((carried) => rateFromPress(numbers(deflection), numbers(load), carried)),
  'tyre-contact': ({ cases }) => rows(cases).map(([radius, deflection]) => contactLength(radius, deflection)),
  'bar-rate': ({ linkRate, linkSpread, linkRatio }) =>
    barRateAtAxle({
      linkRate: number(linkRate),
      linkSpread: number(linkSpread),
      linkRatio: number(linkRatio),
    }),
  'footprint-gain': ({ length, wavelengths }) =>
    numbers(wavelengths).map((wavelength) => footprintGain(number(length), wavelength)),
  'footprint-height': ({ shape, length, at }) => {
    const felt = movingFootprint(sampleCourse(shape as CourseShape).left, number(length));
    return numbers(at).map((distance) => heightAt(felt, distance));
  },
  'two-cams-height': ({ shape, cams, at }) => {
    const felt = twoCams(sampleCourse(shape as CourseShape).left, cams as Cams);
    return numbers(at).map((distance) => heightAt(felt, distance));
  },
  'independent-motion': (inputs) => independentMotion(inputs, asSolidAxle),
};
