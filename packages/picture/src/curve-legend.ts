import type { Verdict } from '@lastinch/core';
import type { Role } from './role.ts';
import type { Item } from './scene.ts';
import { fitText, textWidth } from './text-width.ts';
import { VERDICT_ROLES, verdictMark } from './verdict-mark.ts';

const LABEL = 11.5;
const MARK = 5;
const DEFAULTS: readonly Role[] = ['first', 'second', 'third'];

/** What a legend says of a line. */
interface Named {
  readonly name: string;
  readonly role?: Role;
  readonly letter?: string;
  readonly verdict?: Verdict;
}

/** Tone and dash of a series: its own, or the first, second and third in turn. */
export const toneOf = (series: Named, k: number): Role => series.role ?? DEFAULTS[k % DEFAULTS.length]!;

/** A sample of each line with its letter, its verdict and its name, in as many rows as needed, at the top. */
export const legendItems = (
  series: readonly Named[],
  width: number,
  height: number,
): { readonly items: readonly Item[]; readonly height: number } => {
  const row = LABEL * 1.5;
  const items: Item[] = [];
  let x = 8;
  let rows = 1;
  series.forEach((one, k) => {
    const { name, letter, verdict } = one;
    const before = 30 + (verdict === undefined ? 0 : 2 * MARK + 7);
    const text = fitText(letter === undefined ? name : `${letter}  ${name}`, width - before - 22, LABEL);
    const long = before + textWidth(text, LABEL) + 18;
    if (x > 8 && x + long > width) {
      x = 8;
      rows += 1;
    }
    const y = height - row * (rows - 0.4);
    items.push({ kind: 'line', role: toneOf(one, k), x1: x, y1: y, x2: x + 24, y2: y });
    if (verdict !== undefined) items.push(...verdictMark(verdict, x + 30 + MARK, y, MARK));
    items.push({
      kind: 'text',
      role: verdict === undefined ? 'figure' : VERDICT_ROLES[verdict],
      x: x + before,
      y,
      text,
      size: LABEL,
      anchor: 'start',
    });
    x += long;
  });
  return { items, height: series.length === 0 ? 0 : rows * row };
};
