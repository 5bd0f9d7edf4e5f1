import { CORNERS } from '@lastinch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellWidth, printable, wrapCells } from '../src/cells.ts';
import { columnsText } from '../src/column-text.ts';
import { anyTravel, SEED } from './sample/any-travel.ts';
import { failing, inventedTravel, working } from './sample/travel.ts';

const simple = {
  free: 2,
  crush: 1,
  flex: 0.5,
  reserve: 0.5,
  contacts: [{ id: 'sump', name: 'sump', kind: 'body', travel: 5 }],
  droop: [{ id: 'strap', travel: 2 }],
  tolerance: 0.25,
} as const;
const rig = inventedTravel('invented', {
  frontLeft: simple,
  frontRight: { ...simple, crush: 2.5 },
  rearLeft: { ...simple, tolerance: null },
  rearRight: { ...simple, droop: [] },
});

/** The drawn rows of the first bar: between the wall of the ruler and its own right wall. */
const rowsOf = (text: string, sign: string): number =>
  text.split('\n').filter((line) => new RegExp(`^[^|]*[|+] \\|[${sign}]+\\|`).test(line)).length;

describe('the travel columns in the terminal', () => {
  it('looks like this', () => {
    const text = columnsText(rig, { width: 72, system: 'shop', rows: 16, unicode: false });
    expect(text.slice(0, text.indexOf('\nverdict'))).toMatchInlineSnapshot(`
      "Travel of invented

      in  Front left       Front right      Rear left        Rear right
          pass             fail             pass             pass
        | |###|: sump      |###|: sump      |###|? sump      |###|: sump
      +5+ |///|:           |///|:           |///|?           |///|:
        | |+++|            |XXX|: (a)       |+++|            |+++|
      +4+ |...|            |===|            |...|            |...|
        | |...|:           |===|            |...|?           |...|:
      +3+ |===|: (a)       |===|            |===|? (a)       |===|: (a)
        | |===|:           |===|:           |===|?           |===|:
      +2+ |   |: (b)       |   |: (b)       |   |? (b)       |   |: (b)
        | |   |            |   |            |   |            |   |
      +1+ |   |            |   |            |   |            |   |
        | |   |            |   |            |   |            |   |
       0+------------------------------------------------------ ride height --
        | |'''|            |'''|            |'''|
      -1+ |'''|            |'''|            |'''|
        | |'''|            |'''|            |'''|
      -2+ |'''|: (c)       |'''|: (c)       |'''|? (c)
        |      :                :                ?

      # hard contact   / flex   + reserve   . to spare
      X stop reaches where nothing may   = stop crush   blank free bump
      ' droop   : a boundary lies in here, 95 %   one row is 1/2 in
      (a) full crush   (b) stop touch   (c) strap taut

                     Front left         Front right"
    `);
  });

  it('looks like this with boxes and shades', () => {
    const text = columnsText(rig, { width: 72, system: 'metric', rows: 14 });
    expect(text.slice(0, text.indexOf('\nverdict'))).toMatchInlineSnapshot(`
      "Travel of invented

        mm  Front left      Front right     Rear left       Rear right
            pass            fail            pass            pass
          │ │███│┊ sump     │███│┊ sump     │███│? sump     │███│┊ sump
          │ │░░░│           │╳╳╳│┊ (a)      │░░░│?          │░░░│
      +100┤ │···│┊          │▒▒▒│           │···│?          │···│┊
          │ │▒▒▒│┊ (a)      │▒▒▒│           │▒▒▒│? (a)      │▒▒▒│┊ (a)
          │ │   │┊ (b)      │   │┊ (b)      │   │? (b)      │   │┊ (b)
          │ │   │           │   │           │   │           │   │
          │ │   │           │   │           │   │           │   │
         0┼────────────────────────────────────────────────── ride height ──
          │ │╎╎╎│           │╎╎╎│           │╎╎╎│
          │ │╎╎╎│           │╎╎╎│           │╎╎╎│
          │ │╎╎╎│┊ (c)      │╎╎╎│┊ (c)      │╎╎╎│? (c)
          │                                      ?

      █ hard contact   ╱ flex   ░ reserve   · to spare
      ╳ stop reaches where nothing may   ▒ stop crush   blank free bump
      ╎ droop   ┊ a boundary lies in here, 95 %   one row is 20 mm
      (a) full crush   (b) stop touch   (c) strap taut

                     Front left         Front right"
    `);
  });

  it('puts two setups beside each other', () => {
    const text = columnsText(working, {
      width: 80,
      system: 'shop',
      against: failing,
      rows: 12,
      unicode: false,
    });
    expect(text.slice(0, text.indexOf('\nhard travel'))).toMatchInlineSnapshot(`
      "A: long stop as mounted
      B: seat and stop down 1 in

      in  Front left         Front right        Rear left          Rear right
           A        B         A        B         A        B         A        B
        |           -----              -----     -----    -----     -----    -----
      +6+  -----   |#####|:   -----   |#####|:  |#####|: |#####|:  |#####|? |#####|:
        | |XXXXX|: |.....|   |XXXXX|: |.....|:  |.....|: |.....|:  |.....|? |.....|:
      +4+ |=====|: |=====|:  |=====|  |=====|   |=====|: |=====|:  |=====|? |=====|:
        | |=====|: |=====|:  |     |: |     |:  |     |: |     |:  |     |? |     |:
      +2+ |     |  |     |   |     |  |     |   |     |  |     |   |     |  |     |
        | |     |  |     |   |     |  |     |   |     |  |     |   |     |  |     |
       0+-------------------------------------------------------------- ride height --
        | |'''''|  |'''''|   |'''''|  |'''''|   |'''''|  |'''''|   |'''''|  |'''''|
      -2+ |'''''|  |'''''|   |'''''|  |'''''|   |'''''|  |'''''|   |'''''|  |'''''|
        | |'''''|  |'''''|   |'''''|  |'''''|   |'''''|  |'''''|   |'''''|  |'''''|
      -4+ |'''''|: |'''''|:  |'''''|: |'''''|:  |'''''|  |'''''|   |'''''|? |'''''|
        |                                              :        :         ?        :

      # hard contact   / flex   + reserve   . to spare
      X stop reaches where nothing may   = stop crush   blank free bump   ' droop
      : a boundary lies in here, 95 %   one row is 1 in

                       Front left           Front right
      verdict       A  not proven           fail
                    B  pass                 pass
      spare         A  -1/8 in +- 1/4       -5/8 in +- 1/4
                    B  7/8 in +- 1/4        3/8 in +- 1/4
      clearance     A  3/8 in +- 7/32       -1/16 in +- 7/32
                    B  1 3/8 in +- 7/32     15/16 in +- 7/32"
    `);
  });

  it('gives each part as many rows as its length', () => {
    const text = columnsText(rig, { width: 120, system: 'shop', rows: 40, unicode: false });
    expect(text).toContain('one row is 1/4 in');
    expect(rowsOf(text, '=')).toBe(4); // 1 in of crush
    expect(rowsOf(text, ' ')).toBe(8); // 2 in of free bump
    expect(rowsOf(text, '.')).toBe(4); // 5 − 2 − 1 − 1/2 − 1/2 to spare
    expect(rowsOf(text, "'")).toBe(8); // 2 in of droop
  });

  it('fits any width from 40 to 200 cells, whatever the contacts are called', () => {
    fc.assert(
      fc.property(
        anyTravel,
        fc.option(anyTravel),
        fc.integer({ min: 40, max: 200 }),
        fc.boolean(),
        fc.constantFrom('shop' as const, 'metric' as const),
        (travel, against, width, unicode, system) => {
          const text = columnsText(travel, {
            width,
            system,
            unicode,
            ...(against === null ? {} : { against }),
          });
          for (const line of text.split('\n')) expect(cellWidth(line), line).toBeLessThanOrEqual(width);
          expect(text).not.toMatch(/[^\P{C}\n]/u);
          if (!unicode) expect(text).toMatch(/^[ -~\n]*$/);
        },
      ),
      { seed: SEED, numRuns: 150 },
    );
  }, 30_000);

  it('fits every one of those widths', () => {
    for (let width = 40; width <= 200; width += 1) {
      for (const against of [undefined, failing]) {
        const text = columnsText(working, { width, system: 'shop', ...(against && { against }) });
        expect(Math.max(...text.split('\n').map(cellWidth)), `${width}`).toBeLessThanOrEqual(width);
      }
    }
  }, 30_000);

  it('never cuts a name in the drawing: what does not fit gets a letter, and a key names it', () => {
    for (const system of ['shop', 'metric'] as const) {
      for (let width = 40; width <= 120; width += 1) {
        const text = columnsText(working, { width, system });
        expect(text, `${width} ${system}`).not.toContain('…');
        const words = text.replace(/\s+/g, ' ');
        const first = CORNERS.map((corner) => working.corners[corner].contacts[0]!.name);
        for (const name of ['full crush', 'stop touch', ...first])
          expect(words, `${width} ${system}`).toContain(name);
      }
    }
  });

  it('writes what ends and begins beside each bar at 80 cells, in both systems', () => {
    for (const system of ['shop', 'metric'] as const) {
      const [drawing] = columnsText(rig, { width: 80, system }).split('hard contact');
      for (const name of ['full crush', 'stop touch', 'strap taut', 'sump'])
        expect(drawing.split(name).length - 1, `${name} ${system}`).toBeGreaterThanOrEqual(3);
    }
  });

  it('gives one name one letter in all four corners, and no letter to two names', () => {
    const text = columnsText(working, { width: 60, system: 'metric' });
    const keys = [...text.matchAll(/\((\w+)\) ([a-z][^()\n]*?)(?= {3}|\n)/g)].map(([, letter, name]) => [
      letter,
      name,
    ]);
    expect(keys.length).toBeGreaterThan(2);
    expect(new Set(keys.map(([letter]) => letter)).size).toBe(keys.length);
    expect(new Set(keys.map(([, name]) => name)).size).toBe(keys.length);
  });

  it('never cuts a figure, at any width', () => {
    for (const width of [40, 60, 80, 120, 200]) {
      const words = columnsText(failing, { width, system: 'shop' }).replace(/\s+/g, ' ');
      expect(words).toContain('1 11/16 in ±');
      expect(words).toContain('± unknown');
    }
  });

  it('stops a name from steering the terminal', () => {
    const evil = { ...rig, setup: 'a\u001b[2Jb\u0007\u202ec' };
    expect(columnsText(evil, { width: 80, system: 'shop' }).split('\n')[0]).toBe('Travel of a [2Jb c');
    expect(printable('a\nb\u009bc', true)).toBe('a b c');
  });
});

describe('text in cells', () => {
  it('counts full-width letters twice and combining marks not at all', () => {
    // Unicode Standard Annex #11: U+8ECA is W, U+0301 has no width of its own
    expect(cellWidth('車')).toBe(2);
    expect(cellWidth('e\u0301')).toBe(1);
  });

  it('breaks only where a word is longer than the line', () => {
    expect(wrapCells('axle housing to sump', 12)).toEqual(['axle housing', 'to sump']);
    expect(wrapCells('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
  });
});
