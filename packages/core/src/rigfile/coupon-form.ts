import { bad, good, type Problem, type Result, type Where } from '../finding/problem.ts';
import { parseQuantity } from '../quantity/parse.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { readCsvRows } from './csv-rows.ts';

/** A coupon as the form names it, before anything was read. */
interface FormCoupon {
  readonly name: string;
  readonly density: number;
  readonly readings: readonly { readonly crush: number }[];
}

/** One coupon of a form that was filled in. */
export interface CouponRows {
  readonly name: string;
  readonly density: number;
  /** As measured [m]. */
  readonly height: number;
  readonly diameter: number;
  /** From touch [m], [N]; rows without a force are left out. */
  readonly crush: readonly number[];
  readonly force: readonly number[];
  readonly where: readonly Where[];
}

const COLUMNS = 6;
const EXAMPLE = 'A1, 30, 30, 30, 1.5, 120 under heads with units';
const UNITS: Readonly<Record<UnitSystem, readonly [string, string]>> = {
  metric: ['mm', 'N'],
  shop: ['in', 'lb'],
};

/** The form to fill in beside the press: a row a reading, forces empty. */
export function couponForm(
  {
    coupons,
    height,
    diameter,
  }: { readonly coupons: readonly FormCoupon[]; readonly height: number; readonly diameter: number },
  system: UnitSystem,
): string {
  const [length, force] = UNITS[system];
  const size = (value: number, digits: number): string => {
    const unit = { mm: 1e3, in: 1 / 0.0254 }[length as 'mm' | 'in'];
    return String(Number((value * unit).toFixed(digits)));
  };
  const digits = system === 'metric' ? 2 : 3;
  return [
    '# Coupons of a printed stop. Write height and diameter as measured, and the force at each crush, counted from touch.',
    '# Three strokes first; then one stroke, ten seconds at each crush. Leave a force empty that was not read.',
    `coupon [name], density [%], height [${length}], diameter [${length}], crush [${length}], force [${force}]`,
    ...coupons.flatMap(({ name, density, readings }) =>
      readings.map(
        ({ crush }) =>
          `${name}, ${Number((100 * density).toFixed(1))}, ${size(height, digits)}, ${size(diameter, digits)}, ${size(crush, digits)},`,
      ),
    ),
    '',
  ].join('\n');
}

/**
 * Reads a form of coupons that was filled in: rows of one name are one coupon, in the order they stand.
 *
 * @failure `rig-wrong-shape`, `stop-press-too-short` (no force filled in), problems of quantities, each with its line
 */
export function readCoupons(text: string, file: string): Result<readonly CouponRows[]> {
  const problems: Problem[] = [];
  const rows = readCsvRows(
    text,
    { file, key: '' },
    { columns: COLUMNS, example: EXAMPLE, mostCharacters: 2_000_000 },
    problems,
  );
  const coupons = new Map<
    string,
    { density: number; height: number; diameter: number; crush: number[]; force: number[]; where: Where[] }
  >();
  for (const { line, cells } of rows) {
    const [name = '', ...figures] = cells;
    const where = { file, line };
    if ((figures[4] ?? '') === '') continue;
    const [density, height, diameter, crush, force] = (
      ['ratio', 'length', 'length', 'length', 'force'] as const
    ).map((dimension, i) => {
      const read = parseQuantity(figures[i] ?? '', dimension, where);
      if (!read.ok) problems.push(...read.problems);
      return read.ok ? read.value.value : Number.NaN;
    }) as [number, number, number, number, number];
    const known = coupons.get(name) ?? { density, height, diameter, crush: [], force: [], where: [] };
    if (known.density !== density || known.height !== height || known.diameter !== diameter)
      problems.push({
        code: 'rig-wrong-shape',
        where,
        found: name,
        accepted: 'one density, height and diameter on all rows of a coupon',
      });
    known.crush.push(crush);
    known.force.push(force);
    known.where.push(where);
    coupons.set(name, known);
  }
  if (problems.length > 0)
    return bad(
      ...problems
        .slice(0, MOST_PROBLEMS)
        .map((one) => ({ ...one, where: { file, line: one.where.line } as Where })),
    );
  if (coupons.size === 0)
    return bad({
      code: 'stop-press-too-short',
      where: { file },
      found: '0',
      accepted: 'the forces of a coupon filled in, as the form of lastinch stop coupons asks',
    });
  return good([...coupons].map(([name, rest]) => ({ name, ...rest })));
}

/** One slip in a column is a problem on every row: a few say enough. */
const MOST_PROBLEMS = 5;
