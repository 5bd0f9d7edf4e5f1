import { formatValue, fromSi, shownUnit } from '@lastinch/core';
import {
  DENSER,
  type DesignedForNeed,
  designDoubtText,
  movedText,
  needDesignTexts,
  printedBuild,
  printedTexts,
  STIFFER,
  STOP_CAUTIONS,
  type StopDesign,
} from '@lastinch/core/stops';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

interface Designed {
  readonly material: string;
  readonly design: StopDesign;
  /** The end that it was designed for; null where a curve or densities were given. */
  readonly need: DesignedForNeed | null;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** The whole answer of `stop design` in lines for a terminal. */
export function stopDesignPage({ material, design, need }: Designed, paper: Paper): string[] {
  const { system } = paper;
  const rough = (value: number, dimension: 'force'): string => {
    const unit = shownUnit(dimension, system, value);
    return `${Number(fromSi(value, unit).toPrecision(2))} ${unit.name}`;
  };
  const heights = design.at.map((at, i) => ({
    name: formatValue(at, 'length', { system }),
    cells: [percent(design.density[i] ?? 0), bar(design.density[i] ?? 0, paper)],
  }));
  const hasTarget = design.curve.some(({ wanted }) => wanted !== null);
  const points = design.curve.slice(1).map(({ crush, wanted, force, low, high }) => ({
    name: formatValue(crush, 'length', { system }),
    cells: [
      ...(hasTarget ? [wanted === null ? '' : rough(wanted, 'force')] : []),
      force === null ? 'closed' : rough(force, 'force'),
      low === null ? '' : rough(low, 'force'),
      high === null ? 'may close' : rough(high, 'force'),
    ],
  }));
  return [
    ...wrap(`A printed stop of ${material}: ${printedBuild(design.body, system)}`, paper).map(
      paper.ink.heading,
    ),
    ...section(
      'DENSITY, FROM THE FOOT UP',
      tableLines({ heads: ['solid', ''], rows: [...heights].reverse() }, paper),
      paper,
    ),
    ...section(
      'FORCE AT A CRUSH OF',
      tableLines(
        { heads: [...(hasTarget ? ['wanted'] : []), 'design', 'at least', 'at most'], rows: points },
        paper,
      ),
      paper,
    ),
    ...section(
      'FOR THE RIG',
      need === null ? [] : needDesignTexts(need, system).flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section(
      'WHAT IT SAYS',
      printedTexts(design, system).flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section(
      'IF ONE SIXTH OF THE HEIGHT COMES OUT OTHERWISE: FORCE AT HALF AND FULL CRUSH',
      scatterLines(design, paper),
      paper,
    ),
    ...section(
      'DOUBTS',
      design.doubts.filter(isNotSaid).flatMap((one) => wrap(designDoubtText(one), paper, '  ? ')),
      paper,
    ),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}

/** Force at half and at the end of the crush, one part of the height denser or of stiffer walls. */
function scatterLines({ scatter }: StopDesign, paper: Paper): string[] {
  const length = (value: number) => formatValue(value, 'length', paper);
  const rows = scatter.map(({ from, to, denser, stiffer }) => ({
    name: `${length(from)} to ${length(to)}`,
    cells: [...denser, ...stiffer].map(movedText),
  }));
  const [more, harder] = [DENSER, STIFFER].map(percent);
  const heads = [`${more} denser`, 'full', `walls ${harder} stiffer`, 'full'];
  return tableLines({ heads, rows: rows.reverse() }, paper);
}

/** What is missed stands among what it says. */
const isNotSaid = (doubt: StopDesign['doubts'][number]): boolean => doubt !== 'missed';

/** A stroke as long as the density. */
const bar = (share: number, { unicode }: Paper): string =>
  (unicode ? '█' : '#').repeat(Math.round(share * 40));
