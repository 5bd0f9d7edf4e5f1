import { describe, expect, test } from 'vitest';
import { gapsAt } from '../../src/travel/pose.ts';
import { changed, reading, rigOf, setupOf } from './typed-rig.ts';

const setup = setupOf(
  rigOf({
    front: {
      contacts: { bar: { gap: 0.084, ratio: 0.7 } },
      gap: 0.054,
      stopRatio: 0.9,
      crush: 0.036,
      coil: { ride: 0.3, solid: 0.2, free: 0.4 },
      springSpread: 0.9,
      shock: { ride: 0.5, closed: 0.4, open: 0.6 },
      shaft: 0.11,
    },
  }),
);
const left = (side: { contacts: readonly { id: string; left: number }[] }, id: string) =>
  side.contacts.find((contact) => contact.id === id)!.left;

describe('T22: gaps in a pose', () => {
  test('at ride height they are those of the column', () => {
    const { left: side, right } = gapsAt(setup, 'front', { heave: 0, roll: 0 });
    expect(side).toEqual(right);
    expect(side.stopGap).toBeCloseTo(0.06, 12);
    expect(side.stopCrush).toBe(0);
    expect(left(side, 'bar')).toBeCloseTo(0.12, 12);
    expect(side.contacts.find(({ id }) => id === 'bar')!.gap).toBeCloseTo(0.084, 12);
    expect(left(side, 'coil')).toBeCloseTo(0.1, 12);
    expect(side.droop.map(({ id, left: rest }) => [id, Number(rest.toFixed(9))])).toEqual([
      ['shock', 0.1],
      ['spring', 0.1],
      ['shaft', 0.11],
    ]);
  });

  test('in bump the stop touches, is crushed along its own line, and is used up', () => {
    const crushed = gapsAt(setup, 'front', { heave: 0.08, roll: 0 }).left;
    expect(crushed.stopGap).toBe(0);
    expect(crushed.stopCrush).toBeCloseTo(0.02 * 0.9, 12);
    expect(crushed.stopUsedUp).toBe(false);
    expect(left(crushed, 'bar')).toBeCloseTo(0.04, 12);
    expect(gapsAt(setup, 'front', { heave: 0.101, roll: 0 }).left.stopUsedUp).toBe(true);
  });

  test('in droop the room below shrinks one for one, past the limit it is negative', () => {
    const down = gapsAt(setup, 'front', { heave: -0.105, roll: 0 }).left;
    expect(down.droop.find(({ id }) => id === 'shaft')!.left).toBeCloseTo(0.005, 12);
    expect(down.droop.find(({ id }) => id === 'shock')!.left).toBeCloseTo(-0.005, 12);
  });

  test('body rolled right side down: bump at the right, droop at the left, each point by its own station', () => {
    const roll = 0.05;
    const { left: l, right: r } = gapsAt(setup, 'front', { heave: 0.01, roll });
    // Stops 0.88 m, springs 0.9 m, shocks 1.1 m apart.
    expect(r.travel).toBeCloseTo(0.01 + roll * 0.44, 12);
    expect(l.travel).toBeCloseTo(0.01 - roll * 0.44, 12);
    expect(left(r, 'coil')).toBeCloseTo(0.1 - (0.01 + roll * 0.45), 12);
    expect(left(r, 'shock')).toBeCloseTo(0.1 - (0.01 + roll * 0.55), 12);
    expect(l.droop.find(({ id }) => id === 'shock')!.left).toBeCloseTo(0.1 + 0.01 - roll * 0.55, 12);
    expect(l.droop.find(({ id }) => id === 'shaft')!.left).toBeCloseTo(0.12, 12);
  });

  test('a setup moves its gaps as it moves its column', () => {
    const dropped = changed({}, { seatAndStopDrop: reading('setups.changed.front.seatAndStopDrop', 0.02) });
    const before = gapsAt(setupOf(rigOf({})), 'front', { heave: 0.03, roll: 0 }).left;
    const after = gapsAt(dropped, 'front', { heave: 0.03, roll: 0 }).left;
    expect(after.stopGap).toBeCloseTo(before.stopGap, 12);
    expect(left(after, 'sump') - left(before, 'sump')).toBeCloseTo(0.02, 12);
  });
});
