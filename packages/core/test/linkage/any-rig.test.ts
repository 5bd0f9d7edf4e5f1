import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { AxleGeometry, Vector } from '../../src/linkage/geometry.ts';
import { movedPoint } from '../../src/linkage/geometry.ts';
import { geometryProblems } from '../../src/linkage/geometry-problems.ts';
import { poseOf } from '../../src/linkage/pose.ts';
import { KINDS } from './invented.ts';

/** Evenly spread, where the doubles of fast-check crowd about nought. */
const upTo = (most: number) => fc.integer({ min: -1000, max: 1000 }).map((share) => (share * most) / 1000);
const somewhere = fc.array(upTo(0.2), { minLength: 30, maxLength: 30 });
const asked = fc.record({ bump: upTo(1.2), roll: upTo(0.9) });

/** Each joint of the rig somewhere else. */
function shaken(rig: AxleGeometry, by: readonly number[]): AxleGeometry {
  const move = (point: Vector, from: number): Vector => [
    point[0] + by[from],
    point[1] + by[from + 1],
    point[2] + by[from + 2],
  ];
  return {
    ...rig,
    links: rig.links.map(({ id, axle, body }, i) => ({
      id,
      axle: move(axle, 6 * i),
      body: move(body, 6 * i + 3),
    })),
  };
}

test.each(KINDS.map((rig) => [rig.kind, rig] as const))(
  '%s, joints anywhere, asked for anything: a pose that holds, or the links that stop it and how far they went',
  (_, rig) => {
    const seen = { reached: 0, unreachable: 0 };
    fc.assert(
      fc.property(somewhere, asked, (by, { bump, roll }) => {
        const geometry = shaken(rig, by);
        fc.pre(geometryProblems(geometry, { key: 'rear.links', system: 'metric' }).length === 0);
        const result = poseOf(geometry, bump, roll);
        seen[result.status] += 1;
        if (result.status === 'reached') {
          expect(result.pose.residual).toBeLessThan(1e-9);
          geometry.links.forEach(({ axle, body }, i) => {
            const [x, y, z] = movedPoint(result.pose, geometry, axle);
            const now = Math.hypot(x - body[0], y - body[1], z - body[2]);
            const was = Math.hypot(...axle.map((entry, k) => entry - body[k]));
            expect(Math.abs(now - was - result.gives[i].length)).toBeLessThan(1e-9);
          });
          return;
        }
        const { links, gap, ...last } = result.unreachable;
        expect(links.length).toBeGreaterThan(0);
        for (const id of links) expect(geometry.links.map((link) => link.id)).toContain(id);
        expect(gap).toBeGreaterThanOrEqual(0);
        // On the way from ride height to what was asked for, and still reached there.
        expect(last.bump * roll - last.roll * bump).toBeCloseTo(0, 9);
        expect(Math.abs(last.bump)).toBeLessThanOrEqual(Math.abs(bump));
        expect(poseOf(geometry, last.bump * 0.999, last.roll * 0.999).status).toBe('reached');
      }),
      { seed: 4, numRuns: 60 },
    );
    // The test means something only if both happened; leaves reach anything.
    expect(seen.reached).toBeGreaterThan(5);
    if (rig.links.length > 0) expect(seen.unreachable).toBeGreaterThan(5);
  },
);
