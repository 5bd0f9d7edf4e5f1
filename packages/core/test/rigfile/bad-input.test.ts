import { describe, expect, it } from 'vitest';
import type { ProblemCode } from '../../src/finding/codes.ts';
import { MAX_RIG_CHARACTERS } from '../../src/rigfile/index.ts';
import { problemText } from '../../src/words/problems.ts';
import { problemsOf, rigWith, SMALLEST } from './smallest-rig.ts';

type Case = readonly [
  what: string,
  text: string,
  code: ProblemCode,
  line: number | undefined,
  key: string | undefined,
  found: string | RegExp,
  accepted: string | RegExp,
];

const lineOf = (text: string, part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;
const CURVE = (rows: string) =>
  rigWith(['usableCrush: 3/4 in\nrear', `usableCrush: 3/4 in\n    curve: ${rows}\nrear`]);
const SETTINGS = (rows: string) =>
  rigWith(['  spring: { rate: 160', `  shock: { settings: { trail: ${rows} } }\n  spring: { rate: 160`]);
const SETUP = (patch: string) => `${SMALLEST}setups:\n  other:\n    front: ${patch}\n`;
const BROKEN_BRACKET = 'schema: 1\nfront: { axle: { track: 60 in }\nrear: {}\n';

/** One fault in a file: exactly one problem, at its line and key, with what was found and what is accepted. */
const CASES: readonly Case[] = [
  [
    'a unit of the wrong kind',
    rigWith(['gap: 4 in', 'gap: 4 lb']),
    'quantity-unit-wrong-kind',
    8,
    'front.contacts.sump.gap',
    '4 lb',
    /\bin\b.*mm/,
  ],
  [
    'a unit nobody knows',
    rigWith(['gap: 4 in', 'gap: 4 hands']),
    'quantity-unit-unknown',
    8,
    'front.contacts.sump.gap',
    '4 hands',
    /mm/,
  ],
  [
    'a bare number',
    rigWith(['wheelbase: 100 in', 'wheelbase: 100']),
    'quantity-unit-missing',
    3,
    'measured.wheelbase',
    '100',
    /in.*mm/,
  ],
  [
    'a negative mass',
    rigWith(['rearLeft: 900 lb', 'rearLeft: -900 lb']),
    'rig-negative',
    4,
    'measured.weights.rearLeft',
    '-900 lb',
    'more than zero',
  ],
  [
    'a mass of zero',
    rigWith(['rearLeft: 900 lb', 'rearLeft: 0 lb']),
    'rig-negative',
    4,
    'measured.weights.rearLeft',
    '0 lb',
    'more than zero',
  ],
  [
    'a tolerance larger than the value',
    rigWith(['{ gap: 4 in }', '{ gap: 4 in, ratio: 0.5 ± 0.6 }']),
    'quantity-tolerance-crossed',
    8,
    'front.contacts.sump.ratio',
    '0.5 ± 0.6',
    /smaller/,
  ],
  [
    'a tolerance with its signs crossed',
    rigWith(['gap: 4 in', 'gap: 4 in -1/8/+1/16 in']),
    'quantity-tolerance-crossed',
    8,
    'front.contacts.sump.gap',
    /4 in/,
    /./,
  ],
  [
    'a travel ratio of zero',
    rigWith(['{ gap: 4 in }', '{ gap: 4 in, ratio: 0 }']),
    'rig-ratio-zero',
    8,
    'front.contacts.sump.ratio',
    '0',
    'more than zero',
  ],
  [
    'a stop table whose force falls',
    CURVE('[[0 in, 0 lb], [1/4 in, 300 lb], [1/2 in, 200 lb]]'),
    'rig-table-not-rising',
    13,
    'front.stop.curve.2',
    '[1/2 in, 200 lb]',
    /1\/4 in, 300 lb/,
  ],
  [
    'a stop table whose crush stands still',
    CURVE('[[0 in, 0 lb], [1/4 in, 300 lb], [1/4 in, 400 lb]]'),
    'rig-table-not-rising',
    13,
    'front.stop.curve.2',
    '[1/4 in, 400 lb]',
    /1\/4 in/,
  ],
  [
    'a stop table that does not start at rest',
    CURVE('[[1/8 in, 100 lb], [1/4 in, 300 lb]]'),
    'rig-table-start',
    13,
    'front.stop.curve.0',
    '[1/8 in, 100 lb]',
    /zero/,
  ],
  [
    'a stop table of one row',
    CURVE('[[0 in, 0 lb]]'),
    'rig-table-too-short',
    13,
    'front.stop.curve.0',
    '[0 in, 0 lb]',
    /two rows/,
  ],
  [
    'a table row of three cells',
    CURVE('[[0 in, 0 lb], [1/4 in, 300 lb, 4]]'),
    'rig-wrong-shape',
    13,
    'front.stop.curve.1',
    'a list of 3',
    /./,
  ],
  [
    'a bare number in a table',
    CURVE('[[0 in, 0 lb], [0.25, 300 lb]]'),
    'quantity-unit-missing',
    13,
    'front.stop.curve.1.0',
    '0.25',
    /mm/,
  ],
  [
    'a shock table without rebound',
    SETTINGS('[[0 in/s, 0 lb], [10 in/s, 90 lb]]'),
    'rig-table-too-short',
    9,
    'front.shock.settings.trail.0',
    /0 in\/s/,
    /rebound/,
  ],
  [
    'a shock that pushes along',
    SETTINGS('[[-10 in/s, -200 lb], [0 in/s, 40 lb], [10 in/s, 90 lb]]'),
    'rig-inconsistent',
    9,
    'front.shock.settings.trail.1',
    '[0 in/s, 40 lb]',
    /opposes/,
  ],
  [
    'a key that stands twice',
    rigWith([
      '  stop:\n    gap: 2 in\n    usableCrush: 3/4 in\nrear',
      '  stop:\n    gap: 2 in\n    gap: 3 in\n    usableCrush: 3/4 in\nrear',
    ]),
    'file-duplicate-key',
    12,
    'front.stop.gap',
    'gap again',
    /line 11/,
  ],
  [
    'a misspelt key',
    rigWith(['    usableCrush: 3/4 in\nrear', '    usableCrush: 3/4 in\n    freeLenght: 2 in\nrear']),
    'rig-key-unknown',
    13,
    'front.stop.freeLenght',
    'freeLenght',
    /^freeLength, /,
  ],
  [
    'a misspelt key at the top',
    `${SMALLEST}setup: {}\n`,
    'rig-key-unknown',
    21,
    'setup',
    'setup',
    /^setups, /,
  ],
  [
    'a list where keys belong',
    rigWith(['  spring: { rate: 160 lb/in }', '  spring: [160 lb/in]']),
    'rig-wrong-shape',
    9,
    'front.spring',
    'a list of 1',
    /keys/,
  ],
  [
    'another kind of axle',
    rigWith(['axle: { track: 60 in }', 'axle: { kind: independent, track: 60 in }']),
    'rig-wrong-shape',
    6,
    'front.axle.kind',
    'independent',
    'solid',
  ],
  [
    'a setup that names a stop nobody has',
    SETUP('{ stop: foam }'),
    'rig-unknown-name',
    23,
    'setups.other.front.stop',
    'foam',
    'as-fitted',
  ],
  [
    'a setup that names a spring nobody has',
    SETUP('{ spring: long }'),
    'rig-unknown-name',
    23,
    'setups.other.front.spring',
    'long',
    'as-fitted',
  ],
  [
    'a setup that notches a contact nobody listed',
    SETUP('{ notch: { smup: 1/2 in } }'),
    'rig-unknown-name',
    23,
    'setups.other.front.notch.smup',
    'smup',
    'sump',
  ],
  [
    'a setup that names a shock setting nobody has',
    SETUP('{ shockSetting: road }'),
    'rig-unknown-name',
    23,
    'setups.other.front.shockSetting',
    'road',
    'estimated',
  ],
  [
    'a setup that shortens a strap that is not there',
    SETUP('{ strapLength: 15 in }'),
    'rig-inconsistent',
    23,
    'setups.other.front.strapLength',
    '15 in',
    /strap/,
  ],
  [
    'a setup that airs down from a pressure nobody wrote down',
    SETUP('{ tyrePressure: 10 psi }'),
    'rig-needs-reading',
    5,
    'front.tyre.pressure',
    '',
    /psi/,
  ],
  [
    'a setup under the reserved name',
    `${SMALLEST}setups: { as-measured: {} }\n`,
    'rig-inconsistent',
    21,
    'setups.as-measured',
    'as-measured',
    /another name/,
  ],
  [
    'a setup named like a built-in of the language',
    SETUP('{ stop: constructor }'),
    'rig-unknown-name',
    23,
    'setups.other.front.stop',
    'constructor',
    'as-fitted',
  ],
  [
    'a contact under a reserved name',
    rigWith(['sump: {', 'coil: {']),
    'rig-inconsistent',
    8,
    'front.contacts.coil',
    'coil',
    /another name/,
  ],
  [
    'a contact whose name holds a dot',
    rigWith(['sump: {', 'sump.left: {']),
    'rig-wrong-shape',
    8,
    'front.contacts.sump.left',
    'sump.left',
    /letters, digits/,
  ],
  [
    'a coil shorter free than solid',
    rigWith(['{ rate: 160 lb/in }', '{ rate: 160 lb/in, freeLength: 6 in, solidLength: 7 in }']),
    'rig-inconsistent',
    9,
    'front.spring.solidLength',
    '7 in',
    /free length/,
  ],
  [
    'a coil that the weight presses solid',
    rigWith(['{ rate: 160 lb/in }', '{ rate: 60 lb/in, freeLength: 14 in, solidLength: 7 in }']),
    'rig-cannot-settle',
    9,
    'front.spring.rate',
    '60 lb/in',
    /N\/mm/,
  ],
  [
    'a shock longer closed than at ride',
    rigWith([
      '  spring: { rate: 160',
      '  shock: { rideLength: 20 in, collapsedLength: 21 in }\n  spring: { rate: 160',
    ]),
    'rig-inconsistent',
    9,
    'front.shock.rideLength',
    '20 in',
    /collapsed/,
  ],
  [
    'an axle heavier than what its tyres carry',
    rigWith(['axle: { track: 60 in }', 'axle: { track: 60 in, unsprungMass: 2100 lb }']),
    'rig-inconsistent',
    6,
    'front.axle.unsprungMass',
    '2100 lb',
    /less than/,
  ],
  [
    'a stop crushed by more than its length',
    rigWith(['usableCrush: 3/4 in\nrear', 'usableCrush: 3/4 in\n    freeLength: 1/2 in\nrear']),
    'rig-inconsistent',
    12,
    'front.stop.usableCrush',
    '3/4 in',
    /free length/,
  ],
  [
    'a course of no known kind',
    `${SMALLEST}courses:\n  wash:\n    kind: river\n`,
    'rig-wrong-shape',
    23,
    'courses.wash.kind',
    'river',
    /whoops/,
  ],
  [
    'a course without a kind',
    `${SMALLEST}courses:\n  wash: { height: 1 ft }\n`,
    'rig-key-missing',
    22,
    'courses.wash.kind',
    '',
    /whoops/,
  ],
  [
    'a course without its height',
    `${SMALLEST}courses:\n  wash: { kind: drop }\n`,
    'rig-key-missing',
    22,
    'courses.wash.height',
    '',
    /ft/,
  ],
  [
    'a tolerance on the ground',
    `${SMALLEST}courses:\n  wash: { kind: drop, height: 1 ft ± 1 in }\n`,
    'rig-wrong-shape',
    22,
    'courses.wash.height',
    '1 ft ± 1 in',
    /without tolerance/,
  ],
  [
    'a force table beside the file that cannot be read here',
    CURVE('{ file: press.csv }'),
    'file-not-found',
    13,
    'front.stop.curve.file',
    'press.csv',
    /in this file/,
  ],
  [
    'no version',
    SMALLEST.replace('schema: 1\n', ''),
    'rig-schema-version',
    undefined,
    'schema',
    '',
    'schema: 1',
  ],
  [
    'a version that is none',
    rigWith(['schema: 1', 'schema: one']),
    'rig-schema-version',
    1,
    'schema',
    'one',
    'schema: 1',
  ],
  [
    'a file of a newer program',
    rigWith(['schema: 1', 'schema: 2\nlinkage: {}']),
    'rig-schema-from-the-future',
    1,
    'schema',
    '2',
    'schema: 1',
  ],
  ['an empty file', '', 'file-not-yaml', undefined, undefined, 'an empty file', /schema: 1/],
  [
    'a file of comments',
    '# nothing yet\n',
    'file-not-yaml',
    undefined,
    undefined,
    'an empty file',
    /schema: 1/,
  ],
  [
    'a letter instead of a rig',
    'Dear all,\nthe rig is fine.\n',
    'file-not-yaml',
    1,
    undefined,
    'Dear all,',
    /schema: 1/,
  ],
  ['an open bracket', BROKEN_BRACKET, 'file-not-yaml', undefined, undefined, /./, /./],
  [
    'two documents in one file',
    `${SMALLEST}---\nschema: 1\n`,
    'file-not-yaml',
    undefined,
    undefined,
    /./,
    /./,
  ],
  [
    'an alias',
    rigWith(['axle: { track: 60 in }', 'axle: &axle { track: 60 in }']),
    'file-alias-refused',
    6,
    'front.axle',
    /&axle/,
    /written out/,
  ],
  ['binary', 'schema: 1\0\0\0', 'file-not-text', undefined, undefined, /bytes/, /UTF-8/],
  [
    'ten megabytes',
    `schema: 1\n${'# '.padEnd(99, 'x').concat('\n').repeat(100_000)}`,
    'file-too-large',
    undefined,
    undefined,
    /characters/,
    String(MAX_RIG_CHARACTERS),
  ],
];

describe('a rig file with one fault', () => {
  it.each(CASES)('%s: one clear problem with its place', (_what, text, code, line, key, found, accepted) => {
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
    expect(problems[0]!.accepted).toContain('wheelbase');
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
