import { type End, type EndLinksAnswer, formatValue, type StrutId } from '@lastinch/core';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';

/** How many poses are shown: full droop, half, ride, half, full bump. */
const SHOWN = 5;

type Row = readonly [name: string, dimension: 'length' | 'angle' | 'ratio', values: ArrayLike<number> | null];

/** What one axle does over bump and droop, a column a pose. */
export function curveLines(drawn: EndLinksAnswer, end: End, paper: Paper): string[] {
  const { curves, shaft, range } = drawn;
  const width = curves.rolls.length;
  const level = curves.rolls.indexOf(0);
  const last = curves.bumps.length - 1;
  const rows = Array.from({ length: SHOWN }, (_, k) => Math.round((k * last) / (SHOWN - 1)));
  const at = (values: ArrayLike<number>, i: number): number => values[i * width + level] ?? Number.NaN;
  const strut = (id: StrutId) => curves.struts[id];
  const front = end === 'front';
  const table: readonly Row[] = [
    front ? ['caster, change', 'angle', curves.caster] : ['pinion, nose up', 'angle', curves.pinion],
    ['axle steer', 'angle', curves.steer],
    ['wheels steer', 'angle', curves.wheelSteer],
    ['axle to the left', 'length', curves.sideways],
    ['axle forward', 'length', curves.forward],
    [front ? 'anti-dive' : 'anti-squat', 'ratio', front ? curves.antiBrake : curves.antiDrive],
    ['roll centre height', 'length', curves.rollCentreHeight],
    ['coil, left', 'length', strut('spring-left')?.length ?? null],
    ['shock, left', 'length', strut('shock-left')?.length ?? null],
    ['shock ratio, left', 'ratio', strut('shock-left')?.byBump ?? null],
  ];
  const unit = { length: paper.system === 'shop' ? 'in' : 'mm', angle: 'deg', ratio: '' };
  // The unit stands once, at the head of the row.
  const cell = (value: number, dimension: keyof typeof unit): string =>
    Number.isFinite(value)
      ? formatValue(tidy(value, dimension), dimension, paper).replace(/ (in|mm|deg)$/, '')
      : 'no pose';
  const headed = (name: string, dimension: keyof typeof unit): string =>
    unit[dimension] === '' ? name : `${name}, ${unit[dimension]}`;
  const lines = table.flatMap(([name, dimension, values]) =>
    values === null ? [] : [{ name, cells: rows.map((i) => cell(at(values, i), dimension)) }],
  );
  const shafts = (['length', 'caseAngle', 'pinionAngle'] as const).flatMap((key) =>
    shaft === null
      ? []
      : [
          {
            name: headed(
              { length: 'shaft length', caseAngle: 'case joint', pinionAngle: 'pinion joint' }[key],
              key === 'length' ? 'length' : 'angle',
            ),
            cells: rows.map((i) =>
              cell(shaft.overBump[i]?.[key] ?? Number.NaN, key === 'length' ? 'length' : 'angle'),
            ),
          },
        ],
  );
  const heads = rows.map((i) => cell(curves.bumps[i] ?? 0, 'length'));
  const ends = {
    strap: 'the fully stretched strap',
    shock: 'the open shock',
    assumed: 'an assumed end: neither strap nor shock was measured',
  };
  return [
    ...tableLines({ heads, rows: [...lines, ...shafts] }, paper),
    ...wrap(`Bump up to the fully crushed stop, droop down to ${ends[range.droopEnds]}.`, paper, '  '),
  ];
}

const DEGREE = Math.PI / 180;
/** To what a level or a tape shows; curves are drawn from readings that are no better. */
function tidy(value: number, dimension: 'length' | 'angle' | 'ratio'): number {
  const step = dimension === 'angle' ? DEGREE / 100 : dimension === 'length' ? 1e-4 : 1e-3;
  const rounded = Math.round(value / step) * step;
  return rounded === 0 ? 0 : Number(rounded.toPrecision(12));
}
