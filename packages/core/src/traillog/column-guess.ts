import { cellsOf, isNothing, numberOf } from './cells.ts';
import type { ColumnRole, GuessedBy, LogColumn } from './channels.ts';
import { namedColumn } from './column-name.ts';
import type { TableShape } from './table-shape.ts';
import { readTime } from './time-text.ts';
import { scaleOf, usualUnit } from './units.ts';

/** A column taken for something else, by whoever knows better. */
export interface ColumnFix {
  /** 1-based number, or the name in the header. */
  readonly column: string;
  readonly role: ColumnRole;
  /** Empty for the unit that is read or guessed. */
  readonly unit: string;
}

const GRAVITY = 9.80665;

/**
 * What each column of a table is taken for: by what was asked, else by its name, else, for its unit, by its values.
 *
 * @param rows – lines of data from the start of the file
 */
export function guessColumns(
  shape: TableShape,
  rows: readonly string[],
  fixes: readonly ColumnFix[],
): readonly LogColumn[] {
  const cells = rows.map((row) => cellsOf(row, shape.separator));
  const named = shape.names.map((name, k) => {
    const said = namedColumn(name);
    const fix = fixes.find(({ column }) => column === String(k + 1) || (name !== '' && column === name));
    const below = scaleOf(said.role, shape.units[k]) !== null ? shape.units[k] : '';
    return fix
      ? {
          role: fix.role,
          unit: fix.unit || (said.role === fix.role ? said.unit || below : ''),
          by: 'asked' as const,
        }
      : { role: said.role, unit: said.unit || below, by: 'name' as const };
  });
  const bare = shape.names.every((name) => name === '') && fixes.length === 0;
  const roles = bare ? withoutHeader(shape, cells) : withTime(onceEach(named, shape, cells), shape, cells);
  return roles.map(({ role, unit, by }, k): LogColumn => {
    const told = unit !== '' && scaleOf(role, unit) !== null;
    const guessed = told ? { unit, by: by as GuessedBy } : unitByValues(role, k, shape, cells, roles);
    return {
      number: k + 1,
      name: shape.names[k],
      role,
      unit: role === 'ignored' ? '' : guessed.unit.toLowerCase(),
      scale: scaleOf(role, guessed.unit) ?? 1,
      roleBy: by,
      unitBy: guessed.by,
    };
  });
}

interface Taken {
  readonly role: ColumnRole;
  readonly unit: string;
  readonly by: GuessedBy;
}

/** A role is filled once: by what was asked, else by the first that has it; of several times by the finest that goes on. */
function onceEach(
  named: readonly Taken[],
  shape: TableShape,
  cells: readonly (readonly string[])[],
): Taken[] {
  const times = named.flatMap(({ role }, k) => (role === 'time' ? [k] : []));
  const asked = times.find((k) => named[k].by === 'asked');
  const time =
    asked ??
    times.reduce<number | undefined>(
      (best, k) => (best === undefined || changes(k) > changes(best) ? k : best),
      undefined,
    );
  const filled = new Set<ColumnRole>(named.filter(({ by }) => by === 'asked').map(({ role }) => role));
  return named.map((one, k) => {
    if (one.role === 'ignored' || one.by === 'asked') return one;
    if (one.role === 'time' ? k !== time : filled.has(one.role))
      return { role: 'ignored', unit: '', by: 'name' };
    filled.add(one.role);
    return one;
  });

  /** How many different times a column has. */
  function changes(k: number): number {
    const seen = new Set<string>();
    for (const row of cells) if (timeIn(row[k] ?? '', shape) !== null) seen.add(row[k]);
    return seen.size;
  }
}

/** A name in a language that nobody here reads: what only rises is the time. */
function withTime(roles: Taken[], shape: TableShape, cells: readonly (readonly string[])[]): Taken[] {
  if (roles.some(({ role }) => role === 'time')) return roles;
  const rising = risingColumn(shape, cells);
  return roles.map((one, k) => {
    if (k !== rising || one.role !== 'ignored' || one.by === 'asked') return one;
    return {
      role: 'time',
      unit: scaleOf('time', shape.units[k]) === null ? '' : shape.units[k],
      by: 'values',
    };
  });
}

const timeIn = (cell: string, { decimal }: TableShape): number | null =>
  numberOf(cell, decimal) ?? readTime(cell)?.seconds ?? null;

/** The first column of numbers that only rises. */
const risingColumn = (shape: TableShape, cells: readonly (readonly string[])[]): number | undefined =>
  Array.from({ length: shape.width }, (_, k) => k).find((k) => {
    const times = cells.flatMap((row) => timeIn(row[k] ?? '', shape) ?? []);
    return (
      times.length > 1 &&
      times.every((t, i) => i === 0 || t >= times[i - 1]) &&
      times[0] < times[times.length - 1]
    );
  });
/** Numbers without names: the first column that only rises is the time, the three after it an acceleration. */
function withoutHeader(shape: TableShape, cells: readonly (readonly string[])[]): Taken[] {
  const rising = risingColumn(shape, cells);
  return Array.from({ length: shape.width }, (_, k): Taken => {
    const axis = rising === undefined ? -1 : k - rising - 1;
    const role: ColumnRole =
      k === rising
        ? 'time'
        : axis >= 0 && axis < 3
          ? (`acceleration.${'xyz'[axis]}` as ColumnRole)
          : 'ignored';
    return { role, unit: '', by: 'values' };
  });
}

function unitByValues(
  role: ColumnRole,
  column: number,
  shape: TableShape,
  cells: readonly (readonly string[])[],
  roles: readonly Taken[],
): { unit: string; by: GuessedBy } {
  const valuesOf = (k: number): number[] =>
    cells.flatMap((row) => (isNothing(row[k] ?? '') ? [] : (numberOf(row[k], shape.decimal) ?? [])));
  if (role === 'time') return timeUnit(valuesOf(column), roles);
  if (role.startsWith('acceleration.') || role.startsWith('gravity.')) {
    const axes = roles.flatMap((one, k) =>
      one.role.split('.')[0] === role.split('.')[0] ? [valuesOf(k)] : [],
    );
    const sizes = (axes[0] ?? []).map((_, i) => Math.hypot(...axes.map((axis) => axis[i] ?? 0)));
    const middle = median(sizes);
    for (const [unit, gravity] of [
      ['m/s²', GRAVITY],
      ['g', 1],
      ['mg', 1000],
    ] as const)
      if (middle > 0.6 * gravity && middle < 1.6 * gravity) return { unit, by: 'values' };
  }
  if (role.startsWith('turn-rate') && valuesOf(column).some((value) => Math.abs(value) > 35))
    return { unit: 'deg/s', by: 'values' };
  return { unit: usualUnit(role), by: 'custom' };
}

/**
 * Seconds since 1970 have ten digits, milliseconds thirteen, and so on. A time that begins anywhere is told by its step:
 * a log of accelerations has 5 to 2 000 rows a second, one of positions alone 0.2 to 25.
 */
function timeUnit(times: readonly number[], roles: readonly Taken[]): { unit: string; by: GuessedBy } {
  const [first = 0] = times;
  for (const [unit, second] of [
    ['s', 1],
    ['ms', 1e3],
    ['us', 1e6],
    ['ns', 1e9],
  ] as const)
    if (first > 0.9e9 * second && first < 4e9 * second) return { unit, by: 'values' };
  const steps = times
    .slice(1)
    .map((t, i) => t - times[i])
    .filter((step) => step > 0);
  const step = median(steps);
  const isFast = roles.some(({ role }) =>
    /^(acceleration|linear-acceleration|turn-rate|gravity)\./.test(role),
  );
  const [least, longest] = isFast ? [1 / 2000, 1 / 5] : [1 / 25, 30];
  for (const [unit, second] of [
    ['s', 1],
    ['ms', 1e3],
    ['us', 1e6],
    ['ns', 1e9],
  ] as const)
    if (step >= least * second && step <= longest * second) return { unit, by: 'values' };
  return { unit: 's', by: 'custom' };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}
