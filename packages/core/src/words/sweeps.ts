import type { UnitSystem } from '../quantity/quantity.ts';
import { needle, needles } from './speeds.ts';

/** Where a criterion of a sweep is first not held, as the sweep says it. */
interface First {
  readonly kind: 'broken' | 'broken-at-once' | 'unknown' | 'never' | 'no-limit';
  readonly speed: number | null;
  readonly trials: { readonly low: number; readonly high: number } | null;
  readonly neverShare: number | null;
}

/** What a cell of a table says of it: the speed itself, and what is known of it within the readings. */
export interface FirstBreakText {
  readonly speed: string;
  readonly within: string;
}

/**
 * `17.7 mph` and `16.9 to 18.6 mph`; `not up to 45 mph`; `no limit given`.
 *
 * @param fastest – of the scan [m/s]
 */
export function firstBreakText(
  first: First,
  { system, fastest }: { readonly system: UnitSystem; readonly fastest: number },
): FirstBreakText {
  const { kind, speed, trials, neverShare } = first;
  if (kind === 'no-limit') return { speed: 'no limit given', within: '' };
  const upTo = `not up to ${needle(fastest, system)}`;
  const says =
    speed === null
      ? upTo
      : {
          broken: needle(speed, system),
          'broken-at-once': `${needle(speed, system)} or slower`,
          unknown: `cannot be told from ${needle(speed, system)}`,
        }[kind as 'broken' | 'broken-at-once' | 'unknown'];
  return { speed: says, within: withinText(trials, neverShare, system) };
}

function withinText(trials: First['trials'], neverShare: number | null, system: UnitSystem): string {
  if (trials === null) return '± unknown';
  const { low, high } = trials;
  if (low === Number.POSITIVE_INFINITY) return 'in no trial';
  if (high === Number.POSITIVE_INFINITY) {
    const broken = Math.round(100 * (1 - (neverShare ?? 0)));
    return `${broken < 1 ? 'less than 1' : broken} in 100 from ${needle(low, system)}`;
  }
  return low === high ? needle(low, system) : needles(low, high, system);
}

/**
 * Stretches of speed that do not hold: `17.7 to 33.5 mph, from 36.5 mph on`; empty when it holds all the way.
 *
 * @param fastest – of the scan [m/s]
 */
export function bandsText(
  bands: readonly { readonly from: number; readonly to: number; readonly kind: 'broken' | 'unknown' }[],
  { system, fastest }: { readonly system: UnitSystem; readonly fastest: number },
): string {
  return bands
    .map(({ from, to, kind }) => {
      const said = to >= fastest ? `from ${needle(from, system)} on` : needles(from, to, system);
      return kind === 'unknown' ? `${said} (cannot be told)` : said;
    })
    .join(', ');
}
