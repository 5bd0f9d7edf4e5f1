import { describe, expect, it } from 'vitest';
import { CRITERIA } from '../../src/jobs/sweep-criteria.ts';
import { needle, needles, roughSpeed } from '../../src/words/speeds.ts';
import { criterionName } from '../../src/words/sweep-findings.ts';
import { bandsText, firstBreakText } from '../../src/words/sweeps.ts';

const MPH = 0.44704;
const shown = { system: 'shop', fastest: 45 * MPH } as const;
const never = Number.POSITIVE_INFINITY;
const broken = { kind: 'broken', speed: 17.66 * MPH, neverShare: 0 } as const;

describe('a speed of a sweep', () => {
  it('is written as a speedometer shows it', () => {
    expect(needle(17.66 * MPH, 'shop')).toBe('17.7 mph');
    expect(needle(20 * MPH, 'shop')).toBe('20 mph');
    expect(needle(20 * MPH, 'metric')).toBe('32.2 km/h');
    expect(needles(16.91 * MPH, 18.6 * MPH, 'shop')).toBe('16.9 to 18.6 mph');
  });

  it('is written to two digits where it is a step or an uncertainty', () => {
    expect(roughSpeed(MPH / 32, 'shop')).toBe('0.031 mph');
    expect(roughSpeed(MPH, 'metric')).toBe('1.6 km/h');
  });
});

describe('where a criterion is first broken', () => {
  it.each([
    [{ ...broken, trials: { low: 16.91 * MPH, high: 18.6 * MPH } }, '17.7 mph', '16.9 to 18.6 mph'],
    [{ ...broken, trials: null, neverShare: null }, '17.7 mph', '± unknown'],
    [{ ...broken, trials: { low: 5 * MPH, high: 5 * MPH } }, '17.7 mph', '5 mph'],
    [
      { ...broken, trials: { low: 15 * MPH, high: never }, neverShare: 0.3 },
      '17.7 mph',
      '70 in 100 from 15 mph',
    ],
    [
      { kind: 'never', speed: null, trials: { low: never, high: never }, neverShare: 1 },
      'not up to 45 mph',
      'in no trial',
    ],
    [
      { kind: 'never', speed: null, trials: { low: 41 * MPH, high: never }, neverShare: 0.999 },
      'not up to 45 mph',
      'less than 1 in 100 from 41 mph',
    ],
    [
      { kind: 'broken-at-once', speed: 5 * MPH, trials: null, neverShare: null },
      '5 mph or slower',
      '± unknown',
    ],
    [
      { kind: 'unknown', speed: 9 * MPH, trials: null, neverShare: null },
      'cannot be told from 9 mph',
      '± unknown',
    ],
    [{ kind: 'no-limit', speed: null, trials: null, neverShare: null }, 'no limit given', ''],
  ] as const)('%j', (first, speed, within) => {
    expect(firstBreakText(first, shown)).toEqual({ speed, within });
  });
});

it('has a name for every criterion', () => {
  for (const id of CRITERIA) {
    expect(criterionName(id)).not.toContain('-');
    expect(criterionName(id).length).toBeLessThanOrEqual(20);
  }
});

it('lists the stretches that do not hold, the last one open', () => {
  const band = (from: number, to: number, kind: 'broken' | 'unknown' = 'broken') => ({
    from: from * MPH,
    to: to * MPH,
    kind,
  });
  expect(bandsText([], shown)).toBe('');
  expect(bandsText([band(17.7, 33.5), band(36.8, 45)], shown)).toBe('17.7 to 33.5 mph, from 36.8 mph on');
  expect(bandsText([band(5, 9, 'unknown')], shown)).toBe('5 to 9 mph (cannot be told)');
});
