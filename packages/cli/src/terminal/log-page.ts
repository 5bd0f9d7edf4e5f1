import { formatValue } from '@lastinch/core';
import {
  inG,
  type LogAnswer,
  type LogColumn,
  type LogHit,
  lengthOfTime,
  logDoubtText,
  logUseLines,
  type StreamKind,
  type TimingReport,
  wayText,
} from '@lastinch/core/trail';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { section } from './sections.ts';

/** Hits that are listed; `--json` has them all. */
const LISTED = 10;

/** All logs, one after the other, in lines for a terminal. */
export const logPage = (answers: readonly LogAnswer[], paper: Paper): string[] =>
  answers.flatMap((answer, k) => [...(k > 0 ? ['', ''] : []), ...onePage(answer, paper)]);

function onePage(answer: LogAnswer, paper: Paper): string[] {
  const { file, began, inspection, doubts, use } = answer;
  const from =
    began === null ? '' : `, from ${new Date(1000 * began).toISOString().slice(0, 19).replace('T', ' ')} UTC`;
  const hits = [...(inspection.acceleration?.hits ?? [])].sort((a, b) => b.size - a.size);
  return [
    ...wrap(`${file}: the log of a drive${from}`, paper).map(paper.ink.heading),
    ...section('COLUMNS, AS THEY ARE TAKEN', columnLines(answer, paper), paper),
    ...section('WHAT IT HOLDS', tableLines({ heads: [''], rows: holds(answer, paper) }, paper), paper),
    ...section(
      'WHAT IS WRONG WITH IT',
      doubts.flatMap((doubt) => wrap(logDoubtText(doubt, paper.system), paper, '  ? ')),
      paper,
    ),
    ...section(
      'WHAT MAY BE SAID FROM IT',
      logUseLines(use).flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section(
      hits.length > LISTED ? `THE HARDEST ${LISTED} OF ${hits.length} HITS` : 'HITS',
      hitLines(hits.slice(0, LISTED), answer, paper),
      paper,
    ),
  ];
}

const BY: Readonly<Record<LogColumn['roleBy'], string>> = {
  asked: 'as asked',
  name: 'by its name',
  values: 'by its values',
  custom: 'taken',
};

function columnLines({ format }: LogAnswer, paper: Paper): string[] {
  if (format.kind === 'gpx') return wrap('points of the tracks of a GPX file', paper, '  ');
  const separator = { '\t': 'tabs', ' ': 'blanks', ',': 'commas', ';': 'semicolons', '|': 'bars' }[
    format.separator
  ];
  const taken = format.columns.filter(({ role }) => role !== 'ignored');
  const left = format.columns.length - taken.length;
  const rows = taken.map(({ number, name, role, unit, roleBy, unitBy }) => ({
    name: `${number} ${name}`.trim(),
    cells: [role, unit, unitBy === roleBy ? BY[roleBy] : `${BY[roleBy]}, unit ${BY[unitBy]}`],
  }));
  return [
    ...tableLines({ heads: ['taken as', 'in', ''], rows }, paper),
    ...wrap(
      `Apart by ${separator}, decimals with a ${format.decimal === '.' ? 'point' : 'comma'}${left > 0 ? `; ${left} more not looked at` : ''}.`,
      paper,
      '  ',
    ),
  ];
}

const STREAMS: Readonly<Record<StreamKind, string>> = {
  acceleration: 'Accelerations',
  'linear-acceleration': 'Filtered accelerations',
  gravity: 'Gravity',
  'turn-rate': 'Rates of turn',
  position: 'Places',
};

function holds({ inspection }: LogAnswer, { system }: Paper): { name: string; cells: string[] }[] {
  const { acceleration, position, timing } = inspection;
  const rows = (Object.entries(timing) as [StreamKind, TimingReport][]).map(
    ([kind, { rows: count, duration, rate }]) => ({
      name: STREAMS[kind],
      cells: [
        `${count} rows in ${lengthOfTime(duration)}${Number.isFinite(rate) ? `, ${Number(rate.toPrecision(3))} a second` : ''}`,
      ],
    }),
  );
  const add = (name: string, text: string) => rows.push({ name, cells: [text] });
  if (acceleration?.rest)
    add('At rest', `${inG(acceleration.rest.size)} for ${lengthOfTime(acceleration.rest.seconds)}`);
  if (acceleration && acceleration.verticalRms !== null)
    add(
      'Vertical r.m.s.',
      `${inG(acceleration.verticalRms)} over ${lengthOfTime(acceleration.cleanSeconds)} that are whole`,
    );
  if (acceleration) {
    const flights = acceleration.hits.filter(({ flight }) => flight > 0).length;
    add('Hits of 2 g or more', `${acceleration.hits.length}, of which landings after a flight: ${flights}`);
  }
  if (position && position.distance > 0) add('Way', wayText(position.distance, system));
  if (position && position.topSpeed !== null)
    add('Top speed', formatValue(Number(position.topSpeed.toPrecision(3)), 'speed', { system }));
  return rows;
}

function hitLines(hits: readonly LogHit[], { inspection }: LogAnswer, paper: Paper): string[] {
  if (hits.length === 0) return [];
  const clipped = inspection.acceleration?.clipped ?? [];
  const isClipped = (time: number) => clipped.some((top) => Math.abs(top.time - time) < 0.15);
  const rows = hits.map(({ time, line, size, flight }) => ({
    name: `${time.toFixed(2)} s`,
    cells: [
      String(line),
      isClipped(time) ? `${inG(size)} or more` : inG(size),
      flight > 0 ? `landing after ${Math.round(1000 * flight)} ms` : '',
    ],
  }));
  return tableLines({ heads: ['line', 'size, 1 g at rest', ''], rows }, paper);
}
