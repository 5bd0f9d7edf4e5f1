import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES } from '../../src/finding/codes.ts';
import { editRig, fieldsOf, readRig } from '../../src/rigfile/index.ts';
import { problemText } from '../../src/words/problems.ts';
import { FAULTS_OF_COURSES } from './faults-of-courses.ts';
import { FAULTS_OF_FILES } from './faults-of-files.ts';
import { FAULTS_OF_LINKS } from './faults-of-links.ts';
import { FAULTS_OF_NAMES } from './faults-of-names.ts';
import { FAULTS_OF_VALUES } from './faults-of-values.ts';
import { LINKED } from './linked-rig.ts';
import { rigWith, SMALLEST } from './smallest-rig.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');

const VENTED = rigWith([
  '    usableCrush: 3/4 in\nrear',
  '    usableCrush: 3/4 in\n    vent: { cavity: 50 mm, hole: 8 mm, count: 2, discharge: 0.7 }\nrear',
]);

/** What holds for every text: a rig whose numbers are finite, or problems that each say something. */
function expectOneAnswer(text: string): void {
  const read = readRig(text);
  if (read.ok) {
    JSON.stringify(read.value, (_key, value: unknown) => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      return value;
    });
  } else {
    expect(read.problems.length).toBeGreaterThan(0);
    for (const problem of read.problems) {
      expect(problem.accepted, JSON.stringify(problem)).not.toBe('');
      expect(problemText(problem)).not.toMatch(/\n|undefined/);
    }
  }
  for (const { typed } of fieldsOf(text)) expect(typeof typed === 'string' || typed === null).toBe(true);
  const edited = editRig(text, [{ path: ['front', 'flex'], text: '9 mm' }]);
  if (edited.ok) expect(readRig(edited.value).ok).toBe(read.ok);
}

/** A slice of the text taken out, and something else put there: what a slip of hand or a broken disk does. */
const mangled = (text: string) =>
  fc
    .record({
      at: fc.nat(text.length),
      length: fc.nat(30),
      by: fc.oneof(
        fc.constantFrom(
          '',
          '\n',
          ': ',
          '- ',
          '{',
          '}',
          '[',
          '# ',
          '  ',
          '"',
          "'",
          '&a ',
          '*a',
          '|',
          '~',
          'null',
          '\t',
        ),
        fc.string({ maxLength: 8 }),
      ),
    })
    .map(({ at, length, by }) => text.slice(0, at) + by + text.slice(at + length));

describe('whatever stands in a file', () => {
  it('any text at all ends in a rig or in problems', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 80 }), expectOneAnswer), {
      seed: 7,
      numRuns: 200,
    });
  });

  it.each([
    ['the smallest rig', SMALLEST, 150],
    ['a rig with a vented stop', VENTED, 60],
    ['a rig with links', LINKED, 60],
    ['Ochre', OCHRE, 40],
  ])('%s with a piece of it mangled ends in a rig or in problems', (_name, text, numRuns) => {
    fc.assert(fc.property(mangled(text), expectOneAnswer), { seed: 8, numRuns });
  });

  it.each([
    ['the smallest rig', SMALLEST, 200],
    ['a rig with a vented stop', VENTED, 120],
    ['a rig with links', LINKED, 80],
  ])('any value in place of any key of %s ends in a rig or in problems', (_name, rig, numRuns) => {
    const keys = [...rig.matchAll(/[\w]+(?=:)/g)].map(({ index, 0: key }) => ({ index, key }));
    const values = fc.constantFrom(
      '[]',
      '{}',
      '[[]]',
      '[1, 2]',
      '{ a: 1 }',
      '0',
      'true',
      '""',
      '1e999 in',
      '.nan',
      '!!map {}',
    );
    fc.assert(
      fc.property(fc.constantFrom(...keys), values, ({ index, key }, value) => {
        const colon = index + key.length + 1;
        const end = rig.slice(colon).search(/[,}\n]/) + colon;
        expectOneAnswer(`${rig.slice(0, colon)} ${value}${rig.slice(end)}`);
      }),
      { seed: 9, numRuns },
    );
  });
});

describe('the codes of the rig file', () => {
  it('are each reached by a fault that is tested', () => {
    const reached = new Set(
      [
        ...FAULTS_OF_VALUES,
        ...FAULTS_OF_LINKS,
        ...FAULTS_OF_NAMES,
        ...FAULTS_OF_COURSES,
        ...FAULTS_OF_FILES,
      ].map(([, , code]) => code),
    );
    expect(PROBLEM_CODES.filter((code) => code.startsWith('rig-') && !reached.has(code))).toEqual([]);
  });
});
