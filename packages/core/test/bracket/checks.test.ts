import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BRACKET_CHANGES, type BracketChange, changed } from '../../src/bracket/changes.ts';
import { type BracketPart, bentBy, bracketChecks } from '../../src/bracket/checks.ts';
import type { BracketMeasures } from '../../src/bracket/measures.ts';

const SEED = { seed: 7, numRuns: 200 };
const length = (from: number, to: number) => fc.double({ min: from, max: to, noNaN: true });

const towers: fc.Arbitrary<BracketMeasures> = fc
  .record({
    standoff: length(0.04, 0.2),
    offset: length(0, 0.01),
    width: length(0.04, 0.08),
    depth: length(0.04, 0.08),
    wall: length(0.002, 0.006),
    hasGusset: fc.boolean(),
    leg: length(0.003, 0.008),
    kind: fc.constantFrom('tower', 'bolt-on', 'tube'),
  })
  .map(
    ({ standoff, offset, width, depth, wall, hasGusset, leg, kind }): BracketMeasures => ({
      kind,
      standoff,
      offset,
      section: { shape: 'box', width, depth, wall },
      gusset:
        hasGusset && kind !== 'tube'
          ? { thickness: 0.004, count: 2, reach: standoff / 2, height: depth / 2 }
          : null,
      plate: { edges: [0.12, 0.15], isRound: false, thickness: 0.006, pad: 0.05 },
      weldLeg: leg,
      bolts:
        kind === 'bolt-on'
          ? { thread: 'M10', grade: '8.8', count: 4, spread: 0.06, wall: 0.004, edge: 0.02 }
          : null,
      stud: { thread: '3/8-16', grade: 'grade 5', engaged: 0.01 },
      yield: 250e6,
      ultimate: 400e6,
    }),
  );

const loads = fc.record({ force: length(1e3, 4e4), sideways: length(0, 5e3) });

const factorOf = (bracket: BracketMeasures, load: { force: number; sideways: number }, part: BracketPart) =>
  bracketChecks(bracket, load).find((check) => check.part === part)?.factor ?? Number.NaN;

describe('every way in which a bracket can give way', () => {
  it('has a factor above zero, and what it bears over what it carries where both are told', () => {
    fc.assert(
      fc.property(towers, loads, (bracket, load) => {
        for (const { factor, carries, bears, part } of bracketChecks(bracket, load)) {
          expect(factor, part).toBeGreaterThanOrEqual(0);
          if (carries !== null && bears !== null && part !== 'bolts')
            expect(factor, part).toBeCloseTo(bears / carries, 9);
        }
      }),
      SEED,
    );
  });

  it('halves when the load doubles; a pressed tube loses more, its nut nothing', () => {
    fc.assert(
      fc.property(towers, loads, (bracket, load) => {
        const twice = { force: 2 * load.force, sideways: 2 * load.sideways };
        const after = bracketChecks(bracket, twice);
        for (const [i, before] of bracketChecks(bracket, load).entries()) {
          const ratio = after[i].factor / before.factor;
          if (before.part === 'stud-strip') expect(ratio).toBe(1);
          else if (before.part === 'strut-bending')
            expect(after[i].factor).toBeLessThanOrEqual(before.factor / 2);
          else expect(ratio, before.part).toBeCloseTo(0.5, 9);
        }
      }),
      SEED,
    );
  });

  /** Gussets make it stiffer, but their edge may yield before a stout tube does: below. */
  const BETTER: Readonly<Record<Exclude<BracketChange, 'add-gussets'>, BracketPart>> = {
    'thicker-wall': 'beam-shear',
    'deeper-section': 'beam-shear',
    'taller-gussets': 'weld',
    'shorter-standoff': 'beam-bending',
    'thicker-plate': 'plate-bending',
    'larger-weld': 'weld',
    'wider-bolts': 'bolts',
  };

  it.each(BRACKET_CHANGES.filter((change) => change !== 'add-gussets'))(
    '%s makes nothing weaker of what it is for',
    (change) => {
      fc.assert(
        fc.property(towers, loads, (bracket, load) => {
          fc.pre(bracket.kind !== 'tube');
          const other = changed(bracket, change);
          if (other === null) return;
          const [before, after] = [bracket, other].map((one) => factorOf(one, load, BETTER[change]));
          expect(after).toBeGreaterThanOrEqual(before * (1 - 1e-9));
        }),
        SEED,
      );
    },
  );

  it('bends no further with gussets than without', () => {
    fc.assert(
      fc.property(towers, (bracket) => {
        const other = changed(bracket, 'add-gussets');
        if (other === null) return;
        const [before, after] = [bracket, other].map((one) => bentBy(one, 1e3)?.deflection ?? Number.NaN);
        expect(after).toBeLessThan(before);
      }),
      SEED,
    );
  });
});

it('a part that was not told has no factor', () => {
  const bare: BracketMeasures = {
    kind: 'tower',
    standoff: 0.1,
    offset: 0,
    section: { shape: 'round', diameter: 0.05, wall: 0.003 },
    gusset: null,
    plate: null,
    weldLeg: null,
    bolts: null,
    stud: null,
    yield: 250e6,
    ultimate: 400e6,
  };
  const parts = bracketChecks(bare, { force: 1e4, sideways: 0 }).map(({ part }) => part);
  expect(parts).toEqual(['beam-bending', 'beam-shear']);
});
