import { ENDS, type Figure, formatFigure, type StanceResult } from '@lastinch/core';
import { tableLines } from './lines.ts';
import type { Paper } from './paper.ts';

type Line = readonly [name: string, of: (stance: StanceResult) => Figure | null];

const WHOLE: readonly Line[] = [
  ['Mass on the ground', (stance) => stance.totalMass],
  ['Sprung mass', (stance) => stance.sprungMass],
  ['Share on the front axle', (stance) => stance.frontShare],
  ['Cross weight (front left and rear right)', (stance) => stance.crossShare],
  ['Centre of gravity behind the front axle', (stance) => stance.cg.behindFrontAxle],
  ['Centre of gravity left of the middle', (stance) => stance.cg.left],
  ['Centre of gravity above the ground', (stance) => stance.cg.height],
];

const END: readonly (readonly [string, (end: StanceResult['ends']['front']) => Figure | null])[] = [
  ['load on the left spring', (end) => end.springLoad.left],
  ['load on the right spring', (end) => end.springLoad.right],
  ['spring compressed at ride by', (end) => end.settledDeflection],
  ['spring length at ride, by the weights', (end) => end.settledLength],
  ['spring rate at the axle, a side', (end) => end.rateAtAxle],
  ['ride frequency', (end) => end.rideFrequency],
  ['axle hop frequency', (end) => end.hopFrequency],
  ['damping ratio in bump', (end) => end.dampingRatio.compression],
  ['damping ratio in rebound', (end) => end.dampingRatio.rebound],
];

const LINES: readonly Line[] = [
  ...WHOLE,
  ...ENDS.flatMap((end) =>
    END.map(
      ([name, of]): Line => [
        `${end === 'front' ? 'Front' : 'Rear'}: ${name}`,
        (stance) => of(stance.ends[end]),
      ],
    ),
  ),
];

/** Statics of one setup, or of two side by side. */
export function stanceTable(stances: readonly StanceResult[], paper: Paper): string[] {
  const rows = LINES.map(([name, of]) => ({
    name,
    cells: stances.map((stance) => {
      const figure = of(stance);
      return figure === null ? 'not known' : formatFigure(figure, paper);
    }),
  }));
  return tableLines({ heads: stances.map((stance) => stance.setup), rows }, paper);
}
