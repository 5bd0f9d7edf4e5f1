import {
  cubicIntegral,
  cubicSlope,
  cubicValue,
  linearValue,
  monotoneCubic,
  piecewiseLinear,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { numbers } from './inputs.ts';

/** Force tables: the monotone cubic of the stop and the straight lines of the shock. */
export const interpolation: Runner = {
  'monotone-cubic-value': ({ x, y, at }) => {
    const curve = monotoneCubic(numbers(x), numbers(y));
    return numbers(at).map((place) => cubicValue(curve, place));
  },
  'monotone-cubic-slope': ({ x, y, at }) => {
    const curve = monotoneCubic(numbers(x), numbers(y));
    return numbers(at).map((place) => cubicSlope(curve, place));
  },
  'monotone-cubic-energy': ({ x, y, at }) => {
    const curve = monotoneCubic(numbers(x), numbers(y));
    return numbers(at).map((place) => cubicIntegral(curve, place));
  },
  'straight-value': ({ x, y, at }) => {
    const table = piecewiseLinear(numbers(x), numbers(y));
    return numbers(at).map((place) => linearValue(table, place));
  },
};
