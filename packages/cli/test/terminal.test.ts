import { cellWidth } from '@lastinch/picture';
import { describe, expect, it } from 'vitest';
import { inkFor } from '../src/terminal/ink.ts';
import { tableLines, wrap } from '../src/terminal/lines.ts';
import { type Paper, paperFor } from '../src/terminal/paper.ts';

const paper = (columns: number, env: Record<string, string> = { LANG: 'C.UTF-8' }): Paper =>
  paperFor({ columns }, env, 'shop');

describe('colour', () => {
  it('is for terminals, unless somebody wants none', () => {
    const said = (isTerminal: boolean, env: Record<string, string>): string =>
      inkFor(isTerminal, env).severity('over', 'OVER');
    expect(said(true, {})).toBe('\u001b[1;31mOVER\u001b[0m');
    expect(said(true, { NO_COLOR: '' })).toBe('\u001b[1;31mOVER\u001b[0m');
    expect(said(true, { NO_COLOR: '1' })).toBe('OVER');
    expect(said(true, { TERM: 'dumb' })).toBe('OVER');
    expect(said(false, {})).toBe('OVER');
  });
});

describe('paper', () => {
  it('is as wide as the terminal within reason, and 80 where nobody says', () => {
    expect(paper(72).width).toBe(72);
    expect(paper(12).width).toBe(40);
    expect(paper(400).width).toBe(110);
    expect(paperFor({}, {}, 'shop').width).toBe(80);
    expect(paperFor({}, { COLUMNS: '64' }, 'shop').width).toBe(64);
    expect(paperFor({}, { COLUMNS: 'wide' }, 'shop').width).toBe(80);
  });

  it.each([
    [{}, true],
    [{ LANG: 'en_US.UTF-8' }, true],
    [{ LANG: 'de_DE.utf8' }, true],
    [{ LANG: 'C' }, false],
    [{ LANG: 'en_US.UTF-8', LC_ALL: 'POSIX' }, false],
    [{ LANG: 'de_DE.ISO-8859-1' }, false],
    [{ LANG: 'de_DE.ISO-8859-15@euro' }, false],
  ])('knows from the locale %j whether it takes Unicode', (env, takes) => {
    expect(paper(80, env).unicode).toBe(takes);
  });
});

describe('sentences', () => {
  it('break at spaces and hang under their mark', () => {
    expect(wrap('one two three four five six seven eight', paper(40), '  NOTE  ')).toEqual([
      '  NOTE  one two three four five six',
      '        seven eight',
    ]);
  });

  it('count a wide character as two cells', () => {
    for (const line of wrap('測定値 '.repeat(20), paper(40), '  '))
      expect(cellWidth(line)).toBeLessThanOrEqual(40);
  });
});

describe('tables', () => {
  const table = {
    heads: ['hit after', 'spare'],
    rows: [{ name: 'differential to sump', cells: ['4 in ± 7/64', '1/4 in ± 3/16'] }],
  };

  it('take one line a row where they fit', () => {
    expect(tableLines(table, paper(60))).toEqual([
      '                        hit after    spare',
      '  differential to sump  4 in ± 7/64  1/4 in ± 3/16',
    ]);
  });

  it('fold where they do not, and lose nothing', () => {
    const lines = tableLines(table, paper(40));
    for (const line of lines) expect(cellWidth(line)).toBeLessThanOrEqual(40);
    const text = lines.join(' ').replace(/\s+/g, ' ');
    for (const part of ['hit after', 'spare', '4 in ± 7/64', '1/4 in ± 3/16']) expect(text).toContain(part);
  });
});
