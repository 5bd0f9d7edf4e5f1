import type { Dimension } from '../finding/figure.ts';

/**
 * A unit as people type it. SI value = amount × times ÷ over: two whole numbers wherever the definition is decimal,
 * so that a shop fraction is rounded once (`4 1/8 in` is the double nearest to 0.104775).
 */
export interface Unit {
  /** The spelling we write. */
  readonly name: string;
  readonly times: number;
  readonly over: number;
  /** Other spellings that we read. Case is ignored (see unit-name.ts). */
  readonly also: readonly string[];
}

const unit = (name: string, times: number, over: number, ...also: readonly string[]): Unit => ({
  name,
  times,
  over,
  also,
});

// The definitions that everything below follows from, all exact. @source NIST SP 811 (2008), App. B.8.
const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.453_592_37;
const GRAVITY = 9.806_65;
/** POUND × GRAVITY, written out because the product of the two doubles would be rounded. */
const POUND_FORCE = 4.448_221_615_260_5;

/**
 * Every unit that is understood, by the kind of quantity it measures.
 *
 * A pound is a mass where a mass belongs, and its weight under standard gravity where a force belongs (force,
 * rate, damping, pressure, energy); a kilogram likewise in force and rate.
 *
 * @source NIST SP 811 (2008), App. B.8. Factors that the table prints rounded (psi, lbf/in, slug …) are composed
 * here from exact definitions, and so are exact to the rounding of a double.
 */
export const UNITS: Readonly<Record<Dimension, readonly Unit[]>> = {
  length: [
    unit('in', 254, 10_000, 'inch', 'inches', '"'),
    unit('ft', 3048, 10_000, 'foot', 'feet', "'"),
    unit('mm', 1, 1000, 'millimetre', 'millimetres', 'millimeter', 'millimeters'),
    unit('cm', 1, 100, 'centimetre', 'centimetres', 'centimeter', 'centimeters'),
    unit('m', 1, 1, 'metre', 'metres', 'meter', 'meters'),
    unit('yd', 9144, 10_000, 'yard', 'yards'),
    unit('km', 1000, 1),
    unit('mi', 1_609_344, 1000, 'mile', 'miles'),
  ],
  mass: [
    unit('lb', 45_359_237, 1e8, 'lbs', 'lbm', 'pound', 'pounds'),
    unit('kg', 1, 1, 'kgs', 'kilogram', 'kilograms', 'kilo', 'kilos'),
    unit('oz', 45_359_237, 16e8, 'ounce', 'ounces'),
    unit('g', 1, 1000, 'gram', 'grams'),
    unit('t', 1000, 1, 'tonne', 'tonnes'),
    unit('slug', POUND_FORCE, FOOT, 'slugs'),
  ],
  force: [
    unit('lb', POUND_FORCE, 1, 'lbf', 'lbs', 'pound', 'pounds'),
    unit('N', 1, 1, 'newton', 'newtons'),
    unit('kN', 1000, 1),
    unit('kgf', GRAVITY, 1, 'kg', 'kp'),
  ],
  rate: [
    unit('lb/in', POUND_FORCE, INCH, 'lbf/in', 'lbs/in', 'lb/inch', 'lbs/inch', 'ppi'),
    unit('N/mm', 1000, 1, 'kN/m'),
    unit('N/m', 1, 1),
    unit('lb/ft', POUND_FORCE, FOOT, 'lbf/ft', 'lbs/ft'),
    unit('kgf/mm', 1000 * GRAVITY, 1, 'kg/mm'),
    unit('kgf/cm', 100 * GRAVITY, 1, 'kg/cm'),
  ],
  damping: [
    unit('lb·s/in', POUND_FORCE, INCH, 'lbf·s/in', 'lbs·s/in', 'lb/(in/s)', 'lbf/(in/s)'),
    unit('N·s/m', 1, 1, 'Ns/m', 'N/(m/s)', 'kg/s'),
    unit('N·s/mm', 1000, 1, 'Ns/mm', 'kN·s/m', 'kNs/m', 'N/(mm/s)'),
    unit('lb·s/ft', POUND_FORCE, FOOT, 'lbf·s/ft', 'lb/(ft/s)', 'lbf/(ft/s)'),
  ],
  pressure: [
    unit('psi', POUND_FORCE, INCH ** 2, 'lb/in²', 'lbf/in²'),
    unit('kPa', 1000, 1),
    unit('bar', 100_000, 1, 'bars'),
    unit('MPa', 1_000_000, 1, 'N/mm²'),
    unit('Pa', 1, 1, 'N/m²'),
  ],
  speed: [
    unit('mph', 44_704, 100_000, 'mi/h', 'mile/h', 'miles/h'),
    unit('km/h', 10, 36, 'kph', 'kmh', 'kmph'),
    unit('m/s', 1, 1, 'mps'),
    unit('ft/s', 3048, 10_000, 'fps'),
    unit('in/s', 254, 10_000, 'ips'),
    unit('mm/s', 1, 1000),
  ],
  acceleration: [
    unit('g', GRAVITY, 1, 'gs', 'gn'),
    unit('m/s²', 1, 1, 'm/s/s'),
    unit('ft/s²', 3048, 10_000, 'ft/s/s'),
  ],
  angle: [
    unit('deg', Math.PI, 180, '°', 'degs', 'degree', 'degrees'),
    unit('rad', 1, 1, 'radian', 'radians'),
  ],
  time: [
    unit('s', 1, 1, 'sec', 'secs', 'second', 'seconds'),
    unit('ms', 1, 1000),
    unit('min', 60, 1, 'mins', 'minute', 'minutes'),
    unit('h', 3600, 1, 'hr', 'hrs', 'hour', 'hours'),
  ],
  frequency: [
    unit('Hz', 1, 1, 'hertz', '1/s', 'cycles/s', 'cycle/s', 'cps'),
    unit('cycles/min', 1, 60, 'cycle/min', 'cpm', '1/min'),
    unit('rpm', 1, 60, 'r/min', 'rev/min'),
  ],
  inertia: [
    unit('lb·ft²', POUND * FOOT ** 2, 1, 'lbm·ft²', 'lbs·ft²'),
    unit('kg·m²', 1, 1, 'kgm²'),
    unit('slug·ft²', POUND_FORCE * FOOT, 1, 'lbf·ft·s²', 'lb·ft·s²'),
    unit('lb·in²', POUND * INCH ** 2, 1, 'lbm·in²', 'lbs·in²'),
  ],
  energy: [
    unit('ft·lb', POUND_FORCE * FOOT, 1, 'ft·lbf', 'ft·lbs', 'lb·ft', 'lbf·ft', 'lbs·ft'),
    unit('J', 1, 1, 'joule', 'joules', 'N·m', 'Nm'),
    unit('kJ', 1000, 1, 'kN·m', 'kNm'),
    unit('in·lb', POUND_FORCE * INCH, 1, 'in·lbf', 'in·lbs', 'lb·in', 'lbf·in', 'lbs·in'),
  ],
  stiffnessOverSpeed: [
    unit('s/m', 1, 1, '1/(m/s)'),
    unit('s/ft', 10_000, 3048, '1/(ft/s)'),
    unit('s/in', 10_000, 254, '1/(in/s)'),
    unit('s/mm', 1000, 1, '1/(mm/s)'),
  ],
  wavenumber: [
    unit('cycles/m', 1, 1, 'cycle/m', '1/m', 'c/m'),
    unit('cycles/ft', 10_000, 3048, 'cycle/ft', '1/ft', 'c/ft'),
  ],
  power: [unit('W', 1, 1, 'watt', 'watts'), unit('kW', 1000, 1)],
  // The seven quarters are the fourth root of time: no other unit system is in use for it.
  vibrationDose: [unit('m/s^1.75', 1, 1)],
  roughness: [unit('cm³', 1, 1e6), unit('m³', 1, 1), unit('in²·ft', INCH ** 2 * FOOT, 1)],
  rollRate: [
    unit('lb·ft/deg', POUND_FORCE * FOOT * (180 / Math.PI), 1, 'lbf·ft/deg', 'ft·lb/deg', 'ft·lbf/deg'),
    unit('N·m/rad', 1, 1, 'Nm/rad'),
    unit('N·m/deg', 180, Math.PI, 'Nm/deg'),
    unit('lb·in/deg', POUND_FORCE * INCH * (180 / Math.PI), 1, 'lbf·in/deg', 'in·lb/deg', 'in·lbf/deg'),
    unit('kN·m/rad', 1000, 1, 'kNm/rad'),
  ],
  ratio: [unit('', 1, 1), unit('%', 1, 100, 'percent', 'pct')],
};

/** One well-formed text of each kind, shown when a text was not understood. */
export const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: '4 1/8 in ± 1/16 or 104.8 mm ± 1.5',
  mass: '1105 lb ± 5 or 501 kg ± 2',
  force: '1200 lb ± 50 or 5300 N ± 200',
  rate: '180 lb/in ± 5 % or 31.5 N/mm ± 1.5',
  damping: '17 lb·s/in ± 10 % or 3000 N·s/m ± 300',
  pressure: '12 psi ± 1/2 or 83 kPa ± 3',
  speed: '30 mph or 48 km/h',
  acceleration: '2.5 g or 24.5 m/s²',
  angle: '12.5 deg ± 0.5',
  time: '0.25 s',
  frequency: '1.3 Hz',
  inertia: '12000 lb·ft² ± 10 % or 505 kg·m² ± 10 %',
  energy: '900 ft·lb or 1220 J',
  stiffnessOverSpeed: '0.09 s/ft or 0.3 s/m',
  wavenumber: '0.03 cycles/ft or 0.1 cycles/m',
  power: '6 W',
  vibrationDose: '9.1 m/s^1.75',
  roughness: '256 cm³',
  rollRate: '300 N·m/deg ± 10 % or 220 lb·ft/deg',
  ratio: '0.94 ± 0.02 or 8 % ± 1 %',
};

/** Amount in a unit → SI. */
export const toSi = (amount: number, { times, over }: Unit): number => (amount * times) / over;

/** SI → amount in a unit. */
export const fromSi = (value: number, { times, over }: Unit): number => (value * over) / times;
