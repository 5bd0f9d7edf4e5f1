import { formatValue } from '@lastinch/core';
import { type CouponPlan, couponTexts, roughText, STOP_CAUTIONS } from '@lastinch/core/stops';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

interface Planned {
  readonly material: string;
  readonly plan: CouponPlan;
  /** Files that were written; null for none. */
  readonly form: string | null;
  readonly solids: string | null;
}

/** The plan of `stop coupons` in lines for a terminal. */
export function stopCouponsPage({ material, plan, form, solids }: Planned, paper: Paper): string[] {
  const { system } = paper;
  const ways = plan.densities.map((density) => plan.coupons.filter((one) => one.density === density));
  const rows = ways.flatMap((copies) => {
    const [first] = copies;
    if (first === undefined) return [];
    const last = first.readings[first.readings.length - 1];
    const force = (value: number | null) =>
      value === null ? 'may close' : roughText(value, 'force', system);
    return [
      {
        name: copies.map(({ name }) => name).join(', '),
        cells: [
          `${Math.round(100 * first.density)} %`,
          String(first.readings.length),
          last === undefined ? '' : formatValue(last.crush, 'length', paper),
          last === undefined ? '' : force(last.least),
          last === undefined ? '' : force(last.most),
        ],
      },
    ];
  });
  const written = [
    ...(solids === null ? ['Solids to print: -o coupons.3mf.'] : [`Written: ${solids}, to be sliced.`]),
    ...(form === null
      ? ['Form for the readings: --form readings.csv.']
      : [
          `Written: ${form}. Fill in the forces, then: lastinch stop correct --coupons ${form} -o material.yaml.`,
        ]),
  ];
  return [
    ...wrap(`Coupons that tell a print of ${material}`, paper).map(paper.ink.heading),
    ...section(
      'PRESS',
      tableLines({ heads: ['solid', 'readings', 'deepest', 'at least', 'at most'], rows }, paper),
      paper,
    ),
    ...section(
      'HOW',
      couponTexts(plan, system).flatMap((line) => wrap(line, paper, '  → ')),
      paper,
    ),
    ...section(
      'FILES',
      written.flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}
