import {
  CORNERS,
  type Corner,
  type Dimension,
  fromSi,
  type RideHistory,
  shownUnit,
  type UnitSystem,
} from '@lastinch/core';
import { LANES, type Lane } from '../../answers.ts';
import type { HistoryCurves } from './HistoryChart.tsx';

type Histories = Readonly<Record<Lane, RideHistory | null>>;

interface Quantity {
  readonly id: string;
  readonly title: string;
  readonly dimension: Dimension;
  readonly about: string;
  readonly ofCorner: 'crush' | 'clearance' | 'stopForce' | null;
}

const QUANTITIES: readonly Quantity[] = [
  {
    id: 'crush',
    title: 'Stop crush',
    dimension: 'length',
    about: 'How far the bump stop is pressed together; 0 while it is not touched.',
    ofCorner: 'crush',
  },
  {
    id: 'clearance',
    title: 'Clearance to metal',
    dimension: 'length',
    about: 'Axle travel left before metal; below 0 metal was driven into metal.',
    ofCorner: 'clearance',
  },
  {
    id: 'stop-force',
    title: 'Stop force',
    dimension: 'force',
    about: 'What stop and metal together push into the frame.',
    ofCorner: 'stopForce',
  },
  {
    id: 'body-acceleration',
    title: 'Body acceleration',
    dimension: 'acceleration',
    about: 'Of the whole body, up, above rest. The same for every corner.',
    ofCorner: null,
  },
];

/** The four histories of one corner, in the units in which they are shown. */
export function curvesOf(histories: Histories, corner: Corner, system: UnitSystem): readonly HistoryCurves[] {
  const rate = LANES.map((lane) => histories[lane]?.rate).find((found) => found !== undefined);
  if (rate === undefined) return [];
  return QUANTITIES.map(({ id, title, dimension, about, ofCorner }) => {
    const unit = shownUnit(dimension, system, 0);
    const shown = (lane: Lane): Float64Array | null => {
      const history = histories[lane];
      if (history === null) return null;
      const index = CORNERS.indexOf(corner);
      const at = (k: number): number =>
        (ofCorner === null ? history.bodyAcceleration[k] : history[ofCorner][4 * k + index]) ?? Number.NaN;
      return Float64Array.from({ length: history.count }, (_, k) => fromSi(at(k), unit));
    };
    const write = decimals(dimension, unit.name);
    return {
      id,
      title,
      about,
      unitName: unit.name,
      rate,
      write,
      values: { now: shown('now'), proposed: shown('proposed') },
    };
  });
}

/** Moving figures keep their width: fixed decimals, not shop fractions. */
const decimals = (dimension: Dimension, unit: string) => {
  const places = dimension === 'force' || unit === 'mm' ? 0 : unit === 'm/s²' ? 1 : 2;
  return (shown: number): string => `${shown.toFixed(places).replace(/^-(0\.?0*)$/, '$1')} ${unit}`;
};

/** How many rows a history is cut into for reading as a table. */
const ROWS = 40;

/** The histories as figures: in each stretch of time the value that matters, which is the extreme one. */
export function historyTable(curves: readonly HistoryCurves[]): {
  readonly columns: readonly string[];
  readonly rows: readonly { readonly head: string; readonly cells: readonly string[] }[];
} {
  const rate = curves[0]?.rate ?? 1;
  const lanes = LANES.filter((lane) => curves.some(({ values }) => values[lane] !== null));
  const count = Math.max(
    0,
    ...curves.flatMap(({ values }) => lanes.map((lane) => values[lane]?.length ?? 0)),
  );
  const stretch = Math.max(1, Math.ceil(count / ROWS));
  const rows = Array.from({ length: Math.ceil(count / stretch) }, (_, row) => {
    const [from, to] = [row * stretch, Math.min(count, (row + 1) * stretch)];
    return {
      head: `${(from / rate).toFixed(2)} to ${(to / rate).toFixed(2)} s`,
      cells: curves.flatMap((curve) =>
        lanes.map((lane) => {
          const part = curve.values[lane]?.subarray(from, to);
          if (part === undefined || part.length === 0) return '';
          return curve.write(curve.id === 'clearance' ? leastOf(part) : furthestOf(part));
        }),
      ),
    };
  });
  const columns = [
    'Between',
    ...curves.flatMap((curve) =>
      lanes.map((lane) => `${curve.title}, ${curve.id === 'clearance' ? 'least' : 'most'}, ${lane}`),
    ),
  ];
  return { columns, rows };
}

const leastOf = (part: Float64Array): number => part.reduce((least, value) => Math.min(least, value));
const furthestOf = (part: Float64Array): number =>
  part.reduce((furthest, value) => (Math.abs(value) > Math.abs(furthest) ? value : furthest));
