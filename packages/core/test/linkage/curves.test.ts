import { describe, expect, test } from 'vitest';
import { curvesOf } from '../../src/linkage/curves.ts';
import type { AxleCurves, CurveOptions } from '../../src/linkage/curves-result.ts';
import type { AxleGeometry, Link, StrutId, Vector } from '../../src/linkage/geometry.ts';
import { movedPoint } from '../../src/linkage/geometry.ts';
import { poseOf } from '../../src/linkage/pose.ts';
import { KINDS, radiusArms, threeLink, triangulated } from './invented.ts';

const grid: CurveOptions = {
  bumps: [-0.15, -0.07, 0, 0.06, 0.12],
  rolls: [-0.25, -0.1, 0, 0.12, 0.25],
  end: 'rear',
  anti: { wheelbase: 2.7, cgHeight: 0.75, driveShare: 1, brakeShare: 0.4 },
};
const here: CurveOptions = { ...grid, bumps: [0], rolls: [0] };
const kinds = KINDS.map((rig) => [rig.kind, rig] as const);

const at = (rig: AxleGeometry, bump: number, roll: number, point: Vector): Vector => {
  const result = poseOf(rig, bump, roll);
  if (result.status !== 'reached') throw new Error('not reached');
  return movedPoint(result.pose, rig, point);
};

/** Central difference of fourth order. */
const slope = (of: (x: number) => number, x: number, h: number) =>
  (8 * (of(x + h) - of(x - h)) - (of(x + 2 * h) - of(x - 2 * h))) / (12 * h);
const H = 1e-3;

describe('drawn by hand', () => {
  // Side view of check-values: lower (0.05, 0.25)→(1.10, 0.35), upper (−0.05, 0.62)→(0.85, 0.56) from the contact patch.
  const x0 = -2.7;
  const drawn: AxleGeometry = {
    ...threeLink,
    centre: [x0, 0, 0.4],
    tyreRadius: 0.4,
    links: [
      ...[0.45, -0.45].map(
        (y): Link => ({
          id: y > 0 ? 'lower-left' : 'lower-right',
          axle: [x0 + 0.05, y, 0.25],
          body: [x0 + 1.1, y, 0.35],
        }),
      ),
      { id: 'upper', axle: [x0 - 0.05, 0, 0.62], body: [x0 + 0.85, 0, 0.56] },
      { id: 'panhard', axle: [x0, 0.5, 0.5], body: [x0, -0.55, 0.5] },
    ],
  };

  test('instant centre and anti-squat are those of the drawing: 72.7692 %', () => {
    const curves = curvesOf(drawn, here);
    expect(curves.instantX[0] - x0).toBeCloseTo(2.294118, 6);
    expect(curves.instantZ[0]).toBeCloseTo(0.463725, 6);
    expect(curves.antiSlope[0]).toBeCloseTo(0.202137, 6);
    expect(curves.antiDrive?.[0]).toBeCloseTo(0.727692, 6);
  });

  test('an inclined Panhard puts the roll centre where it crosses the centre plane: 0.557143 m', () => {
    const links = drawn.links.map(
      (link): Link =>
        link.id === 'panhard' ? { id: 'panhard', axle: [x0, 0.5, 0.5], body: [x0, -0.55, 0.62] } : link,
    );
    const { rollCentreZ, rollCentreHeight } = curvesOf({ ...drawn, links }, here);
    expect(rollCentreZ[0]).toBeCloseTo(0.557143, 6);
    expect(rollCentreHeight[0]).toBeCloseTo(0.557143, 6);
  });

  test('a triangulated axle rolls about the line through its two apexes', () => {
    const apex = ({ axle, body }: Link) => {
      const share = axle[1] / (axle[1] - body[1]);
      return { x: axle[0] + share * (body[0] - axle[0]), z: axle[2] + share * (body[2] - axle[2]) };
    };
    const lower = apex(triangulated.links[0]);
    const upper = apex(triangulated.links[2]);
    const rise = (upper.z - lower.z) / (upper.x - lower.x);
    const curves = curvesOf(triangulated, here);
    expect(curves.rollAxisRise[0]).toBeCloseTo(rise, 10);
    expect(curves.rollCentreZ[0]).toBeCloseTo(lower.z + rise * (triangulated.centre[0] - lower.x), 10);
    // Roll steer of a solid axle is the rise of its roll axis.
    expect(curves.rollSteer[0]).toBeCloseTo(rise, 10);
  });

  test('radius arms: the instant centre of heave is the line of their body joints', () => {
    // A level Panhard across pushes nothing at ride height.
    const links = radiusArms.links.map(
      (link): Link =>
        link.id === 'panhard' ? { ...link, body: [link.body[0], link.body[1], link.axle[2]] } : link,
    );
    const curves = curvesOf({ ...radiusArms, links }, here);
    expect(curves.instantX[0]).toBeCloseTo(radiusArms.links[0].body[0], 10);
    expect(curves.instantZ[0]).toBeCloseTo(radiusArms.links[0].body[2], 10);
  });
});

describe('small motion is the derivative', () => {
  test.each(kinds)('%s: steer, patch and roll centre at every pose of a grid', (_, rig) => {
    const curves = curvesOf(rig, grid);
    const heading = (bump: number, roll: number) => {
      const left = at(rig, bump, roll, [rig.centre[0], 1, rig.centre[2]]);
      const middle = at(rig, bump, roll, rig.centre);
      return Math.atan2(-(left[0] - middle[0]), left[1] - middle[1]);
    };
    each(curves, (bump, roll, k) => {
      expect(curves.steer[k]).toBeCloseTo(heading(bump, roll), 11);
      expect(curves.bumpSteer[k]).toBeCloseTo(
        slope((b) => heading(b, roll), bump, H),
        8,
      );
      expect(curves.rollSteer[k]).toBeCloseTo(
        slope((r) => heading(bump, r), roll, H),
        8,
      );
      // The contact patch of this pose: straight below the hub line's middle, locked to the axle from here on.
      const centre = at(rig, bump, roll, rig.centre);
      const here3 = [centre[0], centre[1], centre[2] - rig.tyreRadius] as const;
      const patch = carried(rig, bump, roll, here3);
      const forward = slope((b) => at(rig, b, roll, patch)[0], bump, H);
      expect(curves.antiSlope[k]).toBeCloseTo(-forward, 8);
      // The roll centre of this pose does not move sideways in roll.
      const rollCentre = carried(rig, bump, roll, [centre[0], 0, curves.rollCentreZ[k]]);
      expect(slope((r) => at(rig, bump, r, rollCentre)[1], roll, H)).toBeCloseTo(0, 8);
      // Nor does any other point of its roll axis.
      const ahead = [centre[0] + 0.7, 0, curves.rollCentreZ[k] + 0.7 * curves.rollAxisRise[k]] as const;
      const onAxis = carried(rig, bump, roll, ahead);
      expect(slope((r) => at(rig, bump, r, onAxis)[1], roll, H)).toBeCloseTo(0, 8);
    });
  });

  test.each(kinds)('%s: motion ratios of every strut', (_, rig) => {
    const curves = curvesOf(rig, grid);
    for (const [id, strut] of Object.entries(rig.struts)) {
      const closed = (bump: number, roll: number) => {
        const [x, y, z] = at(rig, bump, roll, strut.axle);
        if (id.startsWith('stop')) return z - strut.body[2];
        return -Math.hypot(x - strut.body[0], y - strut.body[1], z - strut.body[2]);
      };
      const followed = curves.struts[id as StrutId];
      if (followed === undefined) throw new Error(id);
      each(curves, (bump, roll, k) => {
        expect(followed.length[k]).toBeCloseTo(-closed(bump, roll), 11);
        expect(followed.byBump[k]).toBeCloseTo(
          slope((b) => closed(b, roll), bump, H),
          8,
        );
        expect(followed.byRoll[k]).toBeCloseTo(
          slope((r) => closed(bump, r), roll, H),
          8,
        );
      });
    }
  });

  test.each(kinds)('%s: work put in by a spring is work taken out at the axle', (_, rig) => {
    // A spring of 40 kN/m from bump −0.1 to 0.1: ∫ force·ratio d(bump) is its stored work. Gauss with five points in
    // each of four parts: of order ten, so its own error is some 1e-6 of the 3e-8 that one part alone leaves.
    const nodes = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
    const gauss = [
      0.23692688505618908, 0.47862867049936647, 0.5688888888888889, 0.47862867049936647, 0.23692688505618908,
    ];
    const parts = [-0.075, -0.025, 0.025, 0.075];
    const bumps = parts.flatMap((middle) => nodes.map((node) => middle + 0.025 * node));
    const weights = parts.flatMap(() => gauss.map((weight) => weight / 4));
    const { struts } = curvesOf(rig, { ...grid, bumps, rolls: [0.1] });
    const spring = struts['spring-left'];
    const ends = curvesOf(rig, { ...grid, bumps: [-0.1, 0.1], rolls: [0.1] }).struts['spring-left'];
    if (spring === undefined || ends === undefined) throw new Error('no spring');
    const free = 0.5;
    const rate = 40e3;
    const work = weights.reduce(
      (sum, weight, i) => sum + 0.1 * weight * rate * (free - spring.length[i]) * spring.byBump[i],
      0,
    );
    const stored = ([low, high]: Float64Array) => (rate * ((free - high) ** 2 - (free - low) ** 2)) / 2;
    expect(work / stored(ends.length)).toBeCloseTo(1, 9);
  });
});

test('a mirrored axle has mirrored curves', () => {
  const flip = ([x, y, z]: Vector): Vector => [x, -y, z];
  for (const rig of KINDS) {
    const other = (id: string) =>
      id.replace('left', 'RIGHT').replace('right', 'left').replace('RIGHT', 'right');
    const mirrored: AxleGeometry = {
      ...rig,
      links: rig.links.map(({ id, axle, body }) => ({ id: other(id), axle: flip(axle), body: flip(body) })),
    };
    const a = curvesOf(rig, { ...grid, rolls: [-0.2, 0.2] });
    const b = curvesOf(mirrored, { ...grid, rolls: [-0.2, 0.2] });
    a.bumps.forEach((_, i) => {
      expect(b.sideways[2 * i]).toBeCloseTo(-a.sideways[2 * i + 1], 11);
      expect(b.steer[2 * i]).toBeCloseTo(-a.steer[2 * i + 1], 11);
      expect(b.rollCentreZ[2 * i]).toBeCloseTo(a.rollCentreZ[2 * i + 1], 10);
      expect(b.antiSlope[2 * i]).toBeCloseTo(a.antiSlope[2 * i + 1], 10);
      expect(b.struts['shock-left']?.byBump[2 * i]).toBeCloseTo(
        a.struts['shock-right']?.byBump[2 * i + 1] ?? 0,
        10,
      );
    });
  }
});

test('front and rear differ in the sign of pinion and anti alone', () => {
  const rear = curvesOf(threeLink, grid);
  const front = curvesOf(threeLink, { ...grid, end: 'front' });
  front.pinion.forEach((turn, k) => {
    expect(turn).toBe(-rear.pinion[k]);
    expect(turn).toBe(-front.caster[k]);
    expect(front.antiSlope[k]).toBe(-rear.antiSlope[k]);
    expect(front.rollCentreZ[k]).toBe(rear.rollCentreZ[k]);
  });
});

describe('drag link', () => {
  const box = { body: [-2.75, 0.42, 0.6], axle: [-2.75, -0.6, 0.52], arm: -0.15 } as const;

  test('a drag link that mirrors the Panhard in length and slope does not steer in bump', () => {
    const links = threeLink.links.map(
      (link): Link => (link.id === 'panhard' ? { id: 'panhard', axle: box.axle, body: box.body } : link),
    );
    // Level links as long as a street: no wind-up that would turn the ball by itself.
    const long = links.map(
      (link): Link =>
        link.id === 'panhard' ? link : { ...link, body: [link.axle[0] + 800, link.axle[1], link.axle[2]] },
    );
    const { wheelSteer, sideways } = curvesOf(
      { ...threeLink, links: long },
      { ...grid, rolls: [0], dragLink: box },
    );
    expect(Math.abs(sideways[0])).toBeGreaterThan(0.01);
    wheelSteer?.forEach((steer) => {
      expect(Math.abs(steer)).toBeLessThan(1e-6);
    });
  });

  test('otherwise the wheels turn by the difference of the two arcs over the steering arm', () => {
    // Guided straight up, so that only the drag link's own arc is left: closed form with sin and cos of the knuckle.
    const guided: AxleGeometry = { ...threeLink, kind: 'leaf', links: [] };
    const bumps = [-0.12, -0.05, 0.05, 0.12];
    const { wheelSteer } = curvesOf(guided, { ...grid, bumps, rolls: [0], dragLink: box });
    const across = box.axle[1] - box.body[1];
    const rise = box.axle[2] - box.body[2];
    const length = Math.hypot(across, rise);
    bumps.forEach((bump, i) => {
      const steer = wheelSteer?.[i] ?? Number.NaN;
      // Ball: arm·cos back from the axis, arm·sin sideways; its fore-and-aft move is arm·(1 − cos).
      const sideways = box.arm * Math.sin(steer);
      const back = box.arm * (Math.cos(steer) - 1);
      expect(Math.hypot(back, across + sideways, rise + bump)).toBeCloseTo(length, 12);
      // To first order: the arc of the link over the arm.
      const arc = -Math.sqrt(length ** 2 - (rise + bump) ** 2) - across;
      expect(steer).toBeCloseTo(arc / box.arm, 2);
      expect(Math.sign(steer)).toBe(Math.sign(arc / box.arm));
    });
  });
});

test('poses out of reach are holes that say why, and the rest stands', () => {
  const short = threeLink.links.map(
    (link): Link =>
      link.id === 'panhard' ? { id: 'panhard', axle: [-2.6, -0.08, 0.5], body: [-2.6, 0.12, 0.5] } : link,
  );
  const curves = curvesOf(
    { ...threeLink, links: short },
    { ...grid, bumps: [-0.3, -0.1, 0, 0.1, 0.3], rolls: [0] },
  );
  expect([...curves.reached]).toEqual([0, 1, 1, 1, 0]);
  expect(curves.steer[0]).toBeNaN();
  expect(curves.steer[1]).not.toBeNaN();
  expect(curves.unreachable?.links).toEqual(['panhard']);
  expect(structuredClone(curves)).toEqual(curves);
});

function each(curves: AxleCurves, of: (bump: number, roll: number, k: number) => void): void {
  curves.bumps.forEach((bump, i) => {
    curves.rolls.forEach((roll, j) => {
      of(bump, roll, i * curves.rolls.length + j);
    });
  });
}

/** The point of the axle, as measured at ride height, that stands at this place of the body in the pose. */
function carried(rig: AxleGeometry, bump: number, roll: number, place: Vector): Vector {
  const result = poseOf(rig, bump, roll);
  if (result.status !== 'reached') throw new Error('not reached');
  const { shift, rotation: r } = result.pose;
  const d = place.map((entry, k) => entry - rig.centre[k] - shift[k]);
  const back = [0, 1, 2].map((k) => r[k] * d[0] + r[3 + k] * d[1] + r[6 + k] * d[2] + rig.centre[k]);
  return [back[0], back[1], back[2]];
}
