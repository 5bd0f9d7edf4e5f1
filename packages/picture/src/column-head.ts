import type { TravelColumn, UnitSystem } from '@lastinch/core';
import { formatFigure } from '@lastinch/core';
import type { ColumnShape } from './column-parts.ts';
import { CORNER_NAMES, VERDICT_NAMES } from './names.ts';
import type { Role } from './role.ts';
import type { Ruler } from './ruler.ts';
import type { Item } from './scene.ts';
import { fitText, textWidth } from './text-width.ts';
import { VERDICT_ROLES, verdictMark } from './verdict-mark.ts';

/** One column in a panel, with the setup that it belongs to. */
export interface PanelColumn {
  readonly column: TravelColumn;
  readonly shape: ColumnShape;
  readonly setup: string;
}

/** Where a panel stands and what it shares with the others. Widths in pixels, heights in metres. */
export interface PanelPlace {
  readonly left: number;
  readonly width: number;
  /** Scene height of ride height. */
  readonly ride: number;
  readonly up: number;
  readonly down: number;
  /** Lines of words in the head, above `up` [px]. */
  readonly head: number;
  readonly metresPerPixel: number;
  readonly ruler: Ruler;
  readonly system: UnitSystem;
}

/** Words may stand this far above and below the drawn travel [px]. */
export const MARGIN = { top: 18, bottom: 20 } as const;
/** Space left and right of a panel [px]. */
export const PAD = 6;

/** Space for the words of a head [px]: title, setup, verdict, spare, clearance. */
export const headHeight = (pair: boolean): number => (pair ? 90 : 74);

/** The words over a panel: corner, setups, verdicts, spare and clearance. */
export const headOf = (columns: readonly PanelColumn[], place: PanelPlace): readonly Item[] => {
  const u = place.metresPerPixel;
  const pair = columns.length > 1;
  const top = place.ride + place.up + (MARGIN.top + place.head) * u;
  const title: Item = {
    kind: 'text',
    role: 'title',
    x: (place.left + (pair ? place.width / 2 : PAD)) * u,
    y: top - 9 * u,
    text: CORNER_NAMES[columns[0]!.column.corner],
    size: 15,
    bold: true,
    anchor: pair ? 'middle' : 'start',
  };
  const items: Item[] = [title];
  columns.forEach((column, k) => {
    const way = pair && k === 1 ? -1 : 1;
    const x = place.left + (way === 1 ? PAD : place.width - PAD);
    const room = pair ? place.width / 2 - PAD * 1.5 : place.width - PAD * 2;
    items.push(...headWords(column, x, way, room, top - (pair ? 26 : 27) * u, pair, place));
  });
  return items;
};

/** Figures of the head shrink before they would leave it [px]. */
const HEAD_SIZES = [12, 11, 10, 9, 8] as const;

const headWords = (
  { column, shape, setup }: PanelColumn,
  x: number,
  way: 1 | -1,
  room: number,
  top: number,
  pair: boolean,
  place: PanelPlace,
): readonly Item[] => {
  const u = place.metresPerPixel;
  const items: Item[] = [];
  const anchor = way === 1 ? 'start' : 'end';
  const say = (y: number, text: string, role: Role, size: number, indent = 0, bold = false): void => {
    items.push({ kind: 'text', role, x: (x + way * indent) * u, y, text, size, anchor, bold });
  };
  let y = top;
  if (pair) {
    say(y, fitText(setup, room, 11), 'note', 11);
    y -= 17 * u;
  }
  items.push(...verdictMark(column.verdict, (x + way * 7) * u, y, 6 * u));
  say(y, VERDICT_NAMES[column.verdict], VERDICT_ROLES[column.verdict], 13, 19, true);
  const lines = [
    `spare ${formatFigure(column.spare, place)}`,
    `clearance ${formatFigure(column.clearance, place)}`,
  ];
  const size =
    HEAD_SIZES.find((px) => lines.every((line) => textWidth(line, px) <= room)) ??
    HEAD_SIZES[HEAD_SIZES.length - 1]!;
  const where = shape.tightest === null ? '' : ` at ${shape.tightest.name}`;
  if (textWidth(lines[0] + where, size) <= room) lines[0] += where;
  for (const line of lines) {
    y -= 16 * u;
    say(y, line, 'figure', size);
  }
  return items;
};
