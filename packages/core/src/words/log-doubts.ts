import type { Dimension } from '../finding/figure.ts';
import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { inG } from './log-answers.ts';

/** What is wrong with a log, as its room says it. */
type Doubt =
  | {
      readonly code: 'clipped';
      readonly hits: number;
      readonly range: number;
      readonly vertical: number | null;
    }
  | { readonly code: 'filtered' | 'no-rest' }
  | { readonly code: 'gravity-missing' | 'scale-off'; readonly size: number }
  | { readonly code: 'tilted'; readonly angle: number }
  | { readonly code: 'slow'; readonly rate: number; readonly trustedTo: number }
  | {
      readonly code: 'holes' | 'jumps' | 'repeats';
      readonly count: number;
      readonly longest: number;
      readonly line: number;
      readonly time: number;
    }
  | { readonly code: 'uneven'; readonly share: number }
  | {
      readonly code: 'texts' | 'torn' | 'timeless';
      readonly count: number;
      readonly line: number;
      readonly column: number;
      readonly found: string;
    }
  | { readonly code: 'unit-taken'; readonly column: string; readonly unit: string }
  | { readonly code: 'axes-missing'; readonly count: number }
  | { readonly code: 'place-rough'; readonly accuracy: number | null };

const GRAVITY = 9.80665;

const rounded = (value: number, digits: number): number => Number(value.toPrecision(digits));
const times = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** What is wrong with a log, what follows from it, and what would settle it: whole sentences. */
export function logDoubtText(doubt: Doubt, system: UnitSystem): string {
  const shown = (value: number, dimension: Dimension) =>
    formatValue(rounded(value, 3), dimension, { system });
  switch (doubt.code) {
    case 'clipped':
      return (
        `At least ${times(doubt.hits, 'hit')} went beyond ${inG(doubt.range)}, the end of the sensor: how hard they were is not known.` +
        (doubt.vertical === null
          ? ''
          : ` As it hung, a hit straight up ends at ${inG(doubt.vertical)}, ${inG(doubt.vertical - GRAVITY)} above rest.`) +
        ' Use a sensor of 8 g or more.'
      );
    case 'filtered':
      return 'Only a channel that the device has filtered and freed of gravity: no peak of it is believed. Log the raw accelerometer.';
    case 'gravity-missing':
      return `At rest it reads ${inG(doubt.size)}, not 1 g: gravity was taken out, which filters impacts too. No peak of it is believed. Log the raw accelerometer.`;
    case 'scale-off':
      return `At rest it reads ${inG(doubt.size)}, not 1 g: the scale or the unit is off, and every figure with it.`;
    case 'no-rest':
      return 'It never rested for three seconds: how the device hung is not known, and nothing vertical can be told. Stand still for ten seconds at start and end.';
    case 'tilted':
      return `The device hung ${Math.round((doubt.angle * 180) / Math.PI)}° off its nearest axis: up is taken from the rest, not from an axis.`;
    case 'slow':
      return `${rounded(doubt.rate, 3)} rows a second show up to about ${rounded(doubt.trustedTo, 2)} Hz; hits on metal ring above 100 Hz and fold in: a peak is a low-passed estimate. Log 500 Hz or more.`;
    case 'holes':
      return `${times(doubt.count, 'hole')}, the longest ${Math.round(1000 * doubt.longest)} ms, the first before line ${doubt.line}: nothing is known there, and nothing is put in.`;
    case 'jumps':
      return `The clock was set ${times(doubt.count, 'time')}, the first time at line ${doubt.line} by ${jumpText(doubt.longest)} at most: stretches are not joined over it.`;
    case 'repeats':
      return `${times(doubt.count, 'row')} at the time of the row before, the first in line ${doubt.line}: they count as samples, not as time.`;
    case 'uneven':
      return `Only ${Math.round(100 * doubt.share)} % of the steps are within a fifth of the usual one: a spectrum of it is a guess.`;
    case 'texts':
      return `${times(doubt.count, 'cell')} without a number where one belongs, the first in line ${doubt.line}, column ${doubt.column}: “${doubt.found}”.`;
    case 'torn':
      return `${times(doubt.count, 'line')} too short, the first is line ${doubt.line}: “${doubt.found}”.`;
    case 'timeless':
      return `${times(doubt.count, 'row')} without a time, the first in line ${doubt.line}.`;
    case 'unit-taken':
      return `The unit of column ${doubt.column} is not written anywhere and the values do not tell: taken as ${doubt.unit}. Correct it with --columns.`;
    case 'axes-missing':
      return `${times(doubt.count, 'axis').replace('axiss', 'axes')} of three not logged: sizes and directions are those of the rest.`;
    case 'place-rough':
      return doubt.accuracy === null
        ? 'It does not say how well it knew its place: take 10 m.'
        : `Places are good to ${shown(doubt.accuracy, 'length')} or so: a hit is found again within that.`;
  }
}

function jumpText(seconds: number): string {
  const [size, unit] = [
    [31_556_952, 'years'],
    [86_400, 'days'],
    [3600, 'hours'],
    [1, 's'],
  ].find(([length]) => seconds >= 2 * Number(length)) ?? [1, 's'];
  return `${rounded(seconds / Number(size), 2)} ${unit}`;
}
