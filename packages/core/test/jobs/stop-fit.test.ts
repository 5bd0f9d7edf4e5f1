import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitStop, type StopFitRequest } from '../../src/jobs/stop-fit.ts';
import { readPressFile } from '../../src/rigfile/press-file.ts';
import { readRig } from '../../src/rigfile/read.ts';
import { stopFragment } from '../../src/rigfile/stop-fragment.ts';
import { PRESS_DOUBTS } from '../../src/stopdesign/press-test.ts';
import { doubtText } from '../../src/words/press-doubts.ts';
import { must } from './ochre.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');

interface Rubber {
  readonly full: number;
  readonly deep: number;
  readonly power: number;
}

/** An invented power-law stop, pressed and let back with a quarter lost, its touch at 5 mm of press travel. */
function pressed({ full, deep, power }: Rubber, noise: (k: number) => number = () => 0): StopFitRequest {
  const shares = Array.from({ length: 31 }, (_, k) => k / 30);
  const rows = [
    ...[0, 1, 2, 3, 4, 5].map((mm) => ({ travel: mm / 1000, force: 0 })),
    ...shares.slice(1).map((s) => ({ travel: 0.005 + s * deep, force: full * s ** power })),
    ...shares
      .slice(0, -1)
      .reverse()
      .map((s) => ({ travel: 0.005 + s * deep, force: 0.75 * full * s ** power })),
  ];
  return {
    travel: rows.map(({ travel }) => travel),
    force: rows.map(({ force }, k) => force + noise(k)),
    line: rows.map((_, k) => k + 2),
    file: 'press.csv',
    resolution: null,
    fullScale: null,
    material: null,
  };
}

const RUBBER: Rubber = { full: 12_000, deep: 0.021, power: 2.2 };
const anyRubber = fc.record({
  full: fc.double({ min: 3000, max: 20_000, noNaN: true }),
  deep: fc.double({ min: 0.015, max: 0.08, noNaN: true }),
  power: fc.double({ min: 1, max: 3, noNaN: true }),
});
const quiet = (seed: number, size: number) => {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return (state / 2_147_483_648 - 0.5) * size;
  };
};

describe('a press test as a stop', () => {
  it('gives back loss, work and deepest force of a stop that is known', () => {
    const fit = must(fitStop(pressed(RUBBER)));
    expect(fit.hysteresis).toBeCloseTo(0.25, 1);
    // Closed form of the power law: F·x ÷ (n + 1).
    expect(fit.energy / ((RUBBER.full * RUBBER.deep) / (RUBBER.power + 1))).toBeCloseTo(1, 1);
    expect(fit.force.at(-1)).toBeCloseTo(RUBBER.full, -2);
    expect(fit.doubts).toEqual([]);
    expect(fit.isLossAbsurd).toBe(false);
  });

  it('knows its touch within what it says, soft or hard at first, in noise', () => {
    fc.assert(
      fc.property(anyRubber, fc.integer({ min: 1, max: 1e6 }), (rubber, seed) => {
        const fit = must(fitStop(pressed(rubber, quiet(seed, 0.005 * rubber.full))));
        const off = Math.abs(fit.touch.value - 0.005);
        // One reading apart is as near as a press can tell.
        expect(off).toBeLessThan((fit.touch.tolerance ?? 0) + rubber.deep / 30 + 0.001);
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('does not mind travel that jitters, nor an order that only jitter made', () => {
    const clean = must(fitStop(pressed(RUBBER)));
    const asked = pressed(RUBBER);
    const jitter = quiet(4, 0.0004);
    const shaken = must(fitStop({ ...asked, travel: asked.travel.map((t) => t + jitter()) }));
    expect(shaken.force.at(-1)).toBeCloseTo(clean.force.at(-1) ?? 0, -2);
    for (let i = 1; i < shaken.crush.length; i += 1) {
      expect(shaken.crush[i]).toBeGreaterThan(shaken.crush[i - 1]);
      expect(shaken.force[i]).toBeGreaterThan(shaken.force[i - 1]);
    }
  });

  it('takes the usual hardening of a material only when the material is named', () => {
    expect(must(fitStop(pressed(RUBBER))).dynamicFactor).toBeNull();
    const foam = must(fitStop({ ...pressed(RUBBER), material: 'foam' }));
    expect(foam.dynamicFactor?.value).toBeGreaterThan(1);
    expect(foam.dynamicFactor?.tolerance).toBeGreaterThan(0);
  });

  it.each(PRESS_DOUBTS)('says of %s what is doubtful', (doubt) => {
    expect(doubtText(doubt)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('a press test that makes no stop', () => {
  const cases: readonly [string, Partial<StopFitRequest>, string][] = [
    ['three readings', { travel: [0, 0.001, 0.002], force: [0, 10, 20], line: null }, 'stop-press-too-short'],
    [
      'nothing but zeros',
      { travel: [0, 0.01, 0.02, 0.03, 0.04], force: [0, 0, 0, 0, 0], line: null },
      'stop-press-too-short',
    ],
    ['force that counts as pull', { force: pressed(RUBBER).force.map((f) => -f) }, 'stop-press-sign'],
    ['travel that counts backwards', { travel: pressed(RUBBER).travel.map((t) => -t) }, 'stop-press-sign'],
    [
      'two strokes',
      {
        travel: [...pressed(RUBBER).travel, 0.01, 0.02],
        force: [...pressed(RUBBER).force, 500, 4000],
        line: null,
      },
      'stop-press-strokes',
    ],
    [
      'millimetres taken for inches',
      { travel: pressed(RUBBER).travel.map((t) => 25.4 * t) },
      'stop-press-units',
    ],
    [
      'millimetres taken for metres',
      { travel: pressed(RUBBER).travel.map((t) => t / 1000) },
      'stop-press-units',
    ],
    [
      'kilonewtons taken for newtons',
      { force: pressed(RUBBER).force.map((f) => f / 1000) },
      'stop-press-units',
    ],
  ];
  it.each(cases)('refuses %s', (_, change, code) => {
    const answer = fitStop({ ...pressed(RUBBER), ...change });
    expect(answer).toMatchObject({ ok: false, problems: [{ code, where: { file: 'press.csv' } }] });
  });

  it('names the line of the fault', () => {
    const asked = pressed(RUBBER);
    const answer = fitStop({ ...asked, force: asked.force.map((f) => -f) });
    expect(answer).toMatchObject({ ok: false, problems: [{ where: { line: 37 } }] });
  });
});

describe('a file of a press test', () => {
  const file = { file: 'p.csv', columns: null, ram: null };

  it('is read in any units, in each cell, in the first row, or from outside', () => {
    const want = { travel: [0, 0.0254], force: [0, 444.82216152605] };
    const near = (text: string, options = {}) => {
      const read = must(readPressFile(text, { ...file, ...options }));
      expect(read.travel[1]).toBeCloseTo(want.travel[1], 9);
      expect(read.force[1]).toBeCloseTo(want.force[1], 6);
      return read.line;
    };
    expect(near('# a\n0 mm, 0 N\n25.4 mm, 100 lbf\n')).toEqual([2, 3]);
    expect(near('travel [in], force [lb]\n0, 0\n1, 100\n')).toEqual([2, 3]);
    expect(near('travel;gauge\n0;0\n1;100\n', { columns: 'in, lb' })).toEqual([2, 3]);
    expect(near('0\t0\n1\t100\n', { columns: 'in, lb' })).toEqual([1, 2]);
  });

  it('turns the pressure of a ram into force', () => {
    const read = must(readPressFile('0 mm, 0 psi\n10 mm, 1000 psi\n', { ...file, ram: 0.0508 }));
    // 1000 psi on π square inches: 3141.6 lbf.
    expect(read.force[1] / 4.4482216152605).toBeCloseTo(1000 * Math.PI, 6);
  });

  it.each([
    ['without units', '0, 0\n1, 100\n', {}, { code: 'quantity-unit-missing', line: 1 }],
    ['with three cells', '0 mm, 0 N, 3\n', {}, { code: 'rig-wrong-shape', line: 1 }],
    [
      'with three cells and units from outside',
      '0, 0\n1, 2, 3\n',
      { columns: 'mm, N' },
      { code: 'rig-wrong-shape', line: 2 },
    ],
    ['with a pressure and no ram', '0 mm, 0 psi\n', {}, { code: 'quantity-unit-wrong-kind', line: 1 }],
    ['with one unit from outside', '0, 0\n', { columns: 'mm' }, { code: 'ask-option', line: undefined }],
  ])('is refused %s, with its line', (_, text, options, { code, line }) => {
    const read = readPressFile(text, { ...file, ...options });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems[0].code).toBe(code);
    expect(read.problems[0].where.line).toBe(line);
  });
});

describe('the text for the rig file', () => {
  it.each(['shop', 'metric'] as const)('is read back as the same stop, %s', (system) => {
    fc.assert(
      fc.property(anyRubber, (rubber) => {
        const fit = must(fitStop({ ...pressed(rubber), material: 'rubber' }));
        const { crush, force, hysteresis, dynamicFactor, usableCrush } = fit;
        const text = stopFragment(
          {
            name: 'pressed-1',
            from: ['a line\nand another'],
            freeLength: 2 * rubber.deep,
            usableCrush: { value: usableCrush.value, tolerance: usableCrush.tolerance ?? 0 },
            crush,
            force,
            hysteresis,
            dynamicFactor,
          },
          system,
        );
        const entry = text.replace(/^parts:\n {2}stops:\n/, '');
        const rig = must(
          readRig(
            OCHRE.replace('parts:\n  stops:\n', (head) => head + entry),
            { file: 'a.yaml' },
          ),
        );
        const read = rig.shelf.stops['pressed-1'];
        expect(read.origin).toBe('measured');
        expect(read.crush).toHaveLength(crush.length);
        expect(read.dynamicFactor?.value).toBeCloseTo(1.3, 9);
        read.crush.forEach((c, i) => {
          expect(Math.abs(c - crush[i])).toBeLessThanOrEqual(1e-4 * rubber.deep);
          expect(
            Math.abs(read.force[i] / Math.max(force[i], 1) - force[i] / Math.max(force[i], 1)),
          ).toBeLessThan(1e-3);
        });
      }),
      { seed: 3, numRuns: 4 },
    );
  });
});
