import type { Dimension } from '../finding/figure.ts';
import type { Unit } from './dimension.ts';
import type { UnitSystem } from './quantity.ts';
import { unitNamed } from './unit-name.ts';

/** The unit in which a dimension is shown, in each system. */
const SHOWN: Readonly<Record<UnitSystem, Readonly<Record<Dimension, string>>>> = {
  shop: {
    length: 'in',
    mass: 'lb',
    force: 'lb',
    rate: 'lb/in',
    damping: 'lb·s/in',
    pressure: 'psi',
    speed: 'mph',
    acceleration: 'g',
    angle: 'deg',
    time: 's',
    frequency: 'Hz',
    inertia: 'lb·ft²',
    energy: 'ft·lb',
    stiffnessOverSpeed: 's/ft',
    wavenumber: 'cycles/ft',
    roughness: 'cm³',
    power: 'W',
    vibrationDose: 'm/s^1.75',
    rollRate: 'lb·ft/deg',
    ratio: '',
  },
  metric: {
    length: 'mm',
    mass: 'kg',
    force: 'N',
    rate: 'N/mm',
    damping: 'N·s/m',
    pressure: 'kPa',
    speed: 'km/h',
    acceleration: 'm/s²',
    angle: 'deg',
    time: 's',
    frequency: 'Hz',
    inertia: 'kg·m²',
    energy: 'J',
    stiffnessOverSpeed: 's/m',
    wavenumber: 'cycles/m',
    roughness: 'cm³',
    power: 'W',
    vibrationDose: 'm/s^1.75',
    rollRate: 'N·m/deg',
    ratio: '',
  },
};

/** From this length on [m] metric text changes from mm to m: courses, not rigs. */
const LONG = 10;

/**
 * @param value – SI; only its size matters
 * @param unit – a name in `UNITS[dimension]` that the caller wants instead of the usual one
 */
export function shownUnit(dimension: Dimension, system: UnitSystem, value: number, unit?: string): Unit {
  const long = system === 'metric' && dimension === 'length' && Math.abs(value) >= LONG;
  const name = unit ?? (long ? 'm' : SHOWN[system][dimension]);
  const shown = unitNamed(name, dimension);
  if (!shown) throw new Error(`no unit '${name}' for ${dimension}`);
  return shown;
}
