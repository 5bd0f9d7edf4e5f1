import type { ColumnShape } from './column-parts.ts';
import type { Role } from './role.ts';
import type { Item } from './scene.ts';
import { textWidth } from './text-width.ts';

const WORDS: readonly { readonly role: Role; readonly text: string }[] = [
  { role: 'metal', text: 'hard contact' },
  { role: 'flex', text: 'flex allowance' },
  { role: 'reserve', text: 'reserve' },
  { role: 'clearance', text: 'to spare' },
  { role: 'overlap', text: 'stop reaches where nothing may' },
  { role: 'crush', text: 'stop crush' },
  { role: 'free', text: 'free bump' },
  { role: 'droop', text: 'free droop' },
  { role: 'tolerance', text: 'a boundary lies in here, 95 %' },
];
const SIZE = 11;
const SWATCH = 16;
const LINE = 19;

/** What the textures mean: only those that are used, in as many lines as the width needs. */
export const columnLegend = (
  shapes: readonly ColumnShape[],
  width: number,
  top: number,
  metresPerPixel: number,
): { readonly items: readonly Item[]; readonly bottom: number } => {
  const u = metresPerPixel;
  const used = new Set<Role>(['metal', 'tolerance']);
  for (const shape of shapes) {
    for (const part of shape.parts) used.add(part.id);
    if (shape.overlap !== null) used.add('overlap');
  }
  const items: Item[] = [];
  let x = 6;
  let y = top - (LINE / 2) * u;
  for (const { role, text } of WORDS) {
    if (!used.has(role)) continue;
    const long = SWATCH + 5 + textWidth(text, SIZE) + 14;
    if (x > 6 && x + long > width) {
      x = 6;
      y -= LINE * u;
    }
    items.push(
      role === 'tolerance'
        ? { kind: 'band', role, x: x * u, width: SWATCH * u, y, plus: 4 * u, minus: 4 * u }
        : { kind: 'rect', role, x: x * u, y: y - 5.5 * u, width: SWATCH * u, height: 11 * u },
      { kind: 'text', role: 'note', x: (x + SWATCH + 5) * u, y, text, size: SIZE, anchor: 'start' },
    );
    x += long;
  }
  return { items, bottom: y - (LINE / 2) * u };
};
