import { describe, expect, it } from 'vitest';
import { bad, good } from '../../src/finding/problem.ts';
import { withCurve, withSettings } from './fault.ts';
import { problemsOf, rigOf } from './smallest-rig.ts';

const beside = (content: string) => ({ file: 'a.rig.yaml', readBeside: () => good(content) });
const FROM_FILE = withCurve('{ file: press.csv }');

describe('a force table', () => {
  it('in the file and in a file beside it are the same table', () => {
    const inline = rigOf(withCurve('[[0 in, 0 lb], [1/4 in, 300 lb], [1/2 in, 1100 lb]]')).front.stop;
    const contents = [
      'crush [in], force [lb]\n0, 0\n0.25, 300\n0.5, 1100\n',
      '# garage press, 20 degrees\n0 in;0 lb\n\n1/4 in;300 lb # second stroke\r\n1/2 in;1100 lb',
      '\uFEFFcrush (in)\tforce (lb)\n0\t0\n0.25\t300\n0.5\t1100',
    ];
    for (const content of contents) {
      const { stop } = rigOf(FROM_FILE, beside(content)).front;
      expect(stop.crush).toEqual(inline.crush);
      expect(stop.force).toEqual(inline.force);
      expect(stop.origin).toBe('measured');
    }
  });

  it.each([
    ['a bare number without a head row', '0, 0\n1, 300', 'quantity-unit-missing', 1],
    ['a row of three', '0 in, 0 lb\n1 in, 2 lb, 3', 'rig-wrong-shape', 2],
    ['force that falls', '0 in, 0 lb\n1 in, 20 lb\n2 in, 10 lb', 'rig-table-not-rising', 3],
    ['a unit of the wrong kind', 'crush [psi], force [lb]\n0, 0\n1, 2', 'quantity-unit-wrong-kind', 2],
  ])('%s in the file beside: the problem names that file and its line', (_what, content, code, line) => {
    const [problem] = problemsOf(FROM_FILE, beside(content));
    expect(problem).toMatchObject({ code, where: { file: 'press.csv', line, key: 'front.stop.curve' } });
  });

  it('an empty file beside is too short a table', () => {
    expect(problemsOf(FROM_FILE, beside('# nothing\n')).map(({ code }) => code)).toEqual([
      'rig-table-too-short',
    ]);
  });

  it('a file beside that cannot be read is told at the key that names it', () => {
    const readBeside = () =>
      bad({ code: 'file-no-permission', where: {}, found: 'press.csv', accepted: 'a readable file' });
    expect(problemsOf(FROM_FILE, { file: 'a.rig.yaml', readBeside })).toMatchObject([
      { code: 'file-no-permission', where: { file: 'a.rig.yaml', line: 13, key: 'front.stop.curve.file' } },
    ]);
  });

  it('of a shock gets its row at rest when it has none', () => {
    const { speed, force } = rigOf(withSettings('[[-10 in/s, -200 lb], [10 in/s, 90 lb]]')).front.shock
      .settings.trail!;
    expect(speed[1]).toBe(0);
    expect(force[1]).toBe(0);
  });
});
