import { describe, expect, it } from 'vitest';
import { rootMeanSquare } from '../../src/exposure/dose.ts';
import { exposureOf } from '../../src/exposure/exposure.ts';
import { weightedHistory, weightingResponse } from '../../src/exposure/weighting.ts';
import { criteriaOf } from '../../src/jobs/sweep-criteria.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { ochre, rode } from './ochre.ts';

const unseated: Rig = { ...ochre, driver: null };
/** A long sine under both tracks: the rig heaves and pitches at one frequency, far below its own. */
const swell = (length: number) =>
  ({
    kind: 'waves',
    length,
    fadeIn: 20,
    waves: [{ n: 0.05, common: 0.02, commonPhase: 0, own: 0, leftPhase: 0, rightPhase: 0 }],
  }) as const;

describe('what the seat takes on a ride', () => {
  it('is what the record of the sitter says', () => {
    const { exposure, run } = rode({ trials: 0, historyRate: 1000 });
    const record = run.history?.seatAcceleration ?? new Float64Array(0);
    expect(exposure.at).toBe('sitter');
    expect(exposure.result).toEqual(exposureOf(record, 1000, { drivenPerDay: exposure.day?.driven }));
    expect(exposure.place.behindFrontAxle).toBeCloseTo(ochre.driver?.behindFrontAxle.value ?? 0, 12);
    expect(exposure.place.left).toBeCloseTo(ochre.driver?.left.value ?? 0, 12);
  });

  it('is that of a place on the body where no driver is told, with the tilting of that place', () => {
    const { exposure, run } = rode({ rig: unseated, trials: 0, historyRate: 1000 });
    expect(exposure.at).toBe('usual-place');
    const { history } = run;
    if (history === null) throw new Error('there is no history');
    const { behindFrontAxle, left } = exposure.place;
    const ahead = toFrontAxle(unseated) - behindFrontAxle;
    const at = history.bodyAcceleration.map(
      (z, n) => z - ahead * history.pitchAcceleration[n] + left * history.rollAcceleration[n],
    );
    const expected = rootMeanSquare(weightedHistory(at, 1000, 'Wk'));
    expect(exposure.figures.rms?.value).toBeCloseTo(expected, 9);
    const tilted = at.map((z, n) => z - history.bodyAcceleration[n]);
    expect(exposure.tilting?.value).toBeCloseTo(rootMeanSquare(weightedHistory(tilted, 1000, 'Wk')), 9);
  });

  it('goes with the weighting of ISO 2631-1 at the frequency of the ground', () => {
    // 20 m/s over a wave of 20 m: 1 Hz. The middle of the drive is steady, so that a sine comes out a sine.
    const { run } = rode({ course: swell(400), speed: 20, trials: 0, historyRate: 1000, rig: unseated });
    const record = run.history?.bodyAcceleration ?? new Float64Array(0);
    const steady = record.slice(10_000, 16_000);
    const weighted = weightedHistory(record, 1000, 'Wk').slice(10_000, 16_000);
    const gain = rootMeanSquare(weighted) / rootMeanSquare(steady);
    expect(Math.abs(gain / weightingResponse('Wk', 1).gain - 1)).toBeLessThan(0.02);
  });

  it('is unknown in its tolerance without trials, and has one with them', () => {
    const bare = rode({ trials: 0 }).exposure;
    const tried = rode({ trials: 4 }).exposure;
    for (const name of ['rms', 'dose', 'maximumTransient', 'lowPassedPeak', 'absorbedPower'] as const) {
      expect(bare.figures[name]?.tolerance, name).toBeNull();
      expect(tried.figures[name]?.tolerance, name).toBeGreaterThan(0);
      expect(tried.figures[name]?.value, name).toBe(bare.figures[name]?.value);
    }
    expect(bare.tilting?.tolerance).toBeNull();
    expect(tried.tilting?.tolerance).toBeGreaterThan(0);
    expect(bare.times?.toAction.byAcceleration?.ends).toBeNull();
    expect(tried.times?.toAction.byAcceleration?.ends).not.toBeNull();
  });

  it('counts the doubt about a seat that nobody measured', () => {
    const spread = (rig: Rig): number => rode({ rig, trials: 6 }).exposure.tilting?.tolerance ?? 0;
    expect(spread(unseated)).toBeGreaterThan(0.05);
  });

  it('gives nobody a record that he did not ask for', () => {
    expect(rode({ trials: 0 }).run).toMatchObject({ history: null, shake: null });
    expect(rode({ trials: 0, historyRate: 50 }).run.history?.rate).toBe(50);
  });

  it('is reckoned for the distance of a day where that is told, and for an hour else', () => {
    const hour = rode({ trials: 0 }).exposure;
    const way = rode({ trials: 0, distancePerDay: 9 * 7200 }).exposure;
    expect(hour.day).toEqual({ driven: 3600, from: 'an-hour' });
    expect(way.day).toEqual({ driven: 7200, from: 'course' });
    // A(8) = a_w·√(T ÷ 8 h): Directive 2002/44/EC, annex B.
    const rms = way.figures.rms?.value ?? 0;
    expect(way.figures.dailyAcceleration?.value).toBeCloseTo(rms * Math.sqrt(2 / 8), 12);
    expect(way.figures.dailyDose?.value).toBeCloseTo((hour.figures.dailyDose?.value ?? 0) * 2 ** 0.25, 9);
  });

  it('is nothing on the flat, and no time comes to an end there', () => {
    const { figures, times, tilting } = rode({
      course: { kind: 'flat', length: 60 },
      courseName: 'flat',
      trials: 2,
    }).exposure;
    expect([figures.rms, figures.dose, tilting]).toMatchObject([
      { value: 0, tolerance: 0 },
      { value: 0, tolerance: 0 },
      { value: 0, tolerance: 0 },
    ]);
    expect(times?.toAction.byAcceleration?.value).toBe(Number.POSITIVE_INFINITY);
  });

  it('has no day for a rig that is let go, and no finding about driving on', () => {
    const { exposure, findings } = rode({ courseName: 'drop', course: ochre.courses.drop.shape, trials: 0 });
    expect(exposure).toMatchObject({ day: null, times: null, figures: { timeToAction: null } });
    expect(exposure.figures.dose?.value).toBeGreaterThan(0);
    expect(findings.filter(({ code }) => code.startsWith('exposure'))).toEqual([]);
  });

  it('is unknown where the run was given up, and a finding says so', () => {
    const wall = { kind: 'ledge', side: 'left', height: 3, length: 0.3, start: 2 } as const;
    const { exposure, findings, run } = rode({ course: wall, trials: 0 });
    expect(run.status).toBe('left-validity');
    expect(exposure.figures.rms).toBeNull();
    expect(findings.map(({ code }) => code)).toContain('exposure-unknown');
  });
});

describe('the criteria of a seat in a sweep', () => {
  it('say what a ride at that speed says, though they listen half as often', () => {
    const { exposure, run } = rode({ trials: 0, historyRate: 500, distancePerDay: 1609.344 });
    const setup = { rig: ochre, ends: { front: { base: ochre.front }, rear: { base: ochre.rear } } } as never;
    const nominal = { of: ({ value }: { value: number }) => [value] } as never;
    const seat = run.history?.seatAcceleration ?? new Float64Array(0);
    const said = Object.fromEntries(
      criteriaOf(setup, nominal, 1609.344).map((one) => [
        one.id,
        one.measure({ run, trial: 0, speed: 9, seat }).value,
      ]),
    );
    const { figures } = exposure;
    const near = (id: string, value: number | undefined) =>
      expect(Math.abs((said[id] ?? 0) / (value ?? 0) - 1), id).toBeLessThan(0.003);
    near('seat-shock', figures.lowPassedPeak?.value);
    near('absorbed-power', figures.absorbedPower?.value);
    near('seat-dose', figures.dailyDose?.value);
  });
});

function toFrontAxle(rig: Rig): number {
  const { frontLeft, frontRight, rearLeft, rearRight } = rig.cornerMass;
  const front = frontLeft.value + frontRight.value - rig.front.unsprungMass.value;
  const rear = rearLeft.value + rearRight.value - rig.rear.unsprungMass.value;
  return (rig.wheelbase.value * rear) / (front + rear);
}
