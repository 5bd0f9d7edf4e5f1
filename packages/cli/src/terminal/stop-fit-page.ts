import { fromSi, shownUnit } from '@lastinch/core';
import { doubtText, fitRows, LOSS_ABSURD, STOP_CAUTIONS, type StopFit } from '@lastinch/core/stops';
import { historyText } from '@lastinch/picture';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';
import { fragmentLines } from './stop-fragment.ts';

interface Fitted {
  readonly name: string;
  readonly file: string;
  readonly fit: StopFit;
  /** Text for the rig file. */
  readonly fragment: string;
  /** File that it was written to; null for none. */
  readonly out: string | null;
}

/** The whole answer of `stop fit` in lines for a terminal. */
export function stopFitPage({ name, file, fit, fragment, out }: Fitted, paper: Paper): string[] {
  const { width, unicode } = paper;
  const shown = (value: number, dimension: 'length' | 'force') => {
    const unit = shownUnit(dimension, paper.system, value);
    return `${Number(fromSi(value, unit).toPrecision(3))} ${unit.name}`;
  };
  const plot = historyText({
    series: [{ name: 'force against crush', x: fit.crush, y: fit.force }],
    width: Math.min(width - 2, 76),
    height: 10,
    unicode,
    xText: (value) => shown(value, 'length'),
    yText: (value) => shown(value, 'force'),
  });
  return [
    ...wrap(`${name}: the press test in ${file}`, paper).map(paper.ink.heading),
    ...section(
      'THE CURVE',
      plot.split('\n').map((line) => `  ${line}`.trimEnd()),
      paper,
    ),
    ...section(
      'WHAT IT SAYS',
      tableLines(
        {
          heads: [''],
          rows: fitRows(fit, paper.system).map(({ name: row, text }) => ({ name: row, cells: [text] })),
        },
        paper,
      ),
      paper,
    ),
    ...section(
      'DOUBTS',
      [...fit.doubts.map(doubtText), ...(fit.isLossAbsurd ? [LOSS_ABSURD] : [])].flatMap((line) =>
        wrap(line, paper, '  ? '),
      ),
      paper,
    ),
    ...section('FOR THE RIG FILE', fragmentLines(fragment, out, paper), paper),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}
