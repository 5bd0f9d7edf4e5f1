import { CORNERS, formatFigure, type TravelResult, type UnitSystem } from '@lastinch/core';
import { columnShape } from './column-parts.ts';
import { CORNER_NAMES, DROOP_NAMES, VERDICT_NAMES } from './names.ts';

/** The travel columns in words, for someone who cannot see them: what `svgOf` takes as description. */
export const columnDescription = (
  travel: TravelResult,
  options: { readonly system: UnitSystem; readonly against?: TravelResult },
): string =>
  [options.against, travel]
    .filter((result) => result !== undefined)
    .map(
      (result) =>
        `Setup ${result.setup}. ${CORNERS.map((corner) => cornerWords(result, corner, options.system)).join(' ')}`,
    )
    .join(' ');

const cornerWords = (result: TravelResult, corner: (typeof CORNERS)[number], system: UnitSystem): string => {
  const column = result.corners[corner];
  const figure = (of: Parameters<typeof formatFigure>[0]): string => formatFigure(of, { system });
  const parts = columnShape(column).parts.filter((part) => part.id !== 'droop');
  const limit = column.droop[0];
  const words = [
    `verdict ${VERDICT_NAMES[column.verdict]}`,
    `spare ${figure(column.spare)}`,
    `clearance ${figure(column.clearance)}`,
    `from ride height up: ${parts.map((part) => `${part.name} ${figure(part.figure)}`).join(', ')}`,
    `then ${column.contacts[0]?.name ?? 'metal'} at ${figure(column.hardTravel)}`,
    limit === undefined
      ? 'droop not measured'
      : `droop ${figure(limit.travel)} until ${DROOP_NAMES[limit.id]}`,
  ];
  return `${CORNER_NAMES[corner]}: ${words.join('; ')}.`;
};
