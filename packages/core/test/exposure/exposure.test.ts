import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ABSORBED_POWER_SPREAD } from '../../src/exposure/absorbed-power.ts';
import { type ExposureOptions, exposureOf } from '../../src/exposure/exposure.ts';
import { exposureFigures } from '../../src/exposure/figures.ts';
import { exposureFindings } from '../../src/exposure/findings.ts';
import type { ExposureResult, SeatExposure } from '../../src/exposure/result.ts';
import { findingText } from '../../src/words/findings.ts';
import { added, bump, sampled, swing } from './signals.ts';

const RATE = 500;
const ride = sampled(RATE, 20, added(swing(2.5, 3.1), swing(1, 11), bump(12, 7, 0.15)));
const OCCASION = { course: 'whoops', speed: 13.4112 };

const seatOf = (history: Float64Array, rate = RATE, options?: ExposureOptions): SeatExposure => {
  const { seat, doubts } = exposureOf(history, rate, options);
  if (seat === null) throw new Error(doubts.join(', '));
  return seat;
};
const times = (factor: number, history: Float64Array): Float64Array => history.map((value) => factor * value);

describe('what the seat takes', () => {
  it('is plain data that survives being sent', () => {
    const result = exposureOf(ride, RATE, { foreAndAft: ride, sideways: ride, drivenPerDay: 3600 });
    expect(structuredClone(result)).toEqual(result);
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  });

  it('twice the motion is twice the average and the dose, a quarter of the time, four times the power', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 8, noNaN: true }), (factor) => {
        const [one, more] = [seatOf(ride), seatOf(times(factor, ride))];
        const ratio = (of: (seat: SeatExposure) => number | null) => (of(more) ?? 0) / (of(one) ?? 1);
        expect(ratio(({ vertical }) => vertical.rms)).toBeCloseTo(factor, 8);
        expect(ratio(({ vertical }) => vertical.dose)).toBeCloseTo(factor, 8);
        expect(ratio(({ vertical }) => vertical.maximumTransient)).toBeCloseTo(factor, 8);
        expect(ratio(({ vertical }) => vertical.crestFactor)).toBeCloseTo(1, 8);
        expect(ratio(({ toAction }) => toAction.byAcceleration) * factor ** 2).toBeCloseTo(1, 8);
        expect(ratio(({ toLimit }) => toLimit.byDose) * factor ** 4).toBeCloseTo(1, 8);
        expect(ratio(({ absorbedPower }) => absorbedPower) / factor ** 2).toBeCloseTo(1, 8);
      }),
      { seed: 34, numRuns: 8 },
    );
  });

  it('is the same at any rate that holds the band', () => {
    const motion = added(swing(2.5, 3.1), swing(1, 11), bump(12, 7, 0.15));
    const fine = seatOf(sampled(4000, 20, motion), 4000);
    for (const rate of [400, 500, 777, 1000]) {
      const seat = seatOf(sampled(rate, 20, motion), rate);
      for (const of of [
        (each: SeatExposure) => each.vertical.rms,
        (each: SeatExposure) => each.vertical.dose,
        (each: SeatExposure) => each.vertical.peak,
        (each: SeatExposure) => each.vertical.maximumTransient,
        (each: SeatExposure) => each.absorbedPower,
        (each: SeatExposure) => each.dynamicResponseIndex,
        (each: SeatExposure) => each.lowPassedPeak,
      ])
        expect(Math.abs((of(seat) ?? Number.NaN) / (of(fine) ?? Number.NaN) - 1)).toBeLessThan(1e-3);
    }
  });

  it('counts the worst direction, level ones 1.4 times, and needs all three for the total', () => {
    const level = times(0.5, ride);
    const one = seatOf(ride);
    const three = seatOf(ride, RATE, { foreAndAft: level, sideways: times(3, ride) });
    expect(one.total).toBeNull();
    expect(seatOf(ride, RATE, { sideways: level }).total).toBeNull();
    const [x, y, z] = [three.foreAndAft?.rms ?? 0, three.sideways?.rms ?? 0, three.vertical.rms ?? 0];
    expect(three.total).toBeCloseTo(Math.sqrt(1.96 * x * x + 1.96 * y * y + z * z), 10);
    expect(three.toAction.byAcceleration).toBeCloseTo(28_800 * (0.5 / (1.4 * y)) ** 2, 8);
    expect(three.sideways).toMatchObject({ weighting: 'Wd', factor: 1.4 });
  });

  it('of a day grows with the root and the fourth root of its length', () => {
    const day = (drivenPerDay: number) => seatOf(ride, RATE, { drivenPerDay }).daily;
    const [short, long] = [day(1800), day(28_800)];
    expect((long?.acceleration ?? 0) / (short?.acceleration ?? 1)).toBeCloseTo(4, 10);
    expect((long?.dose ?? 0) / (short?.dose ?? 1)).toBeCloseTo(2, 10);
    expect(long?.acceleration).toBeCloseTo(seatOf(ride).vertical.rms ?? 0, 10);
    expect(long?.zone).toEqual({ equalEnergy: 'above', fourthPower: 'above' });
    expect(seatOf(ride).daily).toBeNull();
  });

  it('that stands still is nothing, and reaches nothing', () => {
    const seat = seatOf(new Float64Array(20 * RATE));
    expect(seat.vertical).toMatchObject({ rms: 0, dose: 0, peak: 0, crestFactor: null, shocks: [] });
    expect(seat.toAction).toEqual({ byAcceleration: Infinity, byDose: Infinity });
    expect(seat.comfort).toEqual(['not']);
  });

  it('knows a ride of single hits', () => {
    const hits = sampled(RATE, 30, added(bump(30, 5, 0.1), bump(25, 18, 0.1)));
    expect(seatOf(hits).vertical.shocks).toContain('crestFactor');
    expect(seatOf(sampled(RATE, 30, (t) => Math.sin(25 * t))).vertical.shocks).toEqual([]);
  });
});

describe('what cannot be known', () => {
  const known = ({ doubts, seat }: ExposureResult) => ({ doubts, isKnown: seat !== null });

  it.each([
    ['nothing was recorded', new Float64Array(0), RATE, 'record-empty'],
    ['five samples', new Float64Array(5), RATE, 'record-empty'],
    ['a gap', ride.map((value, n) => (n === 900 ? Number.NaN : value)), RATE, 'record-broken'],
    ['ninety samples a second', sampled(90, 20, swing(2, 3)), 90, 'rate-too-low'],
    ['gravity left in', ride.map((value) => value + 9.81), RATE, 'gravity-left'],
  ] as const)('%s: nothing is said', (_, history, rate, doubt) => {
    expect(known(exposureOf(history, rate))).toEqual({ doubts: [doubt], isKnown: false });
  });

  it('a second of record: averages are unknown, hits and dose are not', () => {
    const result = exposureOf(sampled(RATE, 1.2, bump(20, 0.3, 0.2)), RATE, { drivenPerDay: 600 });
    expect(result.doubts).toEqual(['record-short']);
    expect(result.seat).toMatchObject({ absorbedPower: null, comfort: null });
    expect(result.seat?.vertical).toMatchObject({ rms: null, crestFactor: null, shocks: null });
    expect(result.seat?.toAction.byAcceleration).toBeNull();
    expect(result.seat?.daily).toMatchObject({ acceleration: null, zone: null });
    expect(result.seat?.vertical.dose).toBeGreaterThan(1);
    expect(result.seat?.dynamicResponseIndex).toBeGreaterThan(1);
  });

  it('a phone at 120 samples a second: right up to 24 Hz, no spinal response, and it says so', () => {
    const result = exposureOf(sampled(120, 20, swing(2, 3)), 120);
    expect(result.doubts).toEqual(['rate-low']);
    expect(result.rightUpTo).toBeCloseTo(24, 12);
    expect(result.seat?.spinal).toBeNull();
    expect(result.seat?.vertical.rms).toBeGreaterThan(1);
  });

  it('a gap in a level direction spoils the whole', () => {
    const sideways = ride.map((value, n) => (n === 3 ? Infinity : value));
    expect(known(exposureOf(ride, RATE, { sideways }))).toEqual({
      doubts: ['record-broken'],
      isKnown: false,
    });
  });

  it('our own mistakes are thrown', () => {
    expect(() => exposureOf(ride, 0)).toThrow(/rate/);
    expect(() => exposureOf(ride, RATE, { sideways: ride.subarray(1) })).toThrow(/length/);
    expect(() => exposureOf(ride, RATE, { drivenPerDay: 0 })).toThrow(/day/);
  });
});

describe('figures', () => {
  const nominal = exposureOf(ride, RATE);
  const trials = [0.9, 1.1].map((factor) => exposureOf(times(factor, ride), RATE));

  it('carry twice the root mean square deviation of the trials', () => {
    const { rms, dose, timeToAction } = exposureFigures(nominal, trials);
    const value = nominal.seat?.vertical.rms ?? Number.NaN;
    expect(rms?.value).toBe(value);
    expect(rms?.tolerance).toBeCloseTo(0.2 * value, 8);
    expect(dose?.dimension).toBe('vibrationDose');
    const parts = [1 / 0.81 - 1, 1 / 1.21 - 1].map((each) => each * (timeToAction?.value ?? 0));
    expect(timeToAction?.tolerance).toBeCloseTo(2 * Math.sqrt((parts[0] ** 2 + parts[1] ** 2) / 2), 6);
  });

  it('of absorbed power take the spread of its two forms along', () => {
    const { absorbedPower } = exposureFigures(nominal, [nominal, nominal]);
    expect(absorbedPower?.tolerance).toBeCloseTo(ABSORBED_POWER_SPREAD * (absorbedPower?.value ?? 0), 10);
  });

  it('have an unknown tolerance without trials, and with one trial that is itself unknown', () => {
    const unknown = exposureOf(new Float64Array(2), RATE);
    for (const each of [[], trials.slice(1), [...trials, unknown]])
      expect(exposureFigures(nominal, each).rms?.tolerance).toBeNull();
    expect(Object.values(exposureFigures(unknown, trials)).every((figure) => figure === null)).toBe(true);
  });
});

describe('findings', () => {
  const found = (history: Float64Array, rate: number) => {
    const exposure = exposureOf(history, rate);
    const trials = [0.95, 1.05].map((factor) => exposureOf(times(factor, history), rate));
    return exposureFindings(exposure, exposureFigures(exposure, trials), OCCASION);
  };
  const said = (history: Float64Array, rate = RATE) =>
    found(history, rate).map((each) => findingText(each, { system: 'metric' }));

  it('say it in one sentence, with its tolerance, in the unit of the standard', () => {
    const steady = sampled(RATE, 20, swing(1.8, 6));
    expect(found(steady, RATE).map(({ code }) => code)).toEqual(['exposure-seat']);
    const [sentence] = said(steady);
    expect(sentence).toMatch(
      /^The seat takes 1\.3\d m\/s² ± 0\.1\d up and down .* on whoops at 48\.28 km\/h, which people call uncomfortable to very uncomfortable; .* after \d+ min ± \d+, its limit value after \d\.\d h ± \d\.\d\.$/,
    );
    expect(sentence.match(/\. /g)).toBeNull();
    const [shop] = found(steady, RATE).map((each) => findingText(each, { system: 'shop' }));
    expect(shop).toMatch(/1\.3\d m\/s² ± 0\.1\d .* at 30 mph/);
  });

  it('say that single hits stand out, and that a record is narrow', () => {
    const hits = added(swing(0.3, 5), bump(30, 8, 0.1));
    expect(found(sampled(200, 20, hits), 200).map(({ code }) => code)).toEqual([
      'exposure-seat',
      'exposure-shocks',
      'exposure-narrow',
    ]);
    const [, shocks, narrow] = said(sampled(200, 20, hits), 200);
    expect(shocks).toMatch(/crest factor \d+\.\d.* dose \d\.\d+ m\/s\^1\.75 ± .*30 Hz low-pass\.$/);
    expect(narrow).toContain('right only up to 40 Hz: the record has 200 Hz of samples');
  });

  it.each([
    ['a short record', sampled(RATE, 1.2, swing(2, 5)), RATE, 'too short'],
    ['a broken one', Float64Array.of(1, Number.NaN, 1, 1, 1, 1, 1), RATE, 'gaps'],
    ['an empty one', new Float64Array(0), RATE, 'nothing was recorded'],
    ['a slow one', sampled(50, 9, swing(2, 3)), 50, 'too few'],
    ['one with gravity', ride.map((value) => value - 9.81), RATE, 'gravity'],
  ] as const)('say of %s that it is not known, and why', (_, history, rate, because) => {
    const findings = found(history, rate);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['exposure-unknown', 'unproven'],
    ]);
    expect(said(history, rate)[0]).toMatch(new RegExp(`not known: .*${because}`));
  });

  it('of a gentle ride come to more than a day', () => {
    expect(said(sampled(RATE, 20, swing(0.2, 5)))[0]).toContain('after more than a day');
  });

  it('make no statement about health', () => {
    const everything = [
      ...said(ride),
      ...said(sampled(200, 20, bump(30, 8, 0.1)), 200),
      ...said(new Float64Array(0)),
    ].join(' ');
    expect(everything).not.toMatch(/health|injur|harm|pain|spine|back\b|safe|danger|risk|medical/i);
  });
});
