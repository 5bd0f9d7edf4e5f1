import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DESIGN_DOUBTS,
  designStop,
  printableRange,
  type StopDesign,
  type StopDesignRequest,
} from '../../src/jobs/stop-design.ts';
import { designDoubtText } from '../../src/words/design-doubts.ts';
import { must } from './ochre.ts';

const ask = (change: Partial<StopDesignRequest> = {}): StopDesignRequest => ({
  height: 0.07,
  diameters: [0.06, 0.06],
  bore: 0,
  cell: 0.01,
  wall: 0.0008,
  material: 'tpu-85a',
  target: null,
  density: change.target ? null : [0.5, 0.3],
  trials: 40,
  seed: 1,
  ...change,
});
const designs = (change: Partial<StopDesignRequest> = {}): StopDesign => must(designStop(ask(change)));
const curveOf = ({ curve }: StopDesign, gain = 1) => ({
  crush: curve.map(({ crush }) => crush),
  force: curve.map(({ force }) => gain * (force ?? 0)),
});

describe('the density that a printer can make', () => {
  it.each([
    [0.01, 0.281],
    [0.015, 0.187],
    [0.02, 0.14],
  ])('begins where the thinnest wall of a cell of %f m is 0.8 mm', (cell, least) => {
    // Shared check 10.3b: walls of a gyroid sheet, computed on its surface.
    expect(printableRange(cell, 0.0008).least).toBeCloseTo(least, 2);
  });
});

describe('a printed stop with given densities', () => {
  const design = designs();

  it('has a rising curve with its interval around it, wider than nothing', () => {
    design.curve.forEach(({ crush, force, low, high, wanted }, i) => {
      expect(wanted).toBeNull();
      if (i === 0) return;
      expect(crush).toBeGreaterThan(design.curve[i - 1].crush);
      if (force === null || low === null) throw new Error('a force is missing');
      expect(force).toBeGreaterThan(design.curve[i - 1].force ?? Infinity);
      expect(low).toBeLessThan(force);
      expect(high ?? Infinity).toBeGreaterThan(force);
      // The modulus band alone is 10 to 25 MPa: a factor of 1.58 either way.
      expect(force / low).toBeGreaterThan(1.5);
    });
  });

  it('holds the area under its curve', () => {
    const { energy } = design;
    const { crush, force } = curveOf(design);
    let work = 0;
    for (let i = 1; i < crush.length; i += 1)
      work += ((force[i] + force[i - 1]) / 2) * (crush[i] - crush[i - 1]);
    // Trapezes over ten pieces of a curve that steepens lie a little above.
    expect(energy / work).toBeGreaterThan(0.97);
    expect(energy / work).toBeLessThan(1);
  });

  it('strains its thinnest slice most, short of closing', () => {
    expect(design.strain).toBeLessThan(design.closesAt);
    // The curve ends where the softest slice has gone three quarters of the way.
    expect(design.strain / design.closesAt).toBeCloseTo(0.75, 2);
    expect(design.density).toEqual([0.5, 0.3]);
  });

  it('is harder where it is denser, wider or of a harder filament', () => {
    const first = (change: Partial<StopDesignRequest>): number => {
      const { crush, force } = curveOf(designs(change));
      return force[1] / crush[1];
    };
    const plain = first({});
    expect(first({ density: [0.55, 0.4] })).toBeGreaterThan(plain);
    expect(first({ diameters: [0.07, 0.07] }) / plain).toBeCloseTo((7 / 6) ** 2, 1);
    // Geometric means of the bands: √(25·70) ÷ √(10·25).
    expect(first({ material: 'tpu-95a' }) / plain).toBeCloseTo(Math.sqrt(7), 1);
  });
});

describe('a printed stop for a wanted curve', () => {
  it('gives back a curve that a body in reach has made, within a twentieth of its force', () => {
    const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(share(0.42, 0.58), share(0.3, 0.4), (foot, tip) => {
        const made = designs({ density: [foot, tip], trials: 2 });
        const again = designs({ target: curveOf(made), trials: 2 });
        expect(again.tooSoft?.share ?? 0).toBeLessThan(0.05);
        expect(again.tooHard?.share ?? 0).toBeLessThan(0.05);
        expect(again.doubts).not.toContain('missed');
        for (const density of again.density) {
          expect(density).toBeGreaterThanOrEqual(again.range.least - 1e-9);
          expect(density).toBeLessThanOrEqual(again.range.most + 1e-9);
        }
      }),
      { seed: 2, numRuns: 4 },
    );
  });

  it.each([
    [0.1, 'tooHard', 'edge-soft'],
    [12, 'tooSoft', 'edge-hard'],
  ] as const)('says what it misses of a curve out of reach, %f times as hard', (gain, way, edge) => {
    const again = designs({ target: curveOf(designs(), gain), trials: 4 });
    expect(again[way]?.share).toBeGreaterThan(0.2);
    expect(JSON.stringify(again)).toBe(JSON.stringify(structuredClone(again)));
    expect(again.doubts).toEqual(expect.arrayContaining(['missed', edge]));
  });
});

describe('what is said of a design', () => {
  it('warns of a slender one, of few cells and always of a missing coupon', () => {
    expect(designs({ diameters: [0.04, 0.04], trials: 4 }).doubts).toContain('slender');
    expect(designs({ diameters: [0.025, 0.025], height: 0.03, trials: 4 }).doubts).toContain('few-cells');
    expect(designs({ trials: 4 }).doubts).toEqual(['no-coupon']);
    for (const doubt of DESIGN_DOUBTS) expect(designDoubtText(doubt)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('a design that cannot be', () => {
  const good = curveOf(designs({ trials: 2 }));
  it.each([
    ['of no height', { height: 0 }, 'stop-shape'],
    ['with a bore wider than itself', { bore: 0.07 }, 'stop-shape'],
    ['with walls too thick for its cell', { wall: 0.002 }, 'stop-design-range'],
    ['denser than a lattice is', { density: [0.9, 0.3] }, 'stop-design-range'],
    ['thinner than its walls', { density: [0.5, 0.1] }, 'stop-design-range'],
    [
      'for a curve that falls',
      { target: { crush: [0, 0.01, 0.02, 0.03], force: [0, 500, 400, 900] } },
      'stop-design-target',
    ],
    [
      'for a curve that does not begin at zero',
      { target: { crush: good.crush.slice(1), force: good.force.slice(1) } },
      'stop-design-target',
    ],
    ['for a curve of two points', { target: { crush: [0, 0.02], force: [0, 900] } }, 'stop-design-target'],
    [
      'for a curve longer than the stop',
      { target: { crush: [0, 0.03, 0.06], force: [0, 900, 2000] } },
      'stop-design-target',
    ],
  ])('is refused: %s', (_, change, code) => {
    expect(designStop(ask(change as Partial<StopDesignRequest>))).toMatchObject({
      ok: false,
      problems: [{ code }],
    });
  });
});
