import type { ReadingReport } from './channels.ts';
import type { AccelerationReport, LogInspection } from './inspection.ts';
import type { LogFormat } from './open-log.ts';
import type { TimePlaces } from './timing.ts';

/** What is wrong with a log, as data: a sentence is made of it elsewhere. Numbers in SI. */
export type LogDoubt =
  | {
      readonly code: 'clipped';
      readonly hits: number;
      readonly range: number;
      readonly vertical: number | null;
    }
  | { readonly code: 'filtered' }
  | { readonly code: 'gravity-missing'; readonly size: number }
  | { readonly code: 'scale-off'; readonly size: number }
  | { readonly code: 'no-rest' }
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

/** What may be said from a log, and what may not. */
export interface LogUse {
  /** `no`: clipped or filtered. `low-passed`: what lies above `trustedTo` is missing or folded in. */
  readonly peaks: 'no' | 'low-passed' | 'none';
  /** Whether the r.m.s. of the windows without clipping and holes is worth saying. */
  readonly rms: boolean;
  /** Frequencies up to here are what they say [Hz]; null without accelerations. */
  readonly trustedTo: number | null;
  /** Half the rate [Hz]. */
  readonly nyquist: number | null;
}

const GRAVITY = 9.80665;
/** The usual distance that the band keeps from half the rate: `common practice, no source`. */
const PER_CYCLE = 2.56;
/** Frame hits ring at 100 Hz and above: a rate below that sees them folded [Hz]. common practice, no source */
const FAST = 512;
/** Rest may be off gravity by that share before the scale is in doubt. */
const SCALE = 0.03;
/** Below that share of gravity at rest, it was taken out. */
const FREED = 0.2;
/** A device hangs level to within that [rad]. */
const LEVEL = (10 * Math.PI) / 180;
const EVEN_ENOUGH = 0.9;
/** Metres within which a hit can be found again on the trail. */
const GOOD_PLACE = 5;

/** Rests on the channel with gravity in it where there is one. */
const channelOf = ({ acceleration, linear }: LogInspection) => acceleration ?? linear;

export function logUse(inspection: LogInspection): LogUse {
  const channel = channelOf(inspection);
  const rate = rateOf(inspection);
  if (channel === null || rate === null) return { peaks: 'none', rms: false, trustedTo: null, nyquist: null };
  const isRefused = inspection.acceleration === null || isFreed(channel) || channel.clipped.length > 0;
  return {
    peaks: isRefused ? 'no' : 'low-passed',
    rms: channel.verticalRms !== null && inspection.acceleration !== null && !isFreed(channel),
    trustedTo: rate / PER_CYCLE,
    nyquist: rate / 2,
  };
}

/**
 * How many of a tone and its harmonics a log tells: whoops or washboard under a speed, for example.
 *
 * @param frequency – of the tone [Hz]: speed ÷ spacing
 */
export const harmonicsKnown = (trustedTo: number, frequency: number): number =>
  Math.floor(trustedTo / frequency);

/** All that is wrong with a log, the worst for a use first. */
export function logDoubts(
  format: LogFormat,
  report: ReadingReport,
  inspection: LogInspection,
): readonly LogDoubt[] {
  const doubts: LogDoubt[] = [];
  const channel = channelOf(inspection);
  const rate = rateOf(inspection);
  if (channel !== null && rate !== null) {
    if (inspection.acceleration === null) doubts.push({ code: 'filtered' });
    doubts.push(...axesDoubts(channel, inspection.acceleration !== null));
    if (rate < FAST) doubts.push({ code: 'slow', rate, trustedTo: rate / PER_CYCLE });
  }
  if (format.kind === 'table') {
    const axes = format.columns.filter(({ role }) => role.startsWith('acceleration.')).length;
    if (axes > 0 && axes < 3) doubts.push({ code: 'axes-missing', count: 3 - axes });
    for (const { name, number, role, unit, unitBy } of format.columns)
      if (role !== 'ignored' && unitBy === 'custom' && !role.startsWith('position'))
        doubts.push({ code: 'unit-taken', column: name || String(number), unit });
  }
  const timing =
    inspection.timing.acceleration ?? inspection.timing['linear-acceleration'] ?? inspection.timing.position;
  if (timing) {
    for (const code of ['holes', 'jumps', 'repeats'] as const) doubts.push(...clockDoubt(code, timing[code]));
    if (timing.even < EVEN_ENOUGH) doubts.push({ code: 'uneven', share: timing.even });
  }
  for (const code of ['texts', 'torn', 'timeless'] as const) {
    const { count, first } = report[code];
    if (count > 0 && first[0]) doubts.push({ code, count, ...first[0] });
  }
  if (inspection.position) {
    const { accuracy } = inspection.position;
    if (accuracy === null || accuracy > GOOD_PLACE) doubts.push({ code: 'place-rough', accuracy });
  }
  return doubts;
}

function axesDoubts({ rest, clipped, range }: AccelerationReport, hasGravity: boolean): LogDoubt[] {
  const doubts: LogDoubt[] = [];
  const largest = rest && Math.max(...rest.vector.map(Math.abs)) / rest.size;
  if (range !== null)
    doubts.push({
      code: 'clipped',
      hits: clipped.length,
      range,
      vertical: hasGravity && largest ? range / largest : null,
    });
  if (!hasGravity) return doubts;
  if (rest === null || largest === null) return [...doubts, { code: 'no-rest' }];
  if (rest.size < FREED * GRAVITY) return [...doubts, { code: 'gravity-missing', size: rest.size }];
  if (Math.abs(rest.size / GRAVITY - 1) > SCALE) doubts.push({ code: 'scale-off', size: rest.size });
  const angle = Math.acos(Math.min(1, largest));
  if (angle > LEVEL) doubts.push({ code: 'tilted', angle });
  return doubts;
}

const isFreed = ({ rest }: AccelerationReport): boolean => rest !== null && rest.size < FREED * GRAVITY;

const rateOf = ({ timing }: LogInspection): number | null => {
  const of = timing.acceleration ?? timing['linear-acceleration'];
  return of && Number.isFinite(of.rate) ? of.rate : null;
};

const clockDoubt = (
  code: 'holes' | 'jumps' | 'repeats',
  { count, longest, first }: TimePlaces,
): LogDoubt[] =>
  count > 0 && first[0] ? [{ code, count, longest, line: first[0].line, time: first[0].time }] : [];
