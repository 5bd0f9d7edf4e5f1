import { stopVentOf } from '../elements/stop-vent.ts';
import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import { cornerAt, type End } from '../finding/place.ts';
import type { RideRun } from '../ride/result.ts';
import { nominal } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import { spreadOf } from './spread.ts';

/**
 * A vented stop that may have closed faster than the law of its vent holds: said once for an end, by its faster corner.
 * A run keeps no speed of its stops. What stands for it is the fastest the shock went in, times the ratio of the stop to
 * that of the shock, where the stop was touched at all: a bound, since the shock may have been that fast elsewhere, and
 * as good as stop and shock stand equally far out.
 */
export function ventPastLaw(
  setup: Setup,
  end: End,
  run: RideRun,
  runs: readonly RideRun[],
  facts: Finding['facts'],
): readonly Finding[] {
  const { base, stop } = setup.ends[end];
  if (!stop.vent) return [];
  const { holdsTo } = stopVentOf(stop.vent, nominal);
  const perShaft = base.stopMount.ratio.value / base.shock.ratio.value;
  const [{ corner, speed }] = (['left', 'right'] as const)
    .map((side) => {
      const corner = cornerAt(end, side);
      const speed = ({ corners }: RideRun): number => {
        const { contacts, peakShockSpeed } = corners[corner];
        return contacts.stop > 0 ? perShaft * peakShockSpeed.compression : 0;
      };
      return { corner, speed };
    })
    .sort((a, b) => b.speed(run) - a.speed(run));
  const beyond = runs.filter((one) => speed(one) > holdsTo).length;
  if (!(speed(run) > holdsTo)) return [];
  const closingSpeed: Figure = {
    dimension: 'speed',
    value: speed(run),
    tolerance: spreadOf(runs, run, speed),
  };
  const limit: Figure = { dimension: 'speed', value: holdsTo, tolerance: 0 };
  return [
    {
      id: `ride-vent-past-law.${corner}`,
      code: 'ride-vent-past-law',
      severity: 'unproven',
      place: corner,
      value: closingSpeed,
      limit,
      likelihood: runs.length > 0 ? beyond / runs.length : undefined,
      facts: { ...facts, closingSpeed, ventHoldsTo: limit },
      because: [stop.vent.hole.key, stop.vent.cavity.key],
      remedies: [],
    },
  ];
}
