import type { RoomList } from './room-list.ts';

/**
 * The one drawing of the architecture page, in plain characters: a matrix with a row and a column for each room
 * of the core. A mark says that the row may import the column. All marks lie left of the diagonal: no circles.
 */
export function roomsDrawing(list: RoomList): string {
  const names = Object.keys(list.rooms);
  const wide = Math.max(...names.map((name) => name.length));
  const number = (index: number): string => String(index + 1).padStart(2);
  const head = ` ${' '.repeat(wide + 4)}${names.map((_, index) => number(index)).join(' ')}`;
  const rows = names.map((name, row) => {
    const sees = new Set(list.rooms[name]?.sees);
    const marks = names.slice(0, row + 1).map((other, column) => {
      if (column === row) return ' ■';
      return sees.has(other) ? ' ●' : ' ·';
    });
    const above = [...sees].filter((other) => names.indexOf(other) > row);
    if (above.length > 0)
      throw new Error(`${name} sees ${above.join(', ')}, which stand below it in rooms.json`);
    return ` ${number(row)} ${name.padEnd(wide)} ${marks.join(' ')}`;
  });
  const packages = Object.entries(list.packages).map(
    ([name, sees]) =>
      ` ${name.padEnd(wide + 4)}${sees.length > 0 ? `→ ${sees.join(', ')}` : 'imports no other package'}`,
  );
  const borders = Object.entries(list.borders).map(
    ([name, by]) => ` ${name.padEnd(wide + 4)}← only ${by.join(', ')}; nothing in core`,
  );
  const lines = [
    '```text',
    'packages',
    ...packages,
    '',
    'border',
    ...borders,
    '',
    'rooms of core: ● = the row may import the column',
    head,
    ...rows,
    '```',
    '',
    '| room | what is in it |',
    '|---|---|',
    ...names.map((name) => `| \`${name}\` | ${list.rooms[name]?.does} |`),
  ];
  return lines.map((line) => line.trimEnd()).join('\n');
}

const BEGIN = '<!-- rooms: made from rooms.json by `npm run generate` -->';
const END = '<!-- /rooms -->';

/** The page with its drawing put between the two markers; null when it has no such pair. */
export function withDrawing(page: string, drawing: string): string | null {
  const from = page.indexOf(BEGIN);
  const to = page.indexOf(END);
  if (from < 0 || to < from) return null;
  return `${page.slice(0, from)}${BEGIN}\n${drawing}\n${page.slice(to)}`;
}
