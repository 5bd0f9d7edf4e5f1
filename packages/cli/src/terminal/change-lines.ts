import { type CheckComparison, CORNERS, type CornerChange, formatFigure, PLACE_NAMES } from '@lastinch/core';
import { tableLines } from './lines.ts';
import type { Paper } from './paper.ts';

const TERMS = [
  ['Hard travel', 'hardTravel'],
  ['Free bump', 'freeBump'],
  ['Stop crush', 'crush'],
  ['Clearance', 'clearance'],
  ['Spare', 'spare'],
  ['Height of the rig', 'lift'],
] as const;

/** What the proposal changes at each corner, with the tolerance of the change itself. */
export function changeLines({ corners }: CheckComparison, paper: Paper): string[] {
  const signed = (change: CornerChange, key: (typeof TERMS)[number][1]): string => {
    const figure = change[key];
    if (figure.value === 0 && figure.tolerance === 0) return 'as before';
    return `${figure.value > 0 ? '+' : ''}${formatFigure(figure, paper)}`;
  };
  const rows = TERMS.map(([name, key]) => ({
    name,
    cells: CORNERS.map((corner) => signed(corners[corner], key)),
  }));
  return tableLines({ heads: CORNERS.map((corner) => PLACE_NAMES[corner]), rows }, paper);
}
