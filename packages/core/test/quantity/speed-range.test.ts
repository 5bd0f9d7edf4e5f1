import { describe, expect, it } from 'vitest';
import { parseSpeedRange } from '../../src/quantity/speed-range.ts';

/** The mile of 1959 is 1609.344 m (NIST SP 811, App. B.8), so a mile an hour is 0.44704 m/s. */
const MPH = 0.44704;

describe('a range of speeds', () => {
  it.each([
    ['5..45mph', 5 * MPH, 45 * MPH],
    ['5 .. 45 mph', 5 * MPH, 45 * MPH],
    ['5 mph..45 mph', 5 * MPH, 45 * MPH],
    ['5…45 mph', 5 * MPH, 45 * MPH],
    ['8...72 km/h', 8 / 3.6, 72 / 3.6],
    ['2.5..12.5 m/s', 2.5, 12.5],
    ['10 km/h..45 mph', 10 / 3.6, 45 * MPH],
    ['45..5 mph', 45 * MPH, 5 * MPH],
  ])('reads %s', (text, from, to) => {
    const range = parseSpeedRange(text);
    if (!range.ok) throw new Error(JSON.stringify(range.problems));
    expect(range.value.from).toBeCloseTo(from, 12);
    expect(range.value.to).toBeCloseTo(to, 12);
  });

  it.each([
    ['', 'ask-option'],
    ['30 mph', 'ask-option'],
    ['..45 mph', 'ask-option'],
    ['5 mph..', 'ask-option'],
    ['5..10..15 mph', 'ask-option'],
    ['5..45', 'quantity-unit-missing'],
    ['5..45 kg', 'quantity-unit-wrong-kind'],
    ['a..45 mph', 'quantity-not-understood'],
    ['5 parsecs..45 mph', 'quantity-unit-unknown'],
  ])('refuses %j as %s, and says where it stood', (text, code) => {
    const range = parseSpeedRange(text, { key: '--sweep' });
    expect(range).toMatchObject({ ok: false, problems: [{ code, where: { key: '--sweep' } }] });
    if (!range.ok) expect(range.problems[0]?.accepted).not.toBe('');
  });

  it('quotes a long text in part', () => {
    const range = parseSpeedRange('x'.repeat(5000));
    if (range.ok) throw new Error('understood');
    expect(range.problems[0]?.found.length).toBeLessThanOrEqual(60);
  });
});
