import type { End } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';

/** Height above the ground at which the links hold the body sideways, at each end, as the setup stands [m]. */
export type RollCentres = Readonly<Record<End, Reading>>;

/** How far off the hubs a roll centre usually is [m]: bars end between a hand above the tube and its middle. */
const USUAL_HALF_WIDTH = 0.1;
/** Arms of independent wheels meet low: 0 to 0.2 m above the ground. */
const INDEPENDENT = 0.1;

/**
 * Roll centre of an end whose links were not measured: at hub height for a solid axle, where a Panhard rod or the
 * upper links of a triangulated axle usually are; 0.1 m above the ground for independent wheels. Both ± 0.1 m.
 *
 * @returns a reading with origin `assumed`: wherever it matters it has to be said
 * @source common practice, no source; that it lies at the height of a level rod: SAE J670 usage (from memory)
 */
export function assumedRollCentre(setup: Setup, end: End): Reading {
  const { kind, tyre } = setup.ends[end].base;
  const value = kind === 'solid' ? tyre.radius.value : INDEPENDENT;
  return rollCentreReading(end, value, USUAL_HALF_WIDTH, 'assumed');
}

/** Roll centres as assumed where `known` has none. */
export const rollCentresOf = (setup: Setup, known: Partial<RollCentres> = {}): RollCentres => ({
  front: known.front ?? assumedRollCentre(setup, 'front'),
  rear: known.rear ?? assumedRollCentre(setup, 'rear'),
});

/** A roll centre worked out elsewhere, for example from links. */
export const rollCentreReading = (
  end: End,
  height: number,
  halfWidth: number,
  origin: Reading['origin'],
): Reading => ({
  key: `${end}.rollCentre`,
  dimension: 'length',
  value: height,
  plus: halfWidth,
  minus: halfWidth,
  origin,
  toleranceOrigin: origin,
  text: '',
});
