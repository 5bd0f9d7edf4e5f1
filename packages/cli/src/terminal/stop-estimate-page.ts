import { type Dimension, formatValue } from '@lastinch/core';
import {
  estimateDoubtText,
  estimateLines,
  roughText,
  STOP_CAUTIONS,
  type StopEstimate,
} from '@lastinch/core/stops';
import { bandText } from '@lastinch/picture';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';
import { fragmentLines } from './stop-fragment.ts';

interface Estimated {
  readonly name: string;
  readonly estimate: StopEstimate;
  readonly fragment: string;
  readonly out: string | null;
}

/** The whole answer of `stop estimate` in lines for a terminal. */
export function stopEstimatePage({ name, estimate, fragment, out }: Estimated, paper: Paper): string[] {
  const { width, unicode, system } = paper;
  const { crush, least, middle, most } = estimate;
  const top = most[most.length - 1] ?? 1;
  const rough = (value: number, dimension: Dimension) => roughText(value, dimension, system);
  const drawn = bandText({
    band: { x: crush, low: least, high: most },
    lines: [{ mark: 'm', x: crush, y: middle }],
    top,
    width: Math.min(width - 2, 76),
    unicode,
    xText: (value) => rough(value, 'length'),
    yText: (value) => rough(value, 'force'),
  });
  const places = crush.flatMap((c, i) => (i > 0 && i % 3 === 0 ? [{ c, i }] : []));
  const rows = places.map(({ c, i }) => ({
    name: formatValue(c, 'length', { system }),
    cells: [least, middle, most].map((all) => rough(all[i] ?? 0, 'force')),
  }));
  return [
    ...wrap(`${name}: an estimate, nothing was pressed`, paper).map(paper.ink.heading),
    ...section(
      'THE BAND',
      [...drawn.map((line) => `  ${line}`), ...wrap('Shaded from least to most; m the middle.', paper, '  ')],
      paper,
    ),
    ...section('FORCE AT A CRUSH OF', tableLines({ heads: ['least', 'middle', 'most'], rows }, paper), paper),
    ...section(
      'WHAT IT SAYS',
      estimateLines(estimate, system).flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section(
      'DOUBTS',
      estimate.doubts.flatMap((one) => wrap(estimateDoubtText(one), paper, '  ? ')),
      paper,
    ),
    ...section('FOR THE RIG FILE', fragmentLines(fragment, out, paper), paper),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}
