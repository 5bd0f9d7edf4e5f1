import { describe, expect, it } from 'vitest';
import { problemText } from '../../src/words/problems.ts';
import { FAULTS_OF_COURSES } from './faults-of-courses.ts';
import { FAULTS_OF_FILES } from './faults-of-files.ts';
import { FAULTS_OF_LINKS } from './faults-of-links.ts';
import { FAULTS_OF_NAMES } from './faults-of-names.ts';
import { FAULTS_OF_PARTS } from './faults-of-parts.ts';
import { FAULTS_OF_VALUES } from './faults-of-values.ts';
import { problemsOf, rigWith, SMALLEST } from './smallest-rig.ts';

const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;
/** Every fault by itself. */
const FAULTS = [
  ...FAULTS_OF_VALUES,
  ...FAULTS_OF_NAMES,
  ...FAULTS_OF_PARTS,
  ...FAULTS_OF_LINKS,
  ...FAULTS_OF_COURSES,
  ...FAULTS_OF_FILES,
];

describe('a rig file with one fault', () => {
  it.each(FAULTS)('%s: one clear problem with its place', (_what, text, code, line, key, found, accepted) => {
    const problems = problemsOf(text);
    expect(problems.map((problem) => problem.code)).toEqual([code]);
    const [problem] = problems;
    expect(problem!.where.file).toBe('a.rig.yaml');
    if (line !== undefined) expect(problem!.where.line).toBe(line);
    if (key !== undefined) expect(problem!.where.key).toBe(key);
    if (typeof found === 'string') expect(problem!.found).toBe(found);
    else expect(problem!.found).toMatch(found);
    expect(problem!.accepted).toMatch(accepted);
    const said = problemText(problem!);
    expect(said.split('\n')).toHaveLength(1);
    expect(said).not.toContain('undefined');
    if (line !== undefined && key !== undefined)
      expect(said.startsWith(`a.rig.yaml:${line}: ${key}: `)).toBe(true);
  });

  it('the smallest rig itself has none', () => {
    expect(problemsOf(SMALLEST)).toEqual([]);
    expect(lineOf(SMALLEST, 'rear:')).toBe(13);
  });
});

describe('a rig file with many faults', () => {
  it('reports faults of shape, quantity, order and name in one pass, in the order of the file', () => {
    const text = rigWith(
      ['wheelbase: 100 in', 'wheelbase: 100'],
      [
        '    usableCrush: 3/4 in\nrear',
        '    curve: [[0 in, 0 lb], [1/4 in, 9 lb], [1/8 in, 10 lb]]\n    lenght: 2 in\nrear',
      ],
      ['{ rate: 150 lb/in }', '{ rate: 150 psi }'],
    ).concat('setups: { other: { rear: { stop: foam } } }\n');
    expect(problemsOf(text).map(({ code, where }) => [where.line, code])).toEqual([
      [3, 'quantity-unit-missing'],
      [10, 'rig-needs-reading'],
      [12, 'rig-table-not-rising'],
      [13, 'rig-key-unknown'],
      [18, 'quantity-unit-wrong-kind'],
      [22, 'rig-unknown-name'],
    ]);
  });

  it('asks once for a branch that is missing, not for every reading below it', () => {
    const problems = problemsOf('schema: 1\n');
    expect(problems.map(({ code, where }) => [code, where.key])).toEqual([
      ['rig-needs-reading', 'measured'],
      ['rig-needs-reading', 'front'],
      ['rig-needs-reading', 'rear'],
    ]);
    expect(problems.map(({ accepted }) => accepted)).toEqual([
      'wheelbase, weights',
      'axle, contacts, spring, stop',
      'axle, contacts, spring, stop',
    ]);
  });

  it('a file of ten thousand faults is answered by sixty and the count of the rest', () => {
    const rows = Array.from({ length: 9000 }, (_, index) => `  s${index}: { front: { stop: none } }`);
    const problems = problemsOf(`${SMALLEST}setups:\n${rows.join('\n')}\n`);
    expect(problems).toHaveLength(61);
    expect(problems.at(-1)).toMatchObject({ code: 'file-more-problems', found: '8940 more' });
  });

  it.each([
    ['nested lists', '['.repeat(300_000)],
    ['nested keys', '{a: '.repeat(90_000)],
    [
      'a thousandfold alias',
      `schema: 1\na: &a [x, x]\n${Array.from({ length: 30 }, (_, i) => `b${i}: [*a, *a]`).join('\n')}\n`,
    ],
    [
      'a bomb of aliases of aliases',
      `schema: 1\na0: &a0 x\n${Array.from({ length: 40 }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}, *a${i}]`).join('\n')}\n`,
    ],
  ])('%s end in a problem, quickly and without breaking', (_what, text) => {
    const problems = problemsOf(text);
    expect(problems.length).toBeGreaterThan(0);
    expect(problems[0]!.code).toMatch(/^file-(not-yaml|alias-refused)$/);
  });
});
