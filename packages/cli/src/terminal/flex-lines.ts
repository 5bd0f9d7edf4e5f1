import {
  CORNERS,
  type Corner,
  type Figure,
  formatFigure,
  formatValue,
  type LinksAnswer,
  PLACE_NAMES,
} from '@lastinch/core';
import { type Articulation, flexEndText, rampEndText } from '@lastinch/core/links';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';

/** How each axle flexes, one wheel up and the other down: of the setup asked for, and before it of the other one. */
export function flexLines({ articulation, against }: LinksAnswer, paper: Paper): string[] {
  const { before, after } = articulation;
  const own = oneSetup(after, paper);
  if (against === null || before.setup === after.setup) return own;
  const other = oneSetup(before, paper);
  if (other.join('\n') === own.join('\n')) return [...wrap('Before and after alike:', paper, '  '), ...own];
  return [
    ...wrap(`Before, ${before.setup}:`, paper, '  '),
    ...other,
    '',
    ...wrap(`After, ${after.setup}:`, paper, '  '),
    ...own,
  ];
}

function oneSetup(told: Articulation, paper: Paper): string[] {
  const said = (figure: Figure): string => formatFigure(figure, { system: paper.system });
  return [
    ...tableLines(
      {
        heads: ['axle turns', 'up', 'down'],
        rows: CORNERS.map((corner) => {
          const { angle, bump, droop, limits } = told.flex[corner];
          const ended = limits[0]?.id !== 'none';
          return {
            name: `${PLACE_NAMES[corner]} up`,
            cells: [angle, bump, droop].map((figure) => (ended ? said(figure) : 'not known')),
          };
        }),
      },
      paper,
    ),
    ...endLines(told, paper),
    ...rampLines(told, paper),
  ];
}

/** What ends it, and what the low tyre still carries; corners with the same words share a line. */
function endLines({ flex }: Articulation, paper: Paper): string[] {
  const ended = CORNERS.filter((corner) => flex[corner].limits[0]?.id !== 'none');
  const groups = new Map<string, Corner[]>();
  for (const corner of CORNERS) {
    const text = flexEndText(flex[corner]);
    groups.set(text, [...(groups.get(text) ?? []), corner]);
  }
  const load = (corner: Corner): string => formatFigure(flex[corner].lowTyreLoad, { system: paper.system });
  return [
    ...[...groups].flatMap(([text, corners]) =>
      wrap(`${corners.map((corner) => PLACE_NAMES[corner]).join(', ')}: ${text}.`, paper, '  '),
    ),
    ...(ended.length === 0
      ? []
      : wrap(
          `Left on the low tyre: ${ended.map((corner) => `${PLACE_NAMES[corner].toLowerCase()} up ${load(corner)}`).join(', ')}.`,
          paper,
          '  ',
        )),
  ];
}

function rampLines({ ramps }: Articulation, paper: Paper): string[] {
  const { frontLeft, frontRight } = ramps;
  if (!frontLeft.ends || !frontRight.ends)
    return wrap('Ramp index: not known, for nothing known ends the flex of one of the axles.', paper, '  ');
  const least = frontLeft.index.value <= frontRight.index.value ? frontLeft : frontRight;
  const said = (figure: Figure): string => formatFigure(figure, { system: paper.system });
  return wrap(
    `Ramp index ${said(least.index)} (${formatValue(RAMP, 'angle', paper)} ramp, ${PLACE_NAMES[least.corner].toLowerCase()} wheel ${said(least.height)} up): ${rampEndText(least.lifts)}.`,
    paper,
    '  ',
  );
}

const RAMP = (20 * Math.PI) / 180;
