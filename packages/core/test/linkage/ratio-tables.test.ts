import { describe, expect, test } from 'vitest';
import { movedPoint } from '../../src/linkage/geometry.ts';
import { poseOf } from '../../src/linkage/pose.ts';
import { ratioTables } from '../../src/linkage/ratio-tables.ts';
import { KINDS, leafPair, threeLink } from './invented.ts';

const range = { bump: 0.12, droop: 0.15, roll: 0.2 };

describe('tables of motion ratios', () => {
  test('a leaning shock over an axle that only goes up and down: the closed form, at every entry', () => {
    const { axle, body } = leafPair.struts['shock-left'] ?? { axle: [0, 0, 0], body: [0, 0, 0] };
    const table = ratioTables(leafPair, range)['shock-left'];
    const side = Math.hypot(axle[0] - body[0], axle[1] - body[1]);
    const up = body[2] - axle[2];
    table?.travel.forEach((travel, i) => {
      const length = Math.hypot(side, up - travel);
      expect(table.compression[i]).toBeCloseTo(Math.hypot(side, up) - length, 12);
      expect(table.ratio[i]).toBeCloseTo((up - travel) / length, 12);
    });
    expect(table?.travel).toHaveLength(41);
    expect(table?.travel[20]).toBe(0);
    expect(table?.compression[20]).toBe(0);
  });

  test('a shock upright between frame and axle counts at its own station', () => {
    const struts = { 'shock-left': { axle: [-2.6, 0.5, 0.42], body: [-2.6, 0.5, 0.9] } } as const;
    const table = ratioTables({ ...leafPair, struts }, range)['shock-left'];
    expect(table?.station).toBeCloseTo(0.5, 12);
    expect(table?.ratio[20]).toBeCloseTo(1, 12);
  });

  test('left and right count at opposite stations of a rig that is even', () => {
    const tables = ratioTables(leafPair, range);
    expect(tables['spring-right']?.station).toBeCloseTo(-(tables['spring-left']?.station ?? 0), 12);
  });

  test('what the tables leave out is no more than they say, at poses between their entries', () => {
    for (const rig of KINDS) {
      const shock = rig.struts['shock-left'];
      const table = ratioTables(rig, range)['shock-left'];
      if (shock === undefined || table === undefined) throw new Error('no shock');
      expect(table.mostOff).toBeGreaterThan(0);
      expect(table.mostOff).toBeLessThan(0.02);
      const ride = Math.hypot(...shock.axle.map((entry, k) => entry - shock.body[k]));
      for (const [bump, roll] of [
        [0.031, 0.103],
        [-0.067, -0.049],
      ]) {
        const result = poseOf(rig, bump, roll);
        if (result.status !== 'reached') throw new Error('not reached');
        const moved = movedPoint(result.pose, rig, shock.axle);
        const closed = ride - Math.hypot(...moved.map((entry, k) => entry - shock.body[k]));
        const travel = bump + table.station * roll;
        const k = table.travel.findIndex((entry) => entry > travel);
        const share = (travel - table.travel[k - 1]) / (table.travel[k] - table.travel[k - 1]);
        const said = (1 - share) * table.compression[k - 1] + share * table.compression[k];
        // Read off by a straight line: the bend of the table over 7 mm is below 0.1 mm.
        expect(Math.abs(said - closed)).toBeLessThan(table.mostOff + 1e-4);
      }
    }
  });

  test('where links reach no farther the table ends', () => {
    const links = threeLink.links.map((link) =>
      link.id === 'panhard'
        ? ({ id: 'panhard', axle: [-2.6, -0.08, 0.5], body: [-2.6, 0.12, 0.5] } as const)
        : link,
    );
    const table = ratioTables({ ...threeLink, links }, { bump: 0.4, droop: 0.1, roll: 0 })['spring-left'];
    expect(table?.travel.at(-1)).toBeCloseTo(0.18, 12);
    expect(table?.roll).toEqual([0]);
  });
});
