import type { DrivingTime, DrivingTimes, Figure, RideExposure } from '@lastinch/core';
import { finite } from './figure-json.ts';

/**
 * What the seat takes, in `ride --json`: SI, each figure with its 95 % half-width, null where unknown; a time without
 * end is null too.
 */
export function exposureJson({ at, place, day, result, figures, times, tilting }: RideExposure) {
  const { seat, doubts, rate, duration } = result;
  return {
    seat: at,
    place,
    day,
    direction: 'vertical',
    leftOut: ['foreAndAft', 'sideways'],
    samplesPerSecond: rate,
    duration,
    doubts,
    figures: Object.fromEntries(
      Object.entries({ ...figures, tilting }).map(([name, figure]) => [name, figureOf(figure)]),
    ),
    times: times === null ? null : { toAction: timesOf(times.toAction), toLimit: timesOf(times.toLimit) },
    comfort: seat?.comfort ?? null,
    shocks: seat?.vertical.shocks ?? null,
    singleSource: ['spinalDose', 'spinalStress'],
  };
}

const timesOf = ({ byAcceleration, byDose }: DrivingTimes) => ({
  byAcceleration: timeOf(byAcceleration),
  byDose: timeOf(byDose),
});

const timeOf = (time: DrivingTime | null) =>
  time === null
    ? null
    : { value: finite(time.value), low: finite(time.ends?.low), high: finite(time.ends?.high) };

const figureOf = (figure: Figure | null) =>
  figure === null || !Number.isFinite(figure.value)
    ? null
    : { value: figure.value, tolerance: finite(figure.tolerance ?? undefined) };
