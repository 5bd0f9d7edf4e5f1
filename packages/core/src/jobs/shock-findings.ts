import { knownTo } from '../elements/shock-table.ts';
import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import { cornerAt, type End } from '../finding/place.ts';
import type { RideRun } from '../ride/result.ts';
import type { Setup } from '../rig/setup.ts';
import { spreadOf } from './spread.ts';

/** Faster than known by less than this is not worth a word [m/s]. */
const BARELY = 1e-3;

/**
 * A shaft that went faster on this ride than anything its damping rests on: said once for an end, by the corner and the
 * way that went furthest beyond. Where no reading is behind the damping at all, that is assumed already, and this a note.
 */
export function shockPastTable(
  setup: Setup,
  end: End,
  run: RideRun,
  runs: readonly RideRun[],
  facts: Finding['facts'],
): readonly Finding[] {
  const { base, shockSetting } = setup.ends[end];
  const known = knownTo(shockSetting);
  const [furthest] = (['left', 'right'] as const)
    .flatMap((side) =>
      (['compression', 'rebound'] as const).map((way) => {
        const corner = cornerAt(end, side);
        const speed = (one: RideRun): number => one.corners[corner].peakShockSpeed[way];
        return { corner, way, speed, beyond: speed(run) - known[way] };
      }),
    )
    .sort((a, b) => b.beyond - a.beyond);
  if (!(furthest.beyond > BARELY)) return [];
  const { corner, way, speed } = furthest;
  const shaftSpeed: Figure = {
    dimension: 'speed',
    value: speed(run),
    tolerance: spreadOf(runs, run, speed),
  };
  const limit: Figure = { dimension: 'speed', value: known[way], tolerance: 0 };
  const beyond = runs.filter((one) => speed(one) > known[way]).length;
  return [
    {
      id: `ride-shock-past-table.${corner}`,
      code: 'ride-shock-past-table',
      severity: known[way] > 0 ? 'unproven' : 'note',
      place: corner,
      value: shaftSpeed,
      limit,
      likelihood: runs.length > 0 ? beyond / runs.length : undefined,
      facts: { ...facts, shaftSpeed, knownTo: limit, way: way === 'compression' ? 'in' : 'out' },
      because: [`${base.end}.shock.settings.${shockSetting.id}`],
      remedies: [{ code: 'shock-on-bench' }],
    },
  ];
}
