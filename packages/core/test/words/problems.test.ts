import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES } from '../../src/finding/codes.ts';
import { problemText } from '../../src/words/problems.ts';

describe('a problem in words', () => {
  it('says file, line and key, what was found and what is accepted', () => {
    expect(
      problemText({
        code: 'quantity-unit-missing',
        where: { file: 'ochre.rig.yaml', line: 31, key: 'front.stop.gap' },
        found: '4',
        accepted: 'in, mm',
      }),
    ).toBe('ochre.rig.yaml:31: front.stop.gap: “4” has no unit. Accepted: in, mm.');
  });

  it('of a typed field has neither file nor line', () => {
    const text = problemText({ code: 'quantity-empty', where: {}, found: '', accepted: 'in, mm' });
    expect(text).toBe('a value is missing. Accepted: in, mm.');
  });

  it('of a text without a file name still says the line', () => {
    const where = { line: 3, key: 'rear' };
    expect(problemText({ code: 'rig-needs-reading', where, found: '', accepted: 'x' })).toMatch(
      /^line 3: rear: /,
    );
  });

  it.each(PROBLEM_CODES)('%s is one line that names what is accepted, whatever was typed', (code) => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (found) => {
        const text = problemText({
          code,
          where: { file: 'a', line: 1, key: 'k' },
          found,
          accepted: 'ACCEPTED',
        });
        expect(text.startsWith('a:1: k: ')).toBe(true);
        expect(text).toContain('ACCEPTED');
        expect(text).not.toMatch(/[\r\n]|undefined|null/.test(found) ? /[\r\n]/ : /[\r\n]|undefined/);
        expect(text.endsWith('.')).toBe(true);
      }),
      { seed: 5, numRuns: 20 },
    );
  });
});
