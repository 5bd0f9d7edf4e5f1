import type { ColumnRole, StreamKind } from './channels.ts';
import { scaleOf } from './units.ts';

/** What the name of a column says. */
export interface NamedColumn {
  readonly role: ColumnRole;
  /** Empty where the name says none. */
  readonly unit: string;
}

const TIME = ['time', 'timestamp', 't', 'elapsed', 'epoch', 'datetime', 'seconds', 'millis', 'clock', 'date'];
const LINEAR = ['lin', 'linear', 'linacc', 'linearacc', 'user', 'linearacceleration', 'useracceleration'];
const GRAVITY = ['gravity', 'grav'];
/** By itself the letter of a gyroscope: `gx`, beside `ax`. */
const GYRO = 'g';
const TURN = ['gyro', 'gyr', 'gyroscope', 'rot', 'rotation', 'angular', 'omega', 'rotationrate', 'w'];
const OTHER = [
  'mag',
  'magnetometer',
  'magnetic',
  'orientation',
  'euler',
  'quat',
  'quaternion',
  'roll',
  'pitch',
  'yaw',
  'pressure',
];
const ACCELERATION = ['acc', 'accel', 'accelerometer', 'acceleration', 'a', 'gforce', 'force', 'g', 'gf'];

/** Names of one word that say a channel and its axis: `ax`, `gFx`, `gyrox`. */
const JOINED =
  /^(a|acc|accel|accelerometer|acceleration|g|gf|gforce|gyro|gyr|gyroscope|w|lin|linacc|linearacc|linearacceleration|gravity|grav)[_-]?([xyz])$/;

/**
 * What a column says by its name: `ax (m/s^2)`, `Linear Acceleration x [g]`, `accelerometerAccelerationZ`,
 * `Latitude (°)`, `seconds_elapsed`. A unit stands in brackets, or as the last word.
 *
 * @returns `ignored` with an empty unit where the name says nothing that is known
 */
export function namedColumn(name: string): NamedColumn {
  const [, outside = name, inside = ''] = /^(.*?)[([{](.*)[)\]}]\s*$/.exec(name.trim()) ?? [];
  const words = wordsOf(outside);
  const role = ofTheUnit(roleOf(words, outside), inside.trim());
  if (role === 'ignored') return { role, unit: '' };
  const bracket = inside.trim();
  if (bracket !== '' && scaleOf(role, bracket) !== null) return { role, unit: bracket };
  // `accel_x_mps2`, `time ms`, `speed_kmh`; a joined word such as `gx` has had its letters counted already.
  const spelled = words.findLast((word, k) => k > 0 && word.length > 1 && scaleOf(role, word) !== null);
  const lone =
    role === 'time' ? words.find((word) => word.length > 1 && scaleOf(role, word) !== null) : undefined;
  return { role, unit: spelled ?? lone ?? '' };
}

const wordsOf = (text: string): string[] =>
  text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-zµμ0-9]+/)
    .filter((word) => word !== '');

function roleOf(words: readonly string[], whole: string): ColumnRole {
  const has = (names: readonly string[]): boolean => words.some((word) => names.includes(word));
  if (has(['lat', 'latitude'])) return 'position.latitude';
  if (has(['lon', 'lng', 'long', 'longitude'])) return 'position.longitude';
  if (has(['accuracy', 'hacc', 'precision']))
    return has(['vertical', 'speed', 'bearing', 'time']) ? 'ignored' : 'position.accuracy';
  if (has(['alt', 'altitude', 'ele', 'elevation', 'height'])) return 'position.altitude';
  if (has(['speed', 'velocity', 'vel'])) return 'position.speed';
  if (has(['bearing', 'heading', 'course', 'azimuth'])) return has(OTHER) ? 'ignored' : 'position.heading';
  const joined = [...words, whole.toLowerCase().replace(/[^a-z]/g, '')]
    .map((word) => JOINED.exec(word))
    .find((match) => match !== null);
  const axis = joined?.[2] ?? words.find((word) => /^[xyz]$/.test(word));
  if (axis !== undefined) {
    const stream = joined?.[1] === GYRO ? 'turn-rate' : streamOf(joined ? [...words, joined[1]] : words);
    return stream === null ? 'ignored' : (`${stream}.${axis}` as ColumnRole);
  }
  return has(TIME) ? 'time' : 'ignored';
}

/** `gz (g)` is no rate of turn, and `az (deg/s)` no acceleration. */
function ofTheUnit(role: ColumnRole, unit: string): ColumnRole {
  const [stream, axis] = role.split('.');
  const other = stream === 'turn-rate' ? 'acceleration' : stream === 'acceleration' ? 'turn-rate' : null;
  if (other === null || unit === '' || scaleOf(role, unit) !== null) return role;
  const instead = `${other}.${axis}` as ColumnRole;
  return scaleOf(instead, unit) === null ? role : instead;
}

function streamOf(words: readonly string[]): StreamKind | null {
  const has = (names: readonly string[]): boolean => words.some((word) => names.includes(word));
  if (has(OTHER)) return null;
  if (has(LINEAR)) return 'linear-acceleration';
  if (has(GRAVITY)) return 'gravity';
  if (has(TURN)) return 'turn-rate';
  // A lone `x` of a log of one sensor is an acceleration until somebody says otherwise.
  return has(ACCELERATION) ||
    words.every((word) => word.length === 1 || scaleOf('acceleration.x', word) !== null)
    ? 'acceleration'
    : null;
}
