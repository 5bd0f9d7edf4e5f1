import type { Reading } from './reading.ts';
import type { Setup } from './setup.ts';

/**
 * Every reading that a setup rests on, once each, in the order of the rig: what a Monte Carlo trial samples and what
 * uncertainty can be blamed on. The stop and the spring that are on the rig stay in the list when a setup replaces
 * them, because where the new part ends up follows from the old one.
 *
 * @returns Readings unique by key, in a stable order; shelf parts that the setup does not use are left out.
 */
export function readingsOf(setup: Setup): readonly Reading[] {
  const { rig, ends } = setup;
  const found = new Map<string, Reading>();
  collect([rig.wheelbase, rig.cornerMass, rig.cgHeight, rig.rollInertia, rig.pitchInertia], found);
  for (const end of [ends.front, ends.rear]) collect([end.base, end.spring, end.stop, end.patch], found);
  collect([rig.limits, rig.driver, rig.cgLift], found);
  return [...found.values()];
}

function collect(value: unknown, found: Map<string, Reading>): void {
  if (typeof value !== 'object' || value === null) return;
  if (isReading(value)) {
    if (!found.has(value.key)) found.set(value.key, value);
    return;
  }
  for (const part of Object.values(value)) collect(part, found);
}

const isReading = (value: object): value is Reading => 'key' in value && 'toleranceOrigin' in value;
