import type { Figure } from '../finding/figure.ts';
import { formatFigure } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { way } from './ways.ts';

const FIGURES = [
  'rms',
  'maximumTransient',
  'dose',
  'crestFactor',
  'dailyAcceleration',
  'dailyDose',
  'absorbedPower',
  'lowPassedPeak',
  'dynamicResponseIndex',
  'spinalDose',
  'spinalStress',
] as const;
type FigureName = (typeof FIGURES)[number];

type Time = {
  readonly value: number;
  readonly ends: { readonly low: number; readonly high: number } | null;
} | null;

/** What a seat takes, as a ride tells it. */
interface Taken {
  readonly at: 'sitter' | 'usual-place';
  readonly place: { readonly behindFrontAxle: number; readonly left: number };
  readonly day: { readonly driven: number; readonly from: 'course' | 'an-hour' } | null;
  readonly figures: Readonly<Record<FigureName, Figure | null>>;
  readonly times: Readonly<
    Record<'toAction' | 'toLimit', Readonly<Record<'byAcceleration' | 'byDose', Time>>>
  > | null;
  readonly tilting: Figure | null;
}

/** One line of a table. */
export interface ExposureRow {
  readonly id: string;
  readonly name: string;
  /** What stands beside the name; empty when nothing has to. */
  readonly note: string;
  readonly text: string;
}

export interface ExposureWords {
  readonly system: UnitSystem;
  /** At which it was driven [m/s]. */
  readonly speed: number;
}

/**
 * The figures of a seat as rows of a table, the same on terminal and page. Units are those in which the standards count.
 * A drop has no rows for a day or a driving time: nobody drives on from it.
 */
export function exposureRows(taken: Taken, words: ExposureWords): readonly ExposureRow[] {
  const { figures, tilting, times, day } = taken;
  const { system } = words;
  const figure = (of: Figure | null, unit?: string): string =>
    of === null ? 'unknown' : formatFigure(of, { system, unit });
  const row = (id: ExposureRow['id'], name: string, text: string, note = ''): ExposureRow => {
    return { id, name, note, text };
  };
  const { rms, dose } = figures;
  return [
    row('rms', 'Weighted r.m.s.', figure(rms, 'm/s²'), 'Wk'),
    row('tilting', 'Of it pitch and roll', figure(tilting, 'm/s²'), 'at mount'),
    row('maximumTransient', 'Worst second', figure(figures.maximumTransient, 'm/s²'), 'MTVV'),
    row('dose', 'Dose of the run', figure(dose), 'VDV'),
    row('crestFactor', 'Crest factor', figure(figures.crestFactor)),
    ...(day === null || times === null
      ? []
      : [
          row('dailyAcceleration', 'A(8)', figure(figures.dailyAcceleration, 'm/s²'), dayText(day, words)),
          row('dailyDose', 'Dose of a day', figure(figures.dailyDose), dayText(day, words)),
          row('toAction', 'Until action value', timeText(times.toAction.byAcceleration), 'A(8) 0.5'),
          row('toActionByDose', 'Until action value', timeText(times.toAction.byDose), 'VDV 9.1'),
          row('toLimit', 'Until limit value', timeText(times.toLimit.byAcceleration), 'A(8) 1.15'),
          row('toLimitByDose', 'Until limit value', timeText(times.toLimit.byDose), 'VDV 21'),
        ]),
    row('absorbedPower', 'Absorbed power', figure(figures.absorbedPower), 'tests: 6 W'),
    row('lowPassedPeak', 'Peak below 30 Hz', figure(figures.lowPassedPeak), 'tests: 2.5 g'),
    row('dynamicResponseIndex', 'Dynamic response index', figure(figures.dynamicResponseIndex), 'DRI'),
    row('spinalDose', 'Spinal dose', figure(figures.spinalDose, 'm/s²'), 'single source'),
    row('spinalStress', 'Spinal stress', figure(figures.spinalStress, 'MPa'), 'single source'),
  ];
}

/** `28 min (19 to 49 min)`, to two digits: the ends are far from even about the value. */
function timeText(time: Time): string {
  if (time === null) return 'unknown';
  const { value, ends } = time;
  if (!(value < DAY)) return 'more than a day';
  const [name, unit] = TIMES.find(([, each]) => value >= 2 * each) ?? ['s', 1];
  const said = (of: number): string =>
    of < DAY ? `${Number((of / unit).toPrecision(2))}` : 'more than a day';
  const after = (of: number): string => (of < DAY ? ` ${name}` : '');
  if (ends === null) return `${said(value)} ${name} ± unknown`;
  const { low, high } = ends;
  return `${said(value)} ${name} (${said(low)} to ${said(high)}${after(high)})`;
}

const DAY = 86_400;
const TIMES = [
  ['h', 3600],
  ['min', 60],
] as const;

/** `1 mi a day`, `an hour a day`. */
function dayText(day: NonNullable<Taken['day']>, { speed, system }: ExposureWords): string {
  return day.from === 'an-hour' ? 'an hour a day' : `${way(day.driven * speed, system)} a day`;
}

/** Whose seat this is, what is left out, and that nothing here is about health: to stand with every such table. */
export function exposureNotes(
  { at, place }: Pick<Taken, 'at' | 'place'>,
  system: UnitSystem,
): readonly string[] {
  const side = place.left < 0 ? 'right' : 'left';
  const where = `${hand(place.behindFrontAxle, system)} behind the front axle and ${hand(place.left, system)} ${side} of the middle`;
  return [
    at === 'sitter'
      ? `Of the driver on his seat, ${where}.`
      : `The file tells no driver, so this is a hard seat bolted to the body at a usual place, ${where}: a cushion is not in it. Fill in driver and seat to have yours.`,
    'Up and down only, with what pitching and rolling bring to that place. The model drives at constant speed and does not steer: fore and aft and sideways are left out, and count as unknown.',
    'Spinal dose and stress are those of ISO 2631-5:2004, vertical alone; of its vertical model there is but a single source.',
    'Action and limit value are those of European law for people at work, reckoned as if such ground went on all that time of driving; ride tests of vehicles stop at 6 W and at 2.5 g. They are yardsticks: nothing here says what vibration does to a body.',
  ];
}

/** Whose seat a sweep speaks of. */
export const seatText = (at: Taken['at']): string =>
  at === 'sitter'
    ? 'The seat is that of the driver, with what it gives under him.'
    : 'The file tells no driver: the seat is a hard one, bolted to the body a little behind the middle of the wheelbase.';

/** A place, to the inch or centimetre: nobody sits more exactly. */
function hand(length: number, system: UnitSystem): string {
  const [unit, name] = system === 'shop' ? [0.0254, 'in'] : [0.01, 'cm'];
  return `${Math.round(Math.abs(length) / unit)} ${name}`;
}
