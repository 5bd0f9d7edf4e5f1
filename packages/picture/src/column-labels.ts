import type { UnitSystem } from '@lastinch/core';
import { formatFigure } from '@lastinch/core';
import type { ColumnShape } from './column-parts.ts';
import { nearContacts } from './column-parts.ts';
import type { Item } from './scene.ts';
import { spreadLabels } from './spread.ts';
import { fitText, LINE_HEIGHT, textWidth, wrapText } from './text-width.ts';

/** Where the labels of one column stand: beside its edge, outward to one side. Lengths in scene metres. */
export interface Gutter {
  /** The edge of the column that the leaders start from. */
  readonly edge: number;
  /** +1: to the right of the column, −1: to the left. */
  readonly way: 1 | -1;
  /** Room from the edge outward [px]. */
  readonly room: number;
  readonly bottom: number;
  readonly top: number;
  /** Scene height of ride height. */
  readonly ride: number;
  readonly metresPerPixel: number;
}

interface Label {
  readonly at: number;
  readonly name: string;
  readonly figure: string | null;
  /** Ends of the part that it names; null for a boundary. */
  readonly span: { readonly from: number; readonly to: number } | null;
  /** Left out first when room is short: higher goes earlier. */
  readonly rank: number;
}

const NAME_SIZE = 11;
/** All figures of a gutter are set in the largest of these in which each needs one line, or in the last [px]. */
const FIGURE_SIZES = [12, 11] as const;
/** From the column's edge to the words [px]. */
const LEADER = 14;
const BRACKET = 4;
/** Space above and below a label [px]. */
const AIR = 3;
/** A gutter fuller than this gives up its extra labels. */
const CROWDED = 0.75;
/** Labels from this rank on only add to what the picture shows anyway. */
const EXTRA = 4;
/** Ride height is left out before any contact: its line carries the 0 of the tape. */
const LEAST = 99;

/**
 * The labels of a column, with a bracket along each part and a leader to each word. Labels never overlap: they are
 * moved apart, and where even that does not help, the least needed are left out.
 */
export const columnLabels = (
  shape: ColumnShape,
  gutter: Gutter,
  system: UnitSystem,
  name: string,
): readonly Item[] => {
  const u = gutter.metresPerPixel;
  let labels = labelsOf(shape, system).sort((a, b) => a.at - b.at);
  const room = gutter.room - LEADER;
  const figureSize = figureSizeFor(labels, room);
  const set = (): { label: Label; lines: readonly Line[] }[] =>
    labels.map((label) => ({ label, lines: linesOf(label, room, figureSize) }));
  const height = (lines: readonly Line[]): number =>
    (lines.reduce((sum, line) => sum + line.size * LINE_HEIGHT, 0) + AIR) * u;
  const place = (blocks: ReturnType<typeof set>): readonly number[] | null =>
    spreadLabels(
      blocks.map(({ label, lines }) => ({ at: gutter.ride + label.at, height: height(lines) })),
      gutter.bottom,
      gutter.top,
    );
  const leaveOutOne = (): void => {
    const worst = Math.max(...labels.map((label) => label.rank));
    const last = labels.findLastIndex((label) => label.rank === worst);
    labels = labels.filter((_, k) => k !== last);
  };
  const crowded = (): boolean =>
    set().reduce((sum, { lines }) => sum + height(lines), 0) > CROWDED * (gutter.top - gutter.bottom);
  while (crowded() && labels.some((label) => label.rank >= EXTRA)) leaveOutOne();
  let places = place(set());
  while (places === null && labels.length > 0) {
    leaveOutOne();
    places = place(set());
  }
  const blocks = set();
  const items: Item[] = [];
  blocks.forEach(({ label, lines }, k) => {
    items.push(...bracketOf(label, gutter), ...leaderOf(label, places![k]!, gutter));
    let y = places![k]! + height(lines) / 2 - (AIR / 2) * u;
    for (const line of lines) {
      const tall = line.size * LINE_HEIGHT * u;
      let x = gutter.edge + gutter.way * LEADER * u;
      const pieces = gutter.way === 1 ? line.pieces : [...line.pieces].reverse();
      for (const piece of pieces) {
        items.push({
          kind: 'text',
          role: piece.strong ? 'figure' : 'note',
          x,
          y: y - tall / 2,
          text: piece.text,
          size: line.size,
          anchor: gutter.way === 1 ? 'start' : 'end',
          name: `${name}.label`,
        });
        x += gutter.way * (textWidth(piece.text, line.size) + GAP) * u;
      }
      y -= tall;
    }
  });
  return items;
};

/** Between the name and the figure on one line [px]. */
const GAP = 6;

interface Line {
  readonly size: number;
  readonly pieces: readonly { readonly text: string; readonly strong: boolean }[];
}

const figureSizeFor = (labels: readonly Label[], room: number): number =>
  FIGURE_SIZES.find((size) =>
    labels.every(({ figure }) => figure === null || textWidth(figure, size) <= room),
  ) ?? FIGURE_SIZES[FIGURE_SIZES.length - 1]!;

/** On one line where that fits, else the name above the figure, the figure broken before its tolerance. */
const linesOf = (label: Label, room: number, figureSize: number): readonly Line[] => {
  if (label.figure === null) return nameBlock(label.name, room);
  if (textWidth(label.name, figureSize) + GAP + textWidth(label.figure, figureSize) <= room) {
    const pieces = [
      { text: label.name, strong: false },
      { text: label.figure, strong: true },
    ];
    return [{ size: figureSize, pieces }];
  }
  return [...nameBlock(label.name, room), ...figureBlock(label.figure, room, figureSize)];
};

/** Cut only from the fourth line on: contacts are told apart by how their names end. */
const nameBlock = (name: string, room: number): readonly Line[] => {
  const wrapped = wrapText(name, room, NAME_SIZE);
  const kept = wrapped.slice(0, MOST_NAME_LINES);
  if (wrapped.length > kept.length)
    kept.splice(-1, 1, fitText(wrapped.slice(kept.length - 1).join(' '), room, NAME_SIZE));
  return kept.map((text) => ({ size: NAME_SIZE, pieces: [{ text, strong: false }] }));
};

const MOST_NAME_LINES = 3;

const figureBlock = (figure: string, room: number, size: number): readonly Line[] => {
  const at = figure.indexOf(' ±');
  const halves =
    textWidth(figure, size) <= room || at < 0 ? [figure] : [figure.slice(0, at), figure.slice(at + 1)];
  return halves
    .flatMap((half) => wrapText(half, room, size))
    .map((text) => ({ size, pieces: [{ text, strong: true }] }));
};

const labelsOf = (shape: ColumnShape, system: UnitSystem): Label[] => {
  const labels: Label[] = shape.parts.map((part) => ({
    at: (part.from + part.to) / 2,
    name: part.name,
    figure: formatFigure(part.figure, { system }),
    span: { from: part.from, to: part.to },
    rank: part.id === 'reserve' ? 3 : part.id === 'flex' ? 2 : 0,
  }));
  for (const boundary of shape.boundaries) {
    if (boundary.id === 'ride') {
      labels.push({ at: 0, name: 'ride height', figure: null, span: null, rank: LEAST });
    } else if (boundary.id === 'metal') {
      const figure = { dimension: 'length', value: boundary.at, tolerance: boundary.tolerance } as const;
      labels.push({
        at: boundary.at,
        name: boundary.name,
        figure: formatFigure(figure, { system }),
        span: null,
        rank: 0,
      });
    }
  }
  nearContacts(shape).forEach((contact, k) => {
    labels.push({
      at: contact.travel.value,
      name: contact.name,
      figure: formatFigure(contact.travel, { system }),
      span: null,
      rank: EXTRA + k,
    });
  });
  return labels;
};

const bracketOf = (label: Label, gutter: Gutter): readonly Item[] => {
  if (label.span === null) return [];
  const u = gutter.metresPerPixel;
  const at = (px: number): number => gutter.edge + gutter.way * px * u;
  const from = gutter.ride + label.span.from;
  const to = gutter.ride + label.span.to;
  const gap = Math.min(0.75 * u, (to - from) / 4);
  return [
    {
      kind: 'polyline',
      role: 'leader',
      points: [at(2), from + gap, at(BRACKET), from + gap, at(BRACKET), to - gap, at(2), to - gap],
    },
  ];
};

const leaderOf = (label: Label, place: number, gutter: Gutter): readonly Item[] => {
  const u = gutter.metresPerPixel;
  const at = (px: number): number => gutter.edge + gutter.way * px * u;
  const start = label.span === null ? 1 : BRACKET;
  const y = gutter.ride + label.at;
  return [
    {
      kind: 'polyline',
      role: 'leader',
      points: [at(start), y, at(BRACKET + 2), y, at(LEADER - 4), place, at(LEADER - 2.5), place],
    },
  ];
};
