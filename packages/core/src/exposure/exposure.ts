import { absorbedPower } from './absorbed-power.ts';
import { estimatedDose, rootMeanSquare, vibrationDose } from './dose.ts';
import { FAITHFUL_SHARE, FEWEST_SAMPLES } from './filter.ts';
import {
  AXIS_FACTORS,
  comfortBands,
  DAILY_VALUES,
  type DailyValue,
  dailyExposure,
  guidanceZone,
  placeInZone,
  shockTriggers,
  timeToDose,
  timeToExposure,
  totalValue,
} from './limits.ts';
import { largestSize, lowPassedPeak } from './peak.ts';
import type {
  AxisExposure,
  DailyExposure,
  ExposureDoubt,
  ExposureResult,
  SeatExposure,
  TimeTo,
} from './result.ts';
import { maximumTransient } from './running.ts';
import { dynamicResponseIndex } from './shock-response.ts';
import { SPINAL_RATE, spinalResponse } from './spinal.ts';
import { weightedHistory } from './weighting.ts';

export interface ExposureOptions {
  /** Acceleration of the seat forward and to the left [m/s²], as long as the vertical one. */
  readonly foreAndAft?: Float64Array;
  readonly sideways?: Float64Array;
  /** How long such driving goes on in a day [s] > 0. */
  readonly drivenPerDay?: number;
}

/** Shorter records hold less than one period of the band's lower end, 0.4 Hz [s]. */
const SHORTEST_FOR_AVERAGE = 2.5;
/** Upper end of the band in which the standard asks for full accuracy [Hz]. */
const BAND_END = 80;
/** What shakes a seat lies below this [Hz]; common practice, no source. */
const LEAST_BAND = 20;
/** No rig changes its vertical speed by more [m/s]: a fall from 11 m. More means that gravity is still in the record. */
const LARGEST_SPEED_CHANGE = 15;

/**
 * What a seat takes: ISO 2631-1 r.m.s., running maximum, dose and crest factor, time to the European daily values,
 * comfort bands, absorbed power, dynamic response index, and the spinal response of ISO 2631-5:2004.
 *
 * @param history – vertical acceleration at the seat above rest [m/s²], up positive, evenly sampled
 * @param rate – samples a second [Hz] > 0
 * @returns plain data; what cannot be known is null, and `doubts` says why
 * @validity records of 2.5 s or more for averages, 400 samples a second or more for the whole band to 80 Hz; between
 * 100 and 400 the result is right up to a fifth of the rate, below 100 it is unknown. Times and doses of a day stand
 * for a day of nothing but this record.
 * @throws on a rate or a driving time that is not positive, or histories of different length: our own mistake
 */
export function exposureOf(
  history: Float64Array,
  rate: number,
  options: ExposureOptions = {},
): ExposureResult {
  const { foreAndAft, sideways, drivenPerDay } = options;
  if (!(rate > 0 && Number.isFinite(rate))) throw new Error(`exposureOf: rate ${rate}`);
  if (drivenPerDay !== undefined && !(drivenPerDay > 0))
    throw new Error(`exposureOf: a day of ${drivenPerDay} s`);
  const histories = [history, foreAndAft, sideways].filter((each) => each !== undefined);
  if (histories.some(({ length }) => length !== history.length))
    throw new Error('exposureOf: histories of different length');

  const duration = Math.max(0, history.length - 1) / rate;
  const rightUpTo = FAITHFUL_SHARE * rate;
  const doubts: ExposureDoubt[] = [];
  if (history.length < FEWEST_SAMPLES) doubts.push('record-empty');
  if (histories.some((each) => !each.every(Number.isFinite))) doubts.push('record-broken');
  if (rightUpTo < LEAST_BAND) doubts.push('rate-too-low');
  if (Math.abs(speedChange(history, rate)) > LARGEST_SPEED_CHANGE) doubts.push('gravity-left');
  if (doubts.length > 0) return { rate, duration, rightUpTo, doubts, seat: null };

  if (duration < SHORTEST_FOR_AVERAGE) doubts.push('record-short');
  if (rightUpTo < BAND_END) doubts.push('rate-low');
  return { rate, duration, rightUpTo, doubts, seat: seatExposure(history, rate, options) };
}

function speedChange(history: Float64Array, rate: number): number {
  let total = 0;
  for (const acceleration of history) total += acceleration;
  return total / rate;
}

function seatExposure(history: Float64Array, rate: number, options: ExposureOptions): SeatExposure {
  const { foreAndAft, sideways, drivenPerDay = null } = options;
  const duration = (history.length - 1) / rate;
  const vertical = axisExposure(history, rate, 'vertical');
  const forward = foreAndAft ? axisExposure(foreAndAft, rate, 'foreAndAft') : null;
  const left = sideways ? axisExposure(sideways, rate, 'sideways') : null;
  const axes = [vertical, forward, left].filter((axis) => axis !== null);

  const averages = axes.map(({ rms }) => rms).filter((rms) => rms !== null);
  const isAveraged = averages.length > 0;
  const counted = isAveraged ? Math.max(...axes.map(({ rms, factor }) => factor * (rms ?? 0))) : null;
  const countedDose = Math.max(...axes.map(({ dose, factor }) => factor * dose));
  const timeTo = ({ acceleration, dose }: DailyValue): TimeTo => ({
    byAcceleration: counted === null ? null : timeToExposure(counted, acceleration),
    byDose: timeToDose(countedDose, duration, dose),
  });
  const isWhole = vertical.rms !== null && forward?.rms != null && left?.rms != null;
  return {
    vertical,
    foreAndAft: forward,
    sideways: left,
    total: isWhole
      ? totalValue({ vertical: vertical.rms, foreAndAft: forward.rms, sideways: left.rms })
      : null,
    comfort: isAveraged ? comfortBands(Math.hypot(...averages)) : null,
    toAction: timeTo(DAILY_VALUES.action),
    toLimit: timeTo(DAILY_VALUES.limit),
    daily: drivenPerDay === null ? null : dailyOf(counted, countedDose, duration, drivenPerDay),
    absorbedPower: isAveraged ? absorbedPower(history, rate) : null,
    lowPassedPeak: lowPassedPeak(history, rate),
    dynamicResponseIndex: dynamicResponseIndex(history, rate),
    spinal:
      rate < SPINAL_RATE
        ? null
        : spinalResponse({ vertical: history, foreAndAft, sideways }, rate, drivenPerDay),
  };
}

function axisExposure(history: Float64Array, rate: number, axis: keyof typeof AXIS_FACTORS): AxisExposure {
  const weighting = axis === 'vertical' ? 'Wk' : 'Wd';
  const weighted = weightedHistory(history, rate, weighting);
  const duration = (history.length - 1) / rate;
  const peak = largestSize(weighted);
  const dose = vibrationDose(weighted, rate);
  const always = { weighting, factor: AXIS_FACTORS[axis], peak, dose } as const;
  if (duration < SHORTEST_FOR_AVERAGE)
    return {
      ...always,
      rms: null,
      maximumTransient: null,
      crestFactor: null,
      estimatedDose: null,
      shocks: null,
    };
  const rms = rootMeanSquare(weighted);
  const transient = maximumTransient(weighted, rate, 'linear');
  return {
    ...always,
    rms,
    maximumTransient: transient,
    crestFactor: rms > 0 ? peak / rms : null,
    estimatedDose: estimatedDose(rms, duration),
    shocks: shockTriggers({ rms, peak, dose, duration, maximumTransient: transient }),
  };
}

function dailyOf(
  counted: number | null,
  countedDose: number,
  recorded: number,
  driven: number,
): DailyExposure {
  const zone = guidanceZone(driven);
  return {
    driven,
    acceleration: counted === null ? null : dailyExposure(counted, driven),
    dose: countedDose * (driven / recorded) ** 0.25,
    zone:
      counted === null
        ? null
        : {
            equalEnergy: placeInZone(counted, zone.equalEnergy),
            fourthPower: placeInZone(counted, zone.fourthPower),
          },
  };
}
