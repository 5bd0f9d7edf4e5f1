import { formatValue, fromSi, shownUnit } from '@lastinch/core';
import { designDoubtText, STOP_CAUTIONS, type StopDesign } from '@lastinch/core/stops';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

interface Designed {
  readonly material: string;
  readonly design: StopDesign;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** The whole answer of `stop design` in lines for a terminal. */
export function stopDesignPage({ material, design }: Designed, paper: Paper): string[] {
  const { system } = paper;
  const rough = (value: number, dimension: 'force' | 'energy'): string => {
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
  const says = [
    `Walls allow densities from ${percent(design.range.least)} to ${percent(design.range.most)}.`,
    ...missLines(design, hasTarget, paper),
    `At the end its most strained slice is crushed by ${percent(design.strain)}, and closes at ${percent(design.closesAt)}.`,
    `Holds ${rough(design.energy, 'energy')} there; ${design.slenderness.toFixed(2)} times as high as wide.`,
  ];
  return [
    ...wrap(`A printed stop of ${material}, sheet lattice, open sides, no skin`, paper).map(
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
      'WHAT IT SAYS',
      says.flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section(
      'DOUBTS',
      design.doubts.flatMap((one) => wrap(designDoubtText(one), paper, '  ? ')),
      paper,
    ),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}

function missLines({ tooSoft, tooHard }: StopDesign, hasTarget: boolean, { system }: Paper): string[] {
  if (!hasTarget) return [];
  const said = [
    { miss: tooSoft, how: 'softer' },
    { miss: tooHard, how: 'harder' },
  ].flatMap(({ miss, how }) =>
    miss === null || miss.share < 0.005
      ? []
      : [
          `Up to ${percent(miss.share)} ${how} than wanted, most at a crush of ${formatValue(miss.crush, 'length', { system })}.`,
        ],
  );
  return said.length === 0 ? ['The wanted curve is met.'] : said;
}

/** A stroke as long as the density. */
const bar = (share: number, { unicode }: Paper): string =>
  (unicode ? '█' : '#').repeat(Math.round(share * 40));
