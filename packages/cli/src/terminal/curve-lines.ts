import { type End, type EndLinksAnswer, formatValue } from '@lastinch/core';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';

/** How many poses are shown: full droop, half, ride, half, full bump. */
const SHOWN = 5;

type Kind = 'length' | 'angle' | 'ratio';
type Row = readonly [name: string, kind: Kind, at: (bumpIndex: number) => number];

/** What one axle does over bump and droop, a column a pose. The unit stands once, at the head of each row. */
export function curveLines(drawn: EndLinksAnswer, end: End, paper: Paper): string[] {
  const { bumps } = drawn.curves;
  const shown = Array.from({ length: SHOWN }, (_, k) => Math.round((k * (bumps.length - 1)) / (SHOWN - 1)));
  const unit = { length: paper.system === 'shop' ? 'in' : 'mm', angle: 'deg', ratio: '' };
  const bare = (value: number, kind: Kind): string =>
    Number.isFinite(value)
      ? formatValue(tidy(value, kind), kind, paper).replace(/ (in|mm|deg)$/, '')
      : 'no pose';
  const rows = rowsOf(drawn, end).map(([name, kind, at]) => ({
    name: unit[kind] === '' ? name : `${name}, ${unit[kind]}`,
    cells: shown.map((i) => bare(at(i), kind)),
  }));
  const heads = shown.map((i) => bare(bumps[i] ?? Number.NaN, 'length'));
  const note = `Columns: bump in ${unit.length}, minus is droop; from ${DROOP_ENDS[drawn.range.droopEnds]} to the fully crushed stop.`;
  return [...tableLines({ heads, rows }, paper), ...wrap(note, paper, '  ')];
}

const DROOP_ENDS = {
  strap: 'the fully stretched strap',
  shock: 'the open shock',
  assumed: 'an assumed droop, as neither strap nor shock was measured,',
};

function rowsOf({ curves, shaft }: EndLinksAnswer, end: End): readonly Row[] {
  const front = end === 'front';
  const width = curves.rolls.length;
  const level = curves.rolls.indexOf(0);
  const row = (name: string, kind: Kind, values: ArrayLike<number> | null | undefined): readonly Row[] =>
    values ? [[name, kind, (i) => values[i * width + level] ?? Number.NaN]] : [];
  const ofShaft = (name: string, kind: Kind, key: 'length' | 'caseAngle' | 'pinionAngle'): readonly Row[] =>
    shaft ? [[name, kind, (i) => shaft.overBump[i]?.[key] ?? Number.NaN]] : [];
  const { 'spring-left': spring, 'shock-left': shock } = curves.struts;
  return [
    ...row('pinion, nose up', 'angle', curves.pinion),
    ...(front ? row('caster, change', 'angle', curves.caster) : []),
    ...row('axle steer', 'angle', curves.steer),
    ...row('wheels steer', 'angle', curves.wheelSteer),
    ...row('axle to the left', 'length', curves.sideways),
    ...row('axle forward', 'length', curves.forward),
    ...row(front ? 'anti-dive' : 'anti-squat', 'ratio', front ? curves.antiBrake : curves.antiDrive),
    ...row('roll centre up', 'length', curves.rollCentreHeight),
    ...row('left coil seats', 'length', spring?.length),
    ...row('left shock eyes', 'length', shock?.length),
    ...row('left shock ratio', 'ratio', shock?.byBump),
    ...ofShaft('shaft length', 'length', 'length'),
    ...ofShaft('case joint', 'angle', 'caseAngle'),
    ...ofShaft('pinion joint', 'angle', 'pinionAngle'),
  ];
}

/** To what a level or a tape shows; curves are drawn from readings that are no better. */
const STEP: Readonly<Record<Kind, number>> = { length: 1e-4, angle: Math.PI / 180 / 100, ratio: 1e-3 };

function tidy(value: number, kind: Kind): number {
  const rounded = Math.round(value / STEP[kind]) * STEP[kind];
  return rounded === 0 ? 0 : Number(rounded.toPrecision(12));
}
