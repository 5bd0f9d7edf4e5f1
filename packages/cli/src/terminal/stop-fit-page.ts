import { formatFigure, formatValue, fromSi, shownUnit } from '@lastinch/core';
import { doubtText, STOP_CAUTIONS, type StopFit } from '@lastinch/core/stops';
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
  const [deep, top] = [fit.crush, fit.force].map((all) => all[all.length - 1] ?? 0) as [number, number];
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
      tableLines({ heads: [''], rows: rowsOf(fit, deep, top, paper) }, paper),
      paper,
    ),
    ...section(
      'DOUBTS',
      [
        ...fit.doubts.map(doubtText),
        ...(fit.isLossAbsurd
          ? ['It gave back less than any stop does: the way back was not read well, and is left out.']
          : []),
      ].flatMap((line) => wrap(line, paper, '  ? ')),
      paper,
    ),
    ...section('FOR THE RIG FILE', fragmentLines(fragment, out, paper), paper),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}

function rowsOf(fit: StopFit, deep: number, top: number, paper: Paper) {
  const { hysteresis, dynamicFactor } = fit;
  const row = (name: string, cell: string) => ({ name, cells: [cell] });
  return [
    row('Touched at press travel', formatFigure(fit.touch, paper)),
    row('Gauge before touch', formatFigure(fit.offset, paper)),
    row(
      'Deepest reading',
      `${formatValue(deep, 'length', paper)}, ${formatFigure({ dimension: 'force', value: top, tolerance: fit.tolerance }, paper)}`,
    ),
    row('Usable crush', formatFigure(fit.usableCrush, paper)),
    row('Work to there', formatValue(fit.energy, 'energy', paper)),
    row('Lost of what was put in', hysteresis === null ? 'unknown' : `${Math.round(100 * hysteresis)} %`),
    row(
      'Harder when hit at 1 m/s',
      dynamicFactor === null
        ? 'unknown; name --material for the usual number'
        : `~ ${dynamicFactor.value} ± ${dynamicFactor.tolerance} times, assumed from the material`,
    ),
  ];
}
