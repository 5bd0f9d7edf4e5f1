import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendAllowance } from '../../src/plates/flat-pattern.ts';
import { gussetPlate, padPlate, standoffPlate, topPlate } from '../../src/plates/kinds.ts';
import { arcOf, type Outline, outlineArea, outlineLength, roundedOutline } from '../../src/plates/outline.ts';
import { cutLength, plateArea, plateCut, plateMass } from '../../src/plates/plate.ts';
import { plateDoubts, plateProblems } from '../../src/plates/sound.ts';

const INCH = 0.0254;
const size = fc.double({ min: 0.03, max: 0.3, noNaN: true });
const small = fc.double({ min: 0, max: 0.012, noNaN: true });

/** Points along a contour, close together: an own way round it, not through its area formula. */
function walked(outline: Outline, steps = 400): readonly { x: number; y: number }[] {
  return outline.flatMap(({ x, y, bulge }, k) => {
    const next = outline[(k + 1) % outline.length]!;
    if (bulge === 0) return [{ x, y }];
    const chord = Math.hypot(next.x - x, next.y - y);
    const { radius, angle } = arcOf(chord, bulge);
    const middle = Math.atan2(next.y - y, next.x - x) + Math.PI / 2;
    const off = radius * Math.cos(angle / 2) * Math.sign(bulge);
    const [cx, cy] = [(x + next.x) / 2 + off * Math.cos(middle), (y + next.y) / 2 + off * Math.sin(middle)];
    const from = Math.atan2(y - cy, x - cx);
    return Array.from({ length: steps }, (_, i) => {
      const at = from + (angle * i) / steps;
      return { x: cx + radius * Math.cos(at), y: cy + radius * Math.sin(at) };
    });
  });
}
/** Area of a polygon. @source Gauss's area formula */
const shoelace = (points: readonly { x: number; y: number }[]): number =>
  points.reduce((sum, { x, y }, k) => {
    const next = points[(k + 1) % points.length]!;
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);

describe('a contour', () => {
  it('of a rounded rectangle has the area and the way round of the closed forms', () => {
    const plate = topPlate({ length: 0.1, width: 0.06, thickness: 0.006, radius: 0.01 }, 0, null);
    // Area l·w − (4 − π)·r², way round 2(l + w) − (8 − 2π)·r: plane geometry.
    expect(plateArea(plate)).toBeCloseTo(0.1 * 0.06 - (4 - Math.PI) * 0.01 ** 2, 12);
    expect(cutLength(plate, 0)).toBeCloseTo(2 * 0.16 - (8 - 2 * Math.PI) * 0.01, 12);
  });

  it('of a round pad is a circle', () => {
    const pad = padPlate({ length: 0.08, width: 0.08, thickness: 0.01, radius: 0.04 }, 0);
    expect(plateArea(pad)).toBeCloseTo(Math.PI * 0.04 ** 2, 12);
    expect(cutLength(pad, 0)).toBeCloseTo(2 * Math.PI * 0.04, 12);
    expect(plateMass(pad)).toBeCloseTo(Math.PI * 0.04 ** 2 * 0.01 * 7850, 9);
  });

  it('encloses what a walk along it encloses, arcs inward and outward', () => {
    const notched = [
      { x: 0, y: 0, radius: 0.01 },
      { x: 0.2, y: 0, radius: 0 },
      { x: 0.2, y: 0.1, radius: 0.02 },
      { x: 0.1, y: 0.1, radius: 0.005 },
      { x: 0.1, y: 0.05, radius: 0.015 },
      { x: 0, y: 0.05, radius: 0.004 },
    ];
    for (const grow of [0, 0.002, -0.002]) {
      const outline = roundedOutline(notched, grow);
      expect(outlineArea(outline)).toBeCloseTo(shoelace(walked(outline)), 7);
    }
  });

  it('grown by d has the area A + P·d + π·d² (Steiner), whatever its corners', () => {
    fc.assert(
      fc.property(
        size,
        size,
        small,
        fc.double({ min: 1e-5, max: 0.003, noNaN: true }),
        (foot, height, toe, grow) => {
          const { corners } = gussetPlate({ foot, height, thickness: 0.006, toe: toe + 0.004, relief: 0.01 });
          const [plain, grown] = [roundedOutline(corners), roundedOutline(corners, grow)];
          const steiner = outlineArea(plain) + outlineLength(plain) * grow + Math.PI * grow ** 2;
          expect(outlineArea(grown)).toBeCloseTo(steiner, 10);
        },
      ),
      { seed: 71, numRuns: 200 },
    );
  });
});

describe('the cut', () => {
  const top = topPlate({ length: 0.1, width: 0.08, thickness: 0.006, radius: 0.01 }, 0.012, {
    diameter: 0.01,
    along: 0.07,
    across: 0.05,
    slot: 0.016,
  });

  it('runs half a kerf outside the plate and inside its holes, so that what is left is the plate', () => {
    const kerf = 0.0012;
    const { outside, holes } = plateCut(top, kerf);
    expect(Math.max(...outside.map(({ x }) => x))).toBeCloseTo(0.05 + kerf / 2, 12);
    const [stud, ...bolts] = holes;
    expect(stud).toMatchObject({ kind: 'round' });
    expect(stud?.kind === 'round' && stud.radius).toBeCloseTo((0.012 - kerf) / 2, 12);
    for (const bolt of bolts) {
      // A slot: rectangle and two half circles.
      const [wide, long] = [0.01 - kerf, 0.016 - kerf];
      expect(bolt.kind === 'slot' && outlineArea(bolt.outline)).toBeCloseTo(
        (long - wide) * wide + (Math.PI * wide ** 2) / 4,
        12,
      );
    }
  });

  it('takes holes out of area and mass', () => {
    const slot = 0.006 * 0.01 + (Math.PI * 0.01 ** 2) / 4;
    const whole = 0.1 * 0.08 - (4 - Math.PI) * 0.01 ** 2;
    expect(plateArea(top)).toBeCloseTo(whole - (Math.PI * 0.012 ** 2) / 4 - 4 * slot, 12);
  });
});

describe('a bend', () => {
  it('of 90 degrees agrees with the shop formula 1.57·R + 0.64·T for soft steel within an eighth of the thickness', () => {
    // Machinery's Handbook, length of stock for 90 degree bends, half-hard brass, soft steel; from memory.
    for (const ratio of [1, 1.5, 2, 3, 4])
      expect(Math.abs(bendAllowance(Math.PI / 2, ratio, 1) - (1.57 * ratio + 0.64))).toBeLessThan(0.135);
  });

  it('has the length of its neutral line: in the middle of the plate for wide bends', () => {
    expect(bendAllowance(Math.PI / 2, 0.05, 0.005)).toBeCloseTo((Math.PI / 2) * (0.05 + 0.0025), 12);
  });

  it('brings a standoff back to its outside sizes when folded', () => {
    const [thickness, insideRadius, web, flange] = [0.005, 0.006, 0.08, 0.04];
    const plate = standoffPlate({ length: 0.1, web, flange, thickness, insideRadius }, 0.012);
    const flat = Math.max(...plate.corners.map(({ y }) => y)) * 2;
    const arc = bendAllowance(Math.PI / 2, insideRadius, thickness);
    const straight = flat - 2 * arc;
    // Straight parts and two setbacks each side make the outside sizes.
    expect(straight + 4 * (insideRadius + thickness)).toBeCloseTo(web + 2 * flange, 12);
    expect(plate.bends[1]!.y1 - plate.bends[0]!.y1).toBeCloseTo(
      web - 2 * (insideRadius + thickness) + arc,
      12,
    );
  });
});

describe('what cannot be cut is a problem', () => {
  const good = { length: 4 * INCH, width: 3 * INCH, thickness: INCH / 4, radius: INCH / 4 };
  it.each([
    ['corners that overlap', topPlate({ ...good, radius: 2 * INCH }, 0, null), 0, 'radius'],
    ['a stud hole over the edge', topPlate(good, 3 * INCH, null), 0, 'stud'],
    [
      'a bolt hole over the edge',
      topPlate(good, 0, { diameter: INCH / 2, along: 3.7 * INCH, across: 2 * INCH, slot: 0 }),
      0,
      'bolt',
    ],
    ['a hole narrower than the cut', topPlate(good, 0.001, null), 0.0015, 'stud'],
    ['no thickness', topPlate({ ...good, thickness: 0 }, 0, null), 0, 'thickness'],
    [
      'a flange within its bend',
      standoffPlate({ length: 0.1, web: 0.08, flange: 0.008, thickness: 0.005, insideRadius: 0.006 }, 0),
      0,
      'flange',
    ],
    [
      'bends that overlap',
      standoffPlate({ length: 0.1, web: 0.012, flange: 0.05, thickness: 0.005, insideRadius: 0.01 }, 0),
      0,
      'web',
    ],
  ])('%s', (_what, plate, kerf, key) => {
    expect(plateProblems(plate, kerf).map(({ where }) => where.key)).toContain(key);
  });

  it('and a sound one none', () => {
    const sound = topPlate(good, INCH / 2, {
      diameter: (3 * INCH) / 8,
      along: 3 * INCH,
      across: 2 * INCH,
      slot: 0,
    });
    expect(plateProblems(sound, 0.0012)).toEqual([]);
    expect(plateDoubts(sound)).toEqual([]);
  });

  it('names thin edges, close holes and tight bends as doubts', () => {
    const thin = topPlate(good, 0, { diameter: INCH / 2, along: 3.2 * INCH, across: 0.6 * INCH, slot: 0 });
    expect(plateDoubts(thin)).toEqual(expect.arrayContaining(['edge-thin', 'holes-close']));
    const tight = standoffPlate(
      { length: 0.1, web: 0.08, flange: 0.05, thickness: 0.006, insideRadius: 0.003 },
      0,
    );
    expect(plateDoubts(tight)).toEqual(['bend-length', 'bend-tight']);
  });
});
