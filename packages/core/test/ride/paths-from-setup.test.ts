import { describe, expect, it } from 'vitest';
import { linksOf } from '../../src/linkage/from-setup.ts';
import { ratioTables } from '../../src/linkage/ratio-tables.ts';
import { cubicBySlopes, cubicValue } from '../../src/numerics/monotone-cubic.ts';
import { rideModels } from '../../src/ride/from-setup.ts';
import { knownPaths, pathsOf } from '../../src/ride/paths-from-setup.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { NOMINAL_DRAWS } from '../../src/stance/draws.ts';
import { must, ochre } from '../jobs/ochre.ts';

const setup = must(resolveSetup(ochre, 'as-it-is'));

describe('the paths of a rig whose links and mounts were measured', () => {
  it('start at ride height, rise, and are those of the links', () => {
    const links = must(linksOf(setup, { lift: { front: 0, rear: 0 } }));
    const paths = pathsOf(setup);
    for (const end of ['front', 'rear'] as const) {
      const geometry = links.ends[end]?.geometry;
      if (!geometry) throw new Error('the demo lost its links');
      const tables = ratioTables(geometry, { bump: 0.25, droop: 0.25, roll: 0 });
      for (const element of ['spring', 'shock', 'stop'] as const) {
        const path = paths[end][element];
        const [left, right] = [tables[`${element}-left`], tables[`${element}-right`]];
        if (!path || !left || !right) throw new Error('the demo lost a mount');
        const { travel, compression, ratio } = path;
        expect(compression[travel.indexOf(0)]).toBe(0);
        for (let k = 1; k < travel.length; k += 1) expect(compression[k]).toBeGreaterThan(compression[k - 1]);
        const cubic = cubicBySlopes(travel, compression, ratio);
        left.travel.forEach((place, k) => {
          if (place < travel[0] || place > travel[travel.length - 1]) return;
          const both = (left.compression[k] + right.compression[right.travel.indexOf(place)]) / 2;
          expect(Math.abs(cubicValue(cubic, place) - both)).toBeLessThan(1e-9);
        });
      }
    }
  });

  it('are what the ride follows, and the answer says so', () => {
    expect(knownPaths(setup)).toEqual({
      front: ['spring', 'shock', 'stop'],
      rear: ['spring', 'shock', 'stop'],
    });
    const { front } = rideModels(setup, NOMINAL_DRAWS)(0).axles;
    expect(front.shock.path).toBeDefined();
    expect(front.shock.ratio).toBe(front.shock.path?.ratio[front.shock.path.travel.indexOf(0)]);
  });

  it('are none without links: the typed ratios hold', () => {
    const bare = {
      ...ochre,
      front: { ...ochre.front, points: { ...ochre.front.points, linkage: null } },
    };
    const resolved = must(resolveSetup(bare, 'as-it-is'));
    expect(knownPaths(resolved).front).toEqual([]);
    const { front } = rideModels(resolved, NOMINAL_DRAWS)(0).axles;
    expect(front.shock.path).toBeUndefined();
    expect(front.shock.ratio).toBe(ochre.front.shock.ratio.value);
  });
});
