import { describe, expect, it } from 'vitest';
import type { Figure } from '../../src/finding/figure.ts';
import { exposureNotes, exposureRows, seatText } from '../../src/words/exposures.ts';

const figure = (dimension: Figure['dimension'], value: number, tolerance: number | null): Figure => {
  return { dimension, value, tolerance };
};
const NEVER = Number.POSITIVE_INFINITY;
const MILE = 1609.344;
const taken = {
  at: 'sitter',
  place: { behindFrontAxle: 1.42, left: -0.37 },
  day: { driven: (12 * MILE) / 10, from: 'course' },
  figures: {
    rms: figure('acceleration', 1.81, 0.27),
    maximumTransient: figure('acceleration', 2.4, null),
    dose: figure('vibrationDose', 4.6, 0.7),
    crestFactor: null,
    dailyAcceleration: figure('acceleration', 0.34, 0.05),
    dailyDose: figure('vibrationDose', 14, 2),
    absorbedPower: figure('power', 4.3, 1.8),
    lowPassedPeak: figure('acceleration', 11, 3),
    dynamicResponseIndex: figure('ratio', 1.05, 0.28),
    spinalDose: figure('acceleration', 10, 3),
    spinalStress: figure('pressure', 320_000, 110_000),
  },
  times: {
    toAction: {
      byAcceleration: { value: 2220, ends: { low: 1650, high: 3000 } },
      byDose: { value: 0.22, ends: { low: 0.08, high: NEVER } },
    },
    toLimit: { byAcceleration: { value: 11_700, ends: null }, byDose: { value: NEVER, ends: null } },
  },
  tilting: figure('acceleration', 0.43, 0.22),
} as const;
const said = (system: 'shop' | 'metric', change: Partial<Parameters<typeof exposureRows>[0]> = {}) =>
  Object.fromEntries(
    exposureRows({ ...taken, ...change }, { system, speed: 10 }).map(({ id, text, note }) => [
      id,
      { text, note },
    ]),
  );

describe('the table of a seat', () => {
  it('counts in the units of the standards, whatever the system', () => {
    for (const system of ['shop', 'metric'] as const) {
      expect(said(system).rms?.text).toBe('1.81 m/s² ± 0.27');
      expect(said(system).spinalStress?.text).toBe('0.32 MPa ± 0.11');
    }
  });

  it('says what is unknown, and what only its tolerance is', () => {
    expect(said('shop').crestFactor?.text).toBe('unknown');
    expect(said('shop').maximumTransient?.text).toBe('2.4 m/s² ± unknown');
  });

  it('says a driving time with both ends in one unit, and no time that nobody reaches in a day', () => {
    const { toAction, toActionByDose, toLimit, toLimitByDose } = said('shop');
    expect(toAction?.text).toBe('37 min (28 to 50 min)');
    expect(toActionByDose?.text).toBe('0.22 s (0.08 to more than a day)');
    expect(toLimit?.text).toBe('3.3 h ± unknown');
    expect(toLimitByDose?.text).toBe('more than a day');
  });

  it('says for how long a day it is reckoned', () => {
    expect(said('shop').dailyAcceleration?.note).toBe('12 mi a day');
    expect(said('metric').dailyDose?.note).toBe('19 km a day');
    const hour = said('shop', { day: { driven: 3600, from: 'an-hour' } });
    expect(hour.dailyAcceleration?.note).toBe('an hour a day');
  });

  it('has no day and no driving time for a rig that is let go', () => {
    const rows = said('shop', { day: null, times: null });
    for (const id of ['dailyAcceleration', 'dailyDose', 'toAction', 'toLimitByDose'])
      expect(rows[id]).toBeUndefined();
    expect(rows.dose).toBeDefined();
  });

  it('marks the spinal model as of a single source', () => {
    for (const id of ['spinalDose', 'spinalStress'])
      expect(said('shop')[id]?.note).toContain('single source');
  });
});

describe('what stands with it', () => {
  it('says whose seat it is and where', () => {
    expect(exposureNotes(taken, 'shop')[0]).toBe(
      'Of the driver on his seat, 56 in behind the front axle and 15 in right of the middle.',
    );
    expect(exposureNotes({ ...taken, at: 'usual-place' }, 'metric')[0]).toMatch(
      /^The file tells no driver, .* 142 cm behind the front axle and 37 cm right of the middle: a cushion is not in it\./,
    );
    expect(seatText('usual-place')).toContain('no driver');
    expect(seatText('sitter')).toContain('the driver');
  });

  it('says what is left out and makes no medical claim', () => {
    const text = exposureNotes(taken, 'shop').join(' ');
    expect(text).toContain('fore and aft and sideways are left out');
    expect(text).toContain('nothing here says what vibration does to a body');
    expect(text).not.toMatch(/health|injur|danger|safe|harm/i);
  });
});
