import type { ColumnRole } from './channels.ts';

const GRAVITY = 9.80665;
const DEGREE = Math.PI / 180;

/** Spellings of the units that logs are written in, with their SI value. Compared in small letters, without spaces. */
const ACCELERATION: Readonly<Record<string, number>> = {
  'm/s²': 1,
  'm/s^2': 1,
  'm/s2': 1,
  'm/s/s': 1,
  'ms^-2': 1,
  'ms-2': 1,
  'm.s-2': 1,
  'm·s⁻²': 1,
  mps2: 1,
  ms2: 1,
  g: GRAVITY,
  gs: GRAVITY,
  gn: GRAVITY,
  mg: GRAVITY / 1000,
};
const TURN_RATE: Readonly<Record<string, number>> = {
  'rad/s': 1,
  rads: 1,
  'deg/s': DEGREE,
  '°/s': DEGREE,
  dps: DEGREE,
};
const SPEED: Readonly<Record<string, number>> = {
  'm/s': 1,
  mps: 1,
  'km/h': 1 / 3.6,
  kmh: 1 / 3.6,
  kph: 1 / 3.6,
  mph: 0.44704,
  'mi/h': 0.44704,
  kn: 1852 / 3600,
  kt: 1852 / 3600,
  kts: 1852 / 3600,
  knots: 1852 / 3600,
};
const ANGLE: Readonly<Record<string, number>> = { deg: DEGREE, '°': DEGREE, degrees: DEGREE, rad: 1 };
const LENGTH: Readonly<Record<string, number>> = {
  m: 1,
  meters: 1,
  metres: 1,
  ft: 0.3048,
  feet: 0.3048,
  km: 1000,
};
const TIME: Readonly<Record<string, number>> = {
  s: 1,
  sec: 1,
  secs: 1,
  seconds: 1,
  ms: 1e-3,
  msec: 1e-3,
  millis: 1e-3,
  milliseconds: 1e-3,
  us: 1e-6,
  µs: 1e-6,
  μs: 1e-6,
  micros: 1e-6,
  microseconds: 1e-6,
  ns: 1e-9,
  nanos: 1e-9,
  nanoseconds: 1e-9,
  min: 60,
};

/** Units of a role; positions stand in degrees in a file and stay so. */
export function unitsOf(role: ColumnRole): Readonly<Record<string, number>> {
  if (role === 'time') return TIME;
  if (role === 'ignored') return {};
  if (role.startsWith('turn-rate')) return TURN_RATE;
  if (role === 'position.speed') return SPEED;
  if (role === 'position.heading') return ANGLE;
  if (role === 'position.altitude' || role === 'position.accuracy') return LENGTH;
  if (role.startsWith('position')) return { deg: 1, '°': 1, degrees: 1 };
  return ACCELERATION;
}

/** The unit that a role is in when nothing says otherwise. */
export const usualUnit = (role: ColumnRole): string =>
  role === 'time'
    ? 's'
    : role === 'ignored'
      ? ''
      : role.startsWith('turn-rate')
        ? 'rad/s'
        : role === 'position.speed'
          ? 'm/s'
          : role === 'position.altitude' || role === 'position.accuracy'
            ? 'm'
            : role.startsWith('position')
              ? 'deg'
              : 'm/s²';

/** SI value of a unit of a role; null where it is none. */
export function scaleOf(role: ColumnRole, unit: string): number | null {
  const spelled = unit.toLowerCase().replace(/\s+/g, '');
  const units = unitsOf(role);
  return Object.hasOwn(units, spelled) ? units[spelled] : null;
}
