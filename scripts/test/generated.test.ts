import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PROBLEM_CODES } from '@lastinch/core';
import { expect, it } from 'vitest';
import { apiText } from '../api-text.ts';
import { problemsPage } from '../problems-page.ts';
import type { RoomList } from '../room-list.ts';
import { roomsDrawing, withDrawing } from '../rooms-drawing.ts';
import { staleFiles } from '../stale-files.ts';

const list: RoomList = {
  packages: { core: [], cli: ['core'] },
  borders: { file: ['cli'] },
  rooms: {
    ground: { does: 'what all stand on', sees: [] },
    wall: { does: 'stands on it', sees: ['ground'] },
    file: { does: 'reads', sees: ['ground'] },
  },
};

it('draws one mark for each allowed arrow, left of the diagonal', () => {
  const drawing = roomsDrawing(list);
  expect(drawing).toContain(
    ['           1  2  3', '  1 ground  ■', '  2 wall    ●  ■', '  3 file    ●  ·  ■'].join('\n'),
  );
  expect(drawing).toContain('| `wall` | stands on it |');
});

it('refuses to draw an arrow that points down the list', () => {
  const turned = { ...list, rooms: { ...list.rooms, ground: { does: '', sees: ['wall'] } } };
  expect(() => roomsDrawing(turned)).toThrow(/ground sees wall/);
});

it('puts the drawing between its markers and leaves the rest of the page alone', () => {
  const page =
    'before\n<!-- rooms: made from rooms.json by `npm run generate` -->\nold\n<!-- /rooms -->\nafter\n';
  const once = withDrawing(page, 'new');
  expect(once).toBe(page.replace('old', 'new'));
  expect(withDrawing(once ?? '', 'new')).toBe(once);
  expect(withDrawing('no markers', 'new')).toBeNull();
});

it('lists exported signatures without bodies, comments or private names', () => {
  const root = mkdtempSync(join(tmpdir(), 'api-text-'));
  try {
    writeFileSync(
      join(root, 'inner.ts'),
      [
        "export const KINDS = ['a', 'b'] as const;",
        'export type Kind = (typeof KINDS)[number];',
        '/** Said here. */ export interface Thing { readonly kind: Kind }',
        'const hidden = 3;',
        'export function make(kind: Kind, times?: number): readonly Thing[] { return Array(times ?? hidden).fill({ kind }); }',
      ].join('\n'),
    );
    writeFileSync(
      join(root, 'index.ts'),
      "export { make, KINDS } from './inner.ts';\nexport type { Kind, Thing } from './inner.ts';\n",
    );
    expect(apiText(root, ['index.ts'])).toBe(
      [
        '# index.ts\n',
        'const KINDS: readonly ["a", "b"];\n',
        'type Kind = "a" | "b";\n',
        'interface Thing {\n    readonly kind: Kind;\n}\n'.replaceAll("'", '"'),
        'function make(kind: Kind, times?: number): readonly Thing[];\n',
        '',
      ].join('\n'),
    );
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
});

it('calls a page stale when its text is not what the code makes now, or when it is missing', () => {
  const root = mkdtempSync(join(tmpdir(), 'stale-'));
  try {
    writeFileSync(join(root, 'kept.md'), 'as made');
    writeFileSync(join(root, 'edited.md'), 'edited by hand');
    const page = (file: string) => ({ file, make: () => 'as made' });
    const stale = staleFiles(root, ['kept.md', 'edited.md', 'gone.md'].map(page));
    expect(stale.map(({ file }) => file)).toEqual(['edited.md', 'gone.md']);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
});

it('lists every code of a problem with its sentence', () => {
  const page = problemsPage();
  for (const code of PROBLEM_CODES) expect(page).toContain(`| \`${code}\` | `);
  expect(page).not.toContain('undefined');
});
