import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { editRig, fieldsOf, readRig, starterRig } from '../../src/rigfile/index.ts';
import { must, problemsOf, SMALLEST } from './smallest-rig.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
const FILES = {
  ochre: OCHRE,
  starter: starterRig(),
  smallest: SMALLEST,
  windows: OCHRE.replaceAll('\n', '\r\n'),
};

const edited = (text: string, key: string, typed: string | null): string =>
  must(editRig(text, [{ path: key.split('.'), text: typed }]));

const commentsOf = (text: string): readonly string[] => text.match(/(?<=^|\s)#.*$/gm) ?? [];

/** Lines that are in one text and not in the other, counted. */
function changedLines(before: string, after: string): { gone: string[]; added: string[] } {
  const [old, now] = [before.split('\n'), after.split('\n')];
  let head = 0;
  while (head < old.length && head < now.length && old[head] === now[head]) head++;
  let tail = 0;
  while (tail < old.length - head && tail < now.length - head && old.at(-1 - tail) === now.at(-1 - tail))
    tail++;
  return { gone: old.slice(head, old.length - tail), added: now.slice(head, now.length - tail) };
}

describe('an edit of the rig file', () => {
  it('changes the one value and leaves the rest of its line and file as they are', () => {
    const text =
      'schema: 1\nfront:\n  stop:\n    gap:   2 in   # tip to pad\n    # of the block\n    ratio: 1\n';
    expect(edited(text, 'front.stop.gap', '2 1/2 in ± 1/16')).toBe(
      text.replace('2 in   #', '2 1/2 in ± 1/16   #'),
    );
  });

  it('fills a key that stands without value, before its comment', () => {
    const text = 'schema: 1\nmeasured:\n  cgHeight: # not yet\n';
    expect(edited(text, 'measured.cgHeight', '32 in')).toBe(text.replace('cgHeight:', 'cgHeight: 32 in'));
  });

  it('makes the keys above a new one, in block or in braces as they stand', () => {
    expect(edited('schema: 1\nfront:\n  flex: 9 mm\n', 'front.strap.length', '400 mm')).toBe(
      'schema: 1\nfront:\n  flex: 9 mm\n  strap:\n    length: 400 mm\n',
    );
    expect(edited('schema: 1\nsetups: { a: {} }\n', 'setups.a.front.stopSpacer', '1/2 in')).toBe(
      'schema: 1\nsetups: { a: { front: { stopSpacer: 1/2 in } } }\n',
    );
    expect(edited('schema: 1\nrear:\n', 'rear.tyre.pressure', '12 psi')).toBe(
      'schema: 1\nrear:\n  tyre:\n    pressure: 12 psi\n',
    );
  });

  it('keeps a setup whose last change is taken away', () => {
    const text = `${SMALLEST}setups:\n  other:\n    front:\n      stopSpacer: 1/2 in\n`;
    const without = edited(edited(text, 'setups.other.front.stopSpacer', null), 'setups.other.front', null);
    expect(must(readRig(without)).setups).toHaveProperty('other');
  });

  it('quotes what YAML would read as something else', () => {
    for (const typed of [
      '~',
      'true',
      'null',
      '4 in # or so',
      'a: b',
      '[4 in',
      '1\'6"',
      '- 4 in',
      '',
      'two\nlines',
    ]) {
      const text = edited(SMALLEST, 'rig.notes', typed);
      expect((parse(text) as { rig: { notes: unknown } }).rig.notes).toBe(typed);
    }
  });

  it('refuses to write into a file that it cannot read, or that is newer', () => {
    for (const text of ['schema: 1\nfront: {', 'schema: 2\n', 'schema: 1\nrig: &a {}\n', '']) {
      expect(editRig(text, [{ path: ['front', 'flex'], text: '9 mm' }]).ok).toBe(false);
    }
  });

  it('refuses a way through a plain value, and says where', () => {
    const result = editRig(SMALLEST, [{ path: ['front', 'stop', 'gap', 'left'], text: '2 in' }]);
    expect(result).toMatchObject({
      ok: false,
      problems: [{ code: 'rig-wrong-shape', where: { line: 11, key: 'front.stop.gap' }, found: '2 in' }],
    });
  });

  describe.each(Object.entries(FILES))('on the %s file', (_name, text) => {
    const keys = fieldsOf(text).map((field) => field.path.join('.'));
    const typed = fc.constantFrom(
      '3 1/4 in ± 1/16',
      '82.5 mm',
      '~ 40 %',
      '0.94',
      'odd: [text',
      '2\' 7 1/4"',
      '#',
    );
    const anyEdit = fc.record({ key: fc.constantFrom(...keys), text: typed });

    it('is read back as typed, leaves every comment and every other value, and does nothing twice', () => {
      fc.assert(
        fc.property(anyEdit, ({ key, text: value }) => {
          const after = edited(text, key, value);
          const field = (state: string) => fieldsOf(state).find(({ path }) => path.join('.') === key);
          expect(field(after)?.typed).toBe(value);
          expect(commentsOf(after)).toEqual(commentsOf(text));
          const others = (state: string) =>
            fieldsOf(state)
              .filter(({ path, typed }) => path.join('.') !== key && typed !== null)
              .map(({ path, typed }) => [path.join('.'), typed]);
          expect(others(after)).toEqual(others(text));
          expect(edited(after, key, value)).toBe(after);
        }),
        { seed: 20, numRuns: 25 },
      );
    });

    it('changes no line but its own and the new ones above it', () => {
      fc.assert(
        fc.property(anyEdit, ({ key, text: value }) => {
          const { gone, added } = changedLines(text, edited(text, key, value));
          expect(gone.length).toBeLessThanOrEqual(1);
          expect(added.length).toBeLessThanOrEqual(key.split('.').length);
        }),
        { seed: 21, numRuns: 25 },
      );
    });

    it('taking a key away and putting it back gives the same rig; taking it away twice is once', () => {
      fc.assert(
        fc.property(fc.constantFrom(...keys), (key) => {
          const before = fieldsOf(text).find(({ path }) => path.join('.') === key)!.typed;
          const without = edited(text, key, null);
          expect(edited(without, key, null)).toBe(without);
          expect(commentsOf(without)).toEqual(commentsOf(text));
          if (before === null) expect(without).toBe(text);
          else expect(parse(edited(without, key, before))).toEqual(parse(text));
        }),
        { seed: 22, numRuns: 25 },
      );
    });
  });
});

describe('the starter file', () => {
  it('is read whole, and every measured-looking value in it is marked as a guess', () => {
    expect(problemsOf(starterRig())).toEqual([]);
    const rig = must(readRig(starterRig()));
    for (const field of fieldsOf(starterRig())) {
      const [top] = field.path;
      if (field.typed === null || top === 'setups' || top === 'courses' || top === 'limits') continue;
      expect(field.reading?.origin, field.path.join('.')).toBe('guessed');
    }
    expect(rig.assumptions.length).toBeGreaterThan(20);
  });
});
