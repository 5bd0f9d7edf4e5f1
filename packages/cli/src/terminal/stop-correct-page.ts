import {
  type Corrected,
  correctDoubtText,
  STOP_CAUTIONS,
  togetherText,
  toldText,
} from '@lastinch/core/stops';
import { printable } from '@lastinch/picture';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

interface Shown {
  readonly corrected: Corrected;
  /** Of the material file. */
  readonly text: string;
  /** File that it was written to; null for none. */
  readonly out: string | null;
}

/** The answer of `stop correct` in lines for a terminal. */
export function stopCorrectPage({ corrected, text, out }: Shown, paper: Paper): string[] {
  const { material, numbers, together, misfit, readings, doubts } = corrected;
  const rows = numbers.map((one) => {
    const { name, before, now } = toldText(one, paper.system);
    return { name, cells: [before, now] };
  });
  return [
    ...wrap(`${material.name}: what ${readings} readings say about the print`, paper).map(paper.ink.heading),
    ...section('THE MATERIAL', tableLines({ heads: ['taken before', 'now'], rows }, paper), paper),
    ...section(
      'HOW FAR TO TRUST THIS',
      [
        `Readings lie ${Math.round(1000 * misfit) / 10} % off the law (root mean square). Half-widths are 95 %, with a scatter of 5 % in the density of each print.`,
        ...together.map(togetherText),
      ].flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section(
      'DOUBTS',
      doubts.flatMap((one) => wrap(correctDoubtText(one), paper, '  ? ')),
      paper,
    ),
    ...section(
      'THE FILE',
      out === null
        ? text
            .trimEnd()
            .split('\n')
            .map((line) => `  ${printable(line, paper.unicode)}`)
        : wrap(
            `Written: ${out}. The next design takes it: lastinch stop design --material ${out}.`,
            paper,
            '  ',
          ),
      paper,
    ),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}
