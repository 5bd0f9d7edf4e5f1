import { fromSi } from '../quantity/dimension.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { shownUnit } from '../quantity/shown.ts';

/** A speed of a sweep, to a tenth of a mile or kilometre an hour: the needle of a speedometer shows no more. */
export function needle(speed: number, system: UnitSystem): string {
  const unit = shownUnit('speed', system, speed);
  return `${Number(fromSi(speed, unit).toFixed(1))} ${unit.name}`;
}

/** Both ends of a stretch, the unit once: `16.9 to 18.6 mph`. */
export function needles(low: number, high: number, system: UnitSystem): string {
  const unit = shownUnit('speed', system, high);
  return `${Number(fromSi(low, unit).toFixed(1))} to ${needle(high, system)}`;
}

/** To two digits, however small: a step, an uncertainty. */
export function roughSpeed(speed: number, system: UnitSystem): string {
  const unit = shownUnit('speed', system, speed);
  return `${Number(fromSi(speed, unit).toPrecision(2))} ${unit.name}`;
}
