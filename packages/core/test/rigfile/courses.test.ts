import { describe, expect, it } from 'vitest';
import { bad, good } from '../../src/finding/problem.ts';
import { problemText } from '../../src/words/problems.ts';
import { withCourse } from './faults-of-courses.ts';
import { problemsOf, rigOf } from './smallest-rig.ts';

const shapeOf = (course: string) => rigOf(withCourse(course)).courses.wash!.shape;
const beside = (content: string) => ({ file: 'a.rig.yaml', readBeside: () => good(content) });
const FROM_FILE = withCourse('kind: profile, points: { file: wash.csv }');

describe('a course in the rig file', () => {
  it('takes what is usual where nothing is said', () => {
    expect(shapeOf('kind: ditch, depth: 300 mm, length: 2 m')).toEqual({
      kind: 'ditch',
      side: 'both',
      depth: 0.3,
      length: 2,
      bottom: 0,
      start: 5,
      rightLag: 0,
    });
    expect(shapeOf('kind: crest, height: 3 m, grade: 25 %, top: 6 m')).toMatchObject({ foot: 6, start: 5 });
    expect(shapeOf('kind: washboard, height: 30 mm, spacing: 600 mm, length: 60 m')).toMatchObject({
      fadeIn: 1.2,
      rightPhase: 0,
    });
    expect(
      shapeOf('kind: rocks, height: 8 in, rockLength: 2 ft, spacing: 5 ft, length: 100 ft'),
    ).toMatchObject({ seed: 1, mirrored: false });
  });

  it('takes track and wheel from the rig', () => {
    expect(shapeOf('kind: road-class, class: D, length: 200 m')).toEqual({
      kind: 'road-class',
      roughness: 1024e-6,
      length: 200,
      fadeIn: 20,
      // 60 in on both axles of the smallest rig.
      trackWidth: 60 * 0.0254,
      seed: 1,
      mirrored: false,
    });
    const { front, courses } = rigOf(withCourse('kind: half-round, height: 8 in'));
    expect(courses.wash!.shape).toMatchObject({
      length: 2 * 8 * 0.0254,
      wheelRadius: front.tyre.radius.value,
    });
  });

  it('may give the roughness instead of a class', () => {
    expect(shapeOf('kind: road-class, roughness: 500 cm^3, length: 200 m')).toMatchObject({
      roughness: 500e-6,
    });
  });
});

describe('a measured ground', () => {
  const POINTS = { distance: [0, 0.5, 1.25], left: [0, 0.03, 0.01], right: [0, -0.02, 0] };

  it('in the file and in a file beside it are the same ground', () => {
    const here = shapeOf(
      'kind: profile, points: [[0 m, 0 m, 0 m], [0.5 m, 30 mm, -20 mm], [1.25 m, 1 cm, 0 m]]',
    );
    expect(here).toMatchObject({ kind: 'profile', ...POINTS, fadeIn: 1.25 / 4, mirrored: false });
    for (const content of [
      'distance [m], left [mm], right [mm]\n0, 0, 0\n0.5, 30, -20\n1.25, 10, 0\n',
      '# string line, level instrument\n0 m;0 mm;0 mm\n\n50 cm;3 cm;-2 cm # rock\r\n1.25 m;1 cm;0 mm',
      '\uFEFFs (m)\tleft (cm)\tright (cm)\n0\t0\t0\n0,5\t3\t-2\n1,25\t1\t0',
    ]) {
      const { shape } = rigOf(FROM_FILE, beside(content)).courses.wash!;
      expect(shape).toEqual(here);
    }
  });

  it.each([
    ['a bare number without a head row', '0, 0, 0\n1, 1, 1\n2, 0, 0', 'quantity-unit-missing', 1],
    ['a row of two', '0 m, 0 m, 0 m\n1 m, 2 mm\n2 m, 0 m, 0 m', 'rig-wrong-shape', 2],
    ['a cell left empty', 's [m], l [m], r [m]\n0, 0, 0\n1, , 0.1\n2, 0, 0', 'quantity-empty', 3],
    [
      'a distance that goes back',
      's [m], l [m], r [m]\n0, 0, 0\n2, 0, 0\n1, 0, 0\n0.5, 0, 0',
      'rig-table-not-rising',
      4,
    ],
    [
      'a distance that stands still',
      's [m], l [m], r [m]\n0, 0, 0\n1, 0, 0\n1, 0, 0',
      'rig-table-not-rising',
      4,
    ],
    [
      'a stretch that is missing',
      's [m], l [m], r [m]\n0, 0, 0\n0.1, 0, 0\n0.2, 0, 0\n0.3, 0, 0\n9, 0, 0\n',
      'rig-profile-gap',
      6,
    ],
    ['a weight', 's [m], l [lb], r [m]\n0, 0, 0\n', 'quantity-unit-wrong-kind', 2],
  ])('%s in the file beside: one problem that names that file and its line', (_what, content, code, line) => {
    const problems = problemsOf(FROM_FILE, beside(content));
    expect(problems.map((one) => one.code)).toContain(code);
    expect(problems.filter((one) => one.code === code)[0]).toMatchObject({
      where: { file: 'wash.csv', line, key: 'courses.wash.points' },
    });
    if (code.startsWith('rig-')) expect(problems).toHaveLength(1);
    expect(problemText(problems[0]!)).toMatch(/^wash\.csv:\d+: courses\.wash\.points: /);
  });

  it('of too few points is told where the file is named', () => {
    expect(problemsOf(FROM_FILE, beside('0 m, 0 m, 0 m\n'))).toMatchObject([
      { code: 'rig-table-too-short', where: { file: 'a.rig.yaml', line: 22 }, found: 'one point' },
    ]);
    expect(problemsOf(FROM_FILE, beside(''))).toMatchObject([
      { code: 'rig-table-too-short', found: '0 points' },
    ]);
  });

  it('that cannot be read is told at the key that names it', () => {
    const readBeside = () =>
      bad({ code: 'file-no-permission', where: {}, found: 'wash.csv', accepted: 'a readable file' });
    expect(problemsOf(FROM_FILE, { file: 'a.rig.yaml', readBeside })).toMatchObject([
      {
        code: 'file-no-permission',
        where: { file: 'a.rig.yaml', line: 22, key: 'courses.wash.points.file' },
      },
    ]);
  });

  it('of ten kilometres is read in about a second', () => {
    const rows = Array.from({ length: 40_001 }, (_, i) => `${i / 4}, ${Math.round(9 * Math.sin(i))}, 0`);
    const content = `s [m], left [mm], right [mm]\n${rows.join('\n')}\n`;
    const { shape } = rigOf(FROM_FILE, beside(content)).courses.wash!;
    expect(shape.kind === 'profile' && shape.distance.length).toBe(40_001);
  });
});
