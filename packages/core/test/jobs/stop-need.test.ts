import { describe, expect, it } from 'vitest';
import { cornerAt, SIDES } from '../../src/finding/place.ts';
import { rideRig } from '../../src/jobs/ride.ts';
import { DAMPING_GAIN, MOST_ROOM } from '../../src/jobs/stop-cures.ts';
import { powerCurve } from '../../src/jobs/stop-drive.ts';
import { type StopNeed, type StopNeedRequest, stopNeed } from '../../src/jobs/stop-need.ts';
import type { Stop } from '../../src/rig/parts.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { candidateText, curesText, familyText } from '../../src/words/stops.ts';
import { must, ochre } from './ochre.ts';

/** Ochre's whoops at a speed at which its seat-down setup is hit hard, without trials unless asked. */
const SPEED = 7.4;
const ask = (change: Partial<StopNeedRequest> = {}): StopNeedRequest => ({
  rig: ochre,
  setup: 'soft-stop-seat-down',
  end: 'front',
  demands: [{ name: 'whoops', course: ochre.courses.whoops.shape, speed: SPEED }],
  trials: 0,
  seed: 1,
  ...change,
});
const needs = (change: Partial<StopNeedRequest> = {}): StopNeed => must(stopNeed(ask(change)));

const withReserve = (reserve: number): Rig => ({
  ...ochre,
  limits: { ...ochre.limits, reserve: { ...ochre.limits.reserve, value: reserve } },
});
const withBody = (value: number): Rig => ({
  ...ochre,
  limits: { ...ochre.limits, bodyAcceleration: { ...ochre.limits.bodyAcceleration, value } },
});

/** An edge of a range is found to so much of its force. */
const EDGE = 0.015;

describe('the band of stop curves that an end needs', () => {
  const gentle = withBody(10);
  const need = needs({ rig: gentle });

  it('runs in the room between touch and the reserve, least below most', () => {
    expect(need.room).toBeGreaterThan(0);
    expect(need.crush[0]).toBe(0);
    expect(need.crush[need.crush.length - 1]).toBeCloseTo(need.room, 12);
    need.crush.forEach((_, k) => {
      expect(need.least[k]).toBeLessThanOrEqual(need.most[k]);
    });
    expect(need.cures).toBeNull();
  });

  it('has edges on both sides: softer runs past the reserve, harder hits too hard', () => {
    const ranges = need.families.filter(({ range }) => range !== null);
    expect(ranges.length).toBeGreaterThan(0);
    for (const { range, below, above } of ranges) {
      if (range?.isLeastOpen === false) expect(below).toContain('clearance');
      if (range?.isMostOpen === false) expect(above).toEqual(['body']);
    }
    expect(ranges.some(({ range }) => range?.isMostOpen === false)).toBe(true);
  });

  it('holds in a ride of its own: a curve inside its range does, one just outside does not', () => {
    const ridden = (power: number, full: number) => {
      const { crush, force } = powerCurve(need.room, power, full);
      const { soft } = gentle.shelf.stops;
      const tried: Stop = { ...soft, crush, force, hysteresis: null, dynamicFactor: null };
      const rig = { ...gentle, shelf: { ...gentle.shelf, stops: { soft: tried } } };
      const { run } = must(
        rideRig({
          rig,
          setup: 'soft-stop-seat-down',
          course: ochre.courses.whoops.shape,
          courseName: 'whoops',
          speed: SPEED,
          historyRate: 0,
          trials: 0,
          seed: 1,
        }),
      );
      const keep = need.limits.keep.value;
      const isClear = SIDES.every((side) => run.corners[cornerAt('front', side)].clearance >= keep);
      return isClear && run.body.peakAcceleration <= need.limits.body.value;
    };
    for (const { power, range } of need.families) {
      if (range === null) continue;
      const { least, most, isLeastOpen, isMostOpen } = range;
      expect(ridden(power, least * (1 + 2 * EDGE)), `power ${power}, just above the least`).toBe(true);
      expect(ridden(power, most / (1 + 2 * EDGE)), `power ${power}, just below the most`).toBe(true);
      if (!isLeastOpen) expect(ridden(power, least / (1 + 2 * EDGE)), `power ${power}, softer`).toBe(false);
      if (!isMostOpen) expect(ridden(power, most * (1 + 2 * EDGE)), `power ${power}, harder`).toBe(false);
    }
  });

  it.each([0.012, 0.02, 0.03])('is never wider with a reserve of %f m', (reserve) => {
    const harder = needs({
      rig: {
        ...withReserve(reserve),
        limits: { ...gentle.limits, reserve: withReserve(reserve).limits.reserve },
      },
    });
    expect(harder.room).toBeLessThan(need.room);
    harder.families.forEach(({ power, range }, i) => {
      const before = need.families[i].range;
      if (range === null) return;
      expect(before, `power ${power}: none did with less reserve`).not.toBeNull();
      if (before === null) return;
      // In force ÷ crush^power a curve is the same curve whatever the room.
      const of = (full: number, room: number): number => full / room ** power;
      if (!before.isLeastOpen)
        expect(of(range.least, harder.room)).toBeGreaterThan(of(before.least, need.room) * (1 - 2 * EDGE));
      if (!before.isMostOpen)
        expect(of(range.most, harder.room)).toBeLessThan(of(before.most, need.room) * (1 + 2 * EDGE));
    });
  });

  it('is never wider where the owner accepts less at the body', () => {
    const strict = needs({ rig: withBody(9) });
    strict.families.forEach(({ range }, i) => {
      const before = need.families[i].range;
      if (range === null) return;
      expect(range.most).toBeLessThanOrEqual((before?.most ?? 0) * (1 + 2 * EDGE));
    });
  });
});

describe('an end that no stop can help', () => {
  const need = needs({ setup: 'as-measured', demands: [{ ...ask().demands[0], speed: 9 }] });

  it('says what must change, one thing at a time', () => {
    expect(need.crush).toEqual([]);
    expect(need.cures?.speedShare).toBeGreaterThanOrEqual(0.25);
    expect(need.cures?.speedShare).toBeLessThan(1);
    const text = curesText(need.cures ?? fails(), need.demands, {
      system: 'shop',
      most: { room: MOST_ROOM, damping: DAMPING_GAIN },
    });
    expect(text.join('\n')).toMatch(/Slower: .* mph\.\nMore travel: .*\nDamping: /);
  });

  it('finds a stop again at the share of the speed that it names', () => {
    const speed = 9 * (need.cures?.speedShare ?? 0);
    const slower = needs({ setup: 'as-measured', demands: [{ ...ask().demands[0], speed }] });
    expect(slower.cures).toBeNull();
  });

  it('is told how much more room would do: as much less reserve does, a step less does not', () => {
    // A body that nobody watches: only the room counts. Metal further away is the same room as a smaller reserve.
    const reserve = 0.02;
    const asking = (less: number) =>
      needs({
        rig: {
          ...ochre,
          limits: { ...withBody(80).limits, reserve: withReserve(reserve - less).limits.reserve },
        },
        setup: 'as-measured',
        demands: [{ ...ask().demands[0], speed: 8.3 }],
      });
    const { cures, demands } = asking(0);
    const more = cures?.moreRoom ?? fails();
    expect(asking(more).cures).toBeNull();
    if (more > 0.005) expect(asking(more - 0.005).cures).not.toBeNull();
    const text = curesText(cures ?? fails(), demands, {
      system: 'metric',
      most: { room: MOST_ROOM, damping: DAMPING_GAIN },
    });
    expect(text[1]).toContain(`${Math.round(more * 1000)} mm more between touch and metal`);
  });
});

describe('the stops of the rig, driven', () => {
  const need = needs({
    trials: 6,
    demands: [{ name: 'ledge', course: ochre.courses.ledge.shape, speed: 3.6 }],
  });

  it('are all there, the one on the end first', () => {
    expect(need.candidates.map(({ id }) => id)).toEqual(['soft', 'as-fitted']);
    expect(need.candidates.map((one) => 'isInSetup' in one && one.isInSetup)).toEqual([true, false]);
  });

  it('agree with a ride of the same setup', () => {
    const answer = must(
      rideRig({
        rig: ochre,
        setup: 'soft-stop-seat-down',
        course: ochre.courses.ledge.shape,
        courseName: 'ledge',
        speed: 3.6,
        historyRate: 0,
        trials: 0,
        seed: 1,
      }),
    );
    const [soft] = need.candidates;
    if (soft === undefined || !('verdict' in soft)) return fails();
    const clearance = Math.min(...SIDES.map((side) => answer.run.corners[cornerAt('front', side)].clearance));
    // Trials are driven at three times the local error of a ride.
    expect(soft.spare.value).toBeCloseTo(clearance - need.limits.keep.value, 4);
    expect(soft.body.value / answer.run.body.peakAcceleration).toBeCloseTo(1, 2);
    expect(soft.verdict).toBe('does');
    expect(soft.touchesAfter).toBe(0);
    return undefined;
  });

  it('touch earlier by as much as they are longer', () => {
    const seen = needs({
      setup: 'as-measured',
      trials: 0,
      demands: need.demands.map((d) => ({ ...d, course: ochre.courses.ledge.shape })),
    });
    const soft = seen.candidates.find(({ id }) => id === 'soft');
    const longer =
      (ochre.shelf.stops.soft.freeLength?.value ?? 0) - (ochre.front.stop.freeLength?.value ?? 0);
    expect(soft && 'touchesAfter' in soft ? soft.touchesAfter : null).toBeCloseTo(-longer, 9);
  });

  it('are open, never fine, where nothing is known of their interval', () => {
    const unsure = needs({
      trials: 0,
      demands: need.demands.map((d) => ({ ...d, course: ochre.courses.ledge.shape })),
    });
    expect(unsure.candidates.map((one) => 'verdict' in one && one.verdict)).toEqual(['open', 'open']);
  });

  it('say what is missing where one cannot be driven', () => {
    const { soft } = ochre.shelf.stops;
    const rig = { ...ochre, shelf: { ...ochre.shelf, stops: { soft: { ...soft, freeLength: null } } } };
    const seen = needs({
      rig,
      setup: 'as-measured',
      demands: need.demands.map((d) => ({ ...d, course: ochre.courses.ledge.shape })),
    });
    const one = seen.candidates.find(({ id }) => id === 'soft');
    expect(one).toMatchObject({ problems: [{ code: 'rig-needs-reading' }] });
    if (one)
      expect(candidateText(one, { limits: seen.limits, system: 'shop' })).toMatch(
        /^soft could not be driven: /,
      );
  });

  it('are told with their numbers and what limits them', () => {
    const [soft] = need.candidates;
    const text = candidateText(soft ?? fails(), { limits: need.limits, system: 'shop' });
    expect(text).toMatch(
      /^soft, on this end now, does: .* left above reserve and flex, body .* g ± .* of 2\.5 g, /,
    );
    for (const family of need.families)
      expect(Object.values(familyText(family, 'shop')).join(' ')).not.toMatch(/undefined|NaN/);
  });
});

describe('a question about a stop that cannot be answered', () => {
  it('is one where reserve and flex leave nothing to crush', () => {
    expect(stopNeed(ask({ rig: withReserve(0.5) }))).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-no-room', where: { key: 'front.stop' } }],
    });
  });

  it('is one at no speed, and of a setup that is not there', () => {
    const [demand] = ask().demands;
    expect(stopNeed(ask({ demands: [{ ...demand, speed: 0 }] }))).toMatchObject({
      ok: false,
      problems: [{ code: 'ask-speed-absurd' }],
    });
    expect(stopNeed(ask({ setup: 'none' }))).toMatchObject({
      ok: false,
      problems: [{ code: 'ask-unknown-setup' }],
    });
  });

  it('tells how far it is, never falling back', () => {
    const shares: number[] = [];
    must(stopNeed(ask({ trials: 2 }), (share) => shares.push(share)));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[shares.length - 1]).toBe(1);
  });
});

function fails(): never {
  throw new Error('an answer is missing');
}
