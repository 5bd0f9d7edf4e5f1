import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EndPatch } from '../../src/rig/setup-patch.ts';
import type { TravelColumn } from '../../src/travel/result.ts';
import { travelOf } from '../../src/travel/travel.ts';
import { anyAmount, anyRig } from './any-rig.ts';
import { changed, type RigFacts, reading, rigOf, setupOf } from './typed-rig.ts';

/** The table of trade.md section 0 (rules T1–T12 of SPEC.md), each row over invented rigs and amounts. */

const SETTINGS = { numRuns: 60, seed: 20_260 };
const QUICK = { trials: 16 };
/** Metres: what adding and subtracting doubles of this size may lose. */
const ROUNDING = 1e-12;

interface Moved {
  readonly body: readonly number[];
  readonly shock: number;
  readonly coil: number;
  readonly gap: number;
  readonly height: number;
  readonly spareOfBodies: number;
  readonly spareOfCoil: number;
  readonly spareOfShock: number;
  readonly before: TravelColumn;
  readonly after: TravelColumn;
}

function moved(facts: RigFacts, patch: EndPatch): Moved {
  const before = travelOf(setupOf(rigOf(facts)), QUICK).corners.frontLeft;
  const after = travelOf(changed(facts, patch), QUICK).corners.frontLeft;
  const line = (column: TravelColumn, id: string) => column.contacts.find((contact) => contact.id === id)!;
  const ids = before.contacts.filter(({ kind }) => kind === 'body').map(({ id }) => id);
  const least = (column: TravelColumn) => Math.min(...ids.map((id) => line(column, id).spare.value));
  return {
    before,
    after,
    body: ids.map((id) => line(after, id).travel.value - line(before, id).travel.value),
    shock: line(after, 'shock').travel.value - line(before, 'shock').travel.value,
    coil: line(after, 'coil').travel.value - line(before, 'coil').travel.value,
    gap: after.freeBump.value - before.freeBump.value,
    height: after.lift.value,
    spareOfBodies: least(after) - least(before),
    spareOfCoil: line(after, 'coil').spare.value - line(before, 'coil').spare.value,
    spareOfShock: line(after, 'shock').spare.value - line(before, 'shock').spare.value,
  };
}

function same(ours: number | readonly number[], expected: number): void {
  for (const value of typeof ours === 'number' ? [ours] : ours)
    expect(Math.abs(value - expected), `${value} instead of ${expected}`).toBeLessThan(ROUNDING);
}

const value = (given: unknown): number => (Array.isArray(given) ? given[0] : (given as number));
const each = (holds: (facts: RigFacts, amount: number) => void) =>
  fc.assert(fc.property(anyRig, anyAmount, holds), SETTINGS);

describe('which change moves which term', () => {
  test('T1, T3, T5: a spring spacer lifts metal, shock and gap alike, buys no spare, and brings coil bind nearer', () =>
    each((facts, amount) => {
      const lift = amount / value(facts.front!.springRatio);
      const m = moved(facts, { springSpacer: reading('setups.changed.front.springSpacer', amount) });
      same(m.body, lift);
      same(m.shock, lift);
      same(m.coil, 0);
      same(m.gap, lift);
      same(m.height, lift);
      same(m.spareOfBodies, 0);
      same(m.spareOfShock, 0);
      same(m.spareOfCoil, -lift);
    }));

  test('T2: a stop spacer closes the gap and gives every contact its thickness', () =>
    each((facts, amount) => {
      const closer = amount / value(facts.front!.stopRatio);
      const m = moved(facts, { stopSpacer: reading('setups.changed.front.stopSpacer', amount) });
      same([...m.body, m.shock, m.coil, m.height], 0);
      same(m.gap, -closer);
      same([m.spareOfBodies, m.spareOfCoil, m.spareOfShock], closer);
      same(m.after.spare.value - m.before.spare.value, closer);
    }));

  test('T4: a longer coil lifts by its settled length; at the coil only a longer solid length costs spare', () =>
    each((facts) => {
      const m = moved(facts, { spring: 'other' });
      const { front, springs } = facts;
      const load = ((480 + 480 - 250) * 9.80665) / (2 * value(front!.springRatio));
      const settled = (free: unknown, rate: unknown) => value(free) - load / value(rate);
      const longer =
        settled(springs!.other.free, springs!.other.rate) - settled(front!.coil!.free, front!.springRate);
      const lift = longer / value(front!.springRatio);
      const solid = (value(springs!.other.solid) - value(front!.coil!.solid)) / value(front!.springRatio);
      same(m.body, lift);
      same([m.shock, m.gap, m.height], lift);
      same(m.coil, lift - solid);
      same([m.spareOfBodies, m.spareOfShock], 0);
      same(m.spareOfCoil, -solid);
    }));

  test('T6: a notch moves its own contact, by its ratio, and nothing else', () =>
    each((facts, amount) => {
      const [id, taped] = Object.entries(facts.front!.contacts!)[0];
      const m = moved(facts, { notch: { [id]: reading(`setups.changed.front.notch.${id}`, amount) } });
      const order = m.before.contacts.filter(({ kind }) => kind === 'body').map((contact) => contact.id);
      for (const [k, other] of order.entries())
        same(m.body[k], other === id ? amount / value(taped.ratio) : 0);
      same([m.shock, m.coil, m.gap, m.height], 0);
    }));

  test('T7: a lift with a stop spacer of the same thickness keeps the gap and gives it as spare at body and shock', () =>
    each((facts, amount) => {
      const lift = amount / value(facts.front!.springRatio);
      const m = moved(facts, {
        springSpacer: reading('setups.changed.front.springSpacer', amount),
        stopSpacer: reading('setups.changed.front.stopSpacer', lift * value(facts.front!.stopRatio)),
      });
      same(m.gap, 0);
      same([...m.body, m.shock, m.spareOfBodies, m.spareOfShock], lift);
      same([m.coil, m.spareOfCoil], 0);
    }));

  test('T8: seat and stop lowered together gain at body and shock, leave the gap and the coil', () =>
    each((facts, amount) => {
      const m = moved(facts, { seatAndStopDrop: reading('setups.changed.front.seatAndStopDrop', amount) });
      same([...m.body, m.shock, m.height, m.spareOfBodies, m.spareOfShock], amount);
      same([m.gap, m.coil, m.spareOfCoil], 0);
    }));

  test('T9: another stop takes the gap that its length takes, and its own crush', () =>
    each((facts) => {
      const m = moved(facts, { stop: 'other' });
      const ratio = value(facts.front!.stopRatio);
      const longer = (value(facts.stops!.other.free) - value(facts.front!.stopFree)) / ratio;
      const crush = (value(facts.stops!.other.crush) - value(facts.front!.crush)) / ratio;
      same([...m.body, m.shock, m.coil, m.height], 0);
      same(m.gap, -longer);
      same(m.after.crush.value - m.before.crush.value, crush);
      same(m.after.spare.value - m.before.spare.value, longer - crush);
    }));

  test('T9: a gap that the owner sets is the gap, whatever the lengths say', () =>
    each((facts, amount) => {
      const m = moved(facts, { stop: 'other', stopGap: reading('setups.changed.front.stopGap', amount) });
      same(m.after.freeBump.value, amount / value(facts.front!.stopRatio));
    }));

  test('T10: added load takes the same from every contact and from the gap, and leaves spare alone', () =>
    each((facts, amount) => {
      const mass = 1000 * amount;
      const m = moved(facts, { addedLoad: reading('setups.changed.front.addedLoad', mass, 'mass') });
      const rate = value(facts.front!.springRate) * value(facts.front!.springRatio) ** 2;
      const sag = (mass * 9.80665) / 2 / rate;
      same([...m.body, m.shock, m.coil, m.gap, m.height], -sag);
      same(m.after.spare.value - m.before.spare.value, 0);
    }));

  test('T11, T12: tyre pressure and clicks move nothing of the column', () =>
    each((facts, amount) => {
      const m = moved(facts, {
        tyrePressure: reading('setups.changed.front.tyrePressure', 1e6 * amount, 'pressure'),
        shockSetting: 'middle',
      });
      expect({ ...m.after, blame: [] }).toEqual({ ...m.before, blame: [] });
    }));

  test('a change at the front leaves the rear as it was', () =>
    each((facts, amount) => {
      const before = travelOf(setupOf(rigOf(facts)), QUICK).corners;
      const after = travelOf(
        changed(facts, {
          springSpacer: reading('setups.changed.front.springSpacer', amount),
          stop: 'other',
          addedLoad: reading('setups.changed.front.addedLoad', 50, 'mass'),
        }),
        QUICK,
      ).corners;
      expect(after.rearLeft).toEqual(before.rearLeft);
      expect(after.rearRight).toEqual(before.rearRight);
    }));
});

describe('the column holds together', () => {
  test('T13, T14: hard travel is the first contact; clearance and spare follow from it, in every rig', () =>
    each((facts, amount) => {
      const setup = changed(facts, {
        seatAndStopDrop: reading('setups.changed.front.seatAndStopDrop', amount),
      });
      for (const column of Object.values(travelOf(setup, QUICK).corners)) {
        const travels = column.contacts.map(({ travel }) => travel.value);
        expect([...travels].sort((a, b) => a - b)).toEqual(travels);
        same(column.hardTravel.value, travels[0]);
        same(column.clearance.value, travels[0] - column.freeBump.value - column.crush.value);
        for (const { travel, allowance, spare } of column.contacts)
          same(spare.value, travel.value - column.freeBump.value - column.crush.value - allowance.value);
        const allowed = (id: string) => column.contacts.find((line) => line.id === id)!.allowance.value;
        const end = facts[column.corner.startsWith('front') ? 'front' : 'rear']!;
        same(allowed('coil'), value(end.coil!.reserve) / value(end.springRatio));
        same(allowed('shock'), value(end.shock!.reserve) / value(end.shock!.ratio));
        for (const { kind, allowance } of column.contacts)
          if (kind === 'body') same(allowance.value, value(end.flex) + value(facts.reserve));
        same(column.spare.value, Math.min(...column.contacts.map(({ spare }) => spare.value)));
        same(
          column.contacts.reduce((sum, { firstShare }) => sum + firstShare, 0),
          1,
        );
        const shares = column.blame.reduce((sum, { share }) => sum + share, 0);
        expect(shares).toBeLessThanOrEqual(1 + 1e-12);
      }
    }));

  test('T5, T19: lift takes from every droop limit fixed to the frame, and not from the coil seat', () =>
    each((facts, amount) => {
      const lift = amount / value(facts.front!.springRatio);
      const { before, after } = moved(facts, {
        springSpacer: reading('setups.changed.front.springSpacer', amount),
      });
      for (const { id, travel } of before.droop) {
        const now = after.droop.find((line) => line.id === id)!.travel.value;
        same(now - travel.value, id === 'spring' ? 0 : -lift);
      }
      expect(before.droop.map(({ id }) => id).sort()).toEqual(['shaft', 'shock', 'spring', 'strap']);
    }));

  test('T19: added load presses the coil further in and leaves more droop to everything', () =>
    each((facts, amount) => {
      const { before, after } = moved(facts, {
        addedLoad: reading('setups.changed.front.addedLoad', 1000 * amount, 'mass'),
      });
      for (const { id, travel } of before.droop)
        same(after.droop.find((line) => line.id === id)!.travel.value - travel.value, -after.lift.value);
    }));
});

/**
 * Common practice, no source: 4 in to metal, a hard stop that leaves 1 in, replaced by one that crushes 3/4 in in the
 * same gap; then seat and stop lowered together by 1 in.
 */
test('a stop that crushes 3/4 in leaves 1/4 in of the inch that a hard stop left; seat and stop down an inch make it 1 1/4', () => {
  const inch = 0.0254;
  const facts: RigFacts = {
    front: { contacts: { metal: { gap: 4 * inch } }, gap: 3 * inch, crush: 0 },
    stops: { soft: { crush: 0.75 * inch } },
  };
  const stopGap = reading('setups.changed.front.stopGap', 3 * inch);
  const clearance = (patch: EndPatch) => travelOf(changed(facts, patch), QUICK).corners.frontLeft.clearance;
  expect(clearance({}).value / inch).toBeCloseTo(1, 12);
  expect(clearance({ stop: 'soft', stopGap }).value / inch).toBeCloseTo(0.25, 12);
  const drop = reading('setups.changed.front.seatAndStopDrop', inch);
  expect(clearance({ stop: 'soft', stopGap, seatAndStopDrop: drop }).value / inch).toBeCloseTo(1.25, 12);
});
