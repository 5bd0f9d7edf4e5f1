import { type CriterionSweep, criterionName, needle, type SweepAnswer } from '@lastinch/core';
import { cellWidth, printable } from '@lastinch/picture';
import { wrap } from './lines.ts';
import type { Paper } from './paper.ts';

/** How a criterion stands in one cell of a strip, the worst last. */
type Cell = 'held' | 'some' | 'unknown' | 'broken';
const ORDER: readonly Cell[] = ['held', 'some', 'unknown', 'broken'];

const SIGNS: Readonly<Record<'unicode' | 'ascii', Readonly<Record<Cell, string>>>> = {
  unicode: { held: '·', some: '░', unknown: '?', broken: '█' },
  ascii: { held: '.', some: '+', unknown: '?', broken: '#' },
};

/**
 * One strip a criterion and setup, from the slowest to the fastest speed. A cell that stands for several speeds shows
 * the worst of them, so that nothing broken is lost.
 */
export function stripLines(answer: SweepAnswer, paper: Paper): string[] {
  const { speeds, setups } = answer;
  const signs = SIGNS[paper.unicode ? 'unicode' : 'ascii'];
  const cells = Math.min(speeds.length, paper.width - 4);
  const lines: string[] = [];
  for (const [k, { id }] of (setups[0]?.criteria ?? []).entries()) {
    const swept = setups.flatMap(({ setup, criteria }) => {
      const one = criteria[k];
      return one === undefined || one.limit === null ? [] : [{ setup, one }];
    });
    if (swept.length === 0) continue;
    lines.push(...wrap(`${criterionName(id)}:`, paper, '  '));
    for (const { setup, one } of swept) {
      const strip = cellsOf(one, cells)
        .map((cell) => paper.ink.severity(SEVERITY[cell], signs[cell]))
        .join('');
      // The name goes beside the strip where there is room, else above it.
      if (cells + cellWidth(setup) + 6 <= paper.width)
        lines.push(`    ${strip}  ${printable(setup, paper.unicode)}`);
      else lines.push(...wrap(setup, paper, '  '), `    ${strip}`);
    }
  }
  const ends = [speeds[0] ?? 0, speeds[speeds.length - 1] ?? 0].map((speed) => needle(speed, paper.system));
  const gap = Math.max(1, cells - (ends[0] ?? '').length - (ends[1] ?? '').length);
  lines.push(`    ${ends[0]}${' '.repeat(gap)}${ends[1]}`);
  lines.push(
    ...wrap(
      `${signs.held} held   ${signs.some} broken in some trials   ${signs.broken} broken   ${signs.unknown} cannot be told`,
      paper,
      '    ',
    ),
  );
  return lines;
}

const SEVERITY = { held: 'fine', some: 'unproven', unknown: 'unproven', broken: 'over' } as const;

function cellsOf(one: CriterionSweep, count: number): readonly Cell[] {
  const cells = Array.from({ length: count }, (): Cell => 'held');
  one.states.forEach((state, i) => {
    const at = Math.floor((i * count) / one.states.length);
    const share = one.brokenShare?.[i] ?? 0;
    const here: Cell =
      state === 'broken' ? 'broken' : state === 'unknown' ? 'unknown' : share > 0 ? 'some' : 'held';
    const before = cells[at] ?? 'held';
    if (ORDER.indexOf(here) > ORDER.indexOf(before)) cells[at] = here;
  });
  return cells;
}
