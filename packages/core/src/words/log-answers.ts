import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';

/** What may be said from a log, as its room says it. */
interface Use {
  readonly peaks: 'no' | 'low-passed' | 'none';
  readonly rms: boolean;
  readonly trustedTo: number | null;
}

/** What is good for what: a sentence for each use that somebody may have in mind. */
export function logUseLines({ peaks, rms, trustedTo }: Use): readonly string[] {
  if (peaks === 'none' || trustedTo === null) return ['No accelerations in it: where and how fast, no more.'];
  const hertz = `${Number(trustedTo.toPrecision(2))} Hz`;
  return [
    peaks === 'no'
      ? 'How hard: no. Hits are counted, not measured.'
      : `How hard: as far as ${hertz} shows it. A knock of metal is harder than its peak here.`,
    rms
      ? 'How rough: yes, as vertical r.m.s. over the seconds that are whole.'
      : 'How rough: no, not from this log.',
    `How fast it shakes: up to ${hertz}.`,
  ];
}

const GRAVITY = 9.80665;
const SHOWN = 3;

/** A size of acceleration as the seat knows it: `2.3 g`. Logs of both systems are read in g. */
export const inG = (size: number): string => `${Number((size / GRAVITY).toPrecision(SHOWN))} g`;

/** `436 s`, `12 min 20 s`, `2 h 5 min`. */
export function lengthOfTime(seconds: number): string {
  if (seconds < 600) return `${Number(seconds.toPrecision(SHOWN))} s`;
  const minutes = Math.floor(seconds / 60);
  return seconds < 7200
    ? `${minutes} min ${Math.round(seconds - 60 * minutes)} s`
    : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** How long a way was, in the units of the road. */
export const wayText = (distance: number, system: UnitSystem): string =>
  formatValue(Number(distance.toPrecision(SHOWN)), 'length', {
    system,
    unit: system === 'shop' ? 'mi' : 'km',
  });
