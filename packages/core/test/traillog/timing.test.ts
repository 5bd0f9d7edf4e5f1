import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lookAtLog } from '../../src/jobs/log.ts';
import { HEAD_BYTES } from '../../src/traillog/open-log.ts';
import { Timing } from '../../src/traillog/timing.ts';
import { logDoubtText } from '../../src/words/log-doubts.ts';
import { must } from '../rigfile/smallest-rig.ts';
import { bytesOf } from './read.ts';

function timed(times: readonly number[]) {
  const timing = new Timing();
  for (const [k, time] of times.entries()) timing.add(time, k + 2);
  return timing.finish();
}

const even = (rows: number, step: number) => Array.from({ length: rows }, (_, k) => k * step);

describe('the clock of a log', () => {
  it('that is even has its step, its rate, and nothing wrong with it', () => {
    const report = timed(even(1000, 0.01));
    expect(report.interval).toBeCloseTo(0.01, 12);
    expect(report.duration).toBeCloseTo(9.99, 9);
    expect(report.even).toBe(1);
    expect([report.holes.count, report.repeats.count, report.jumps.count]).toEqual([0, 0, 0]);
  });

  it('has its holes counted, wherever they are, the very first step too', () => {
    for (const at of [1, 5, 400, 998]) {
      const times = even(1000, 0.01).map((time, k) => (k >= at ? time + 0.5 : time));
      const { holes, duration } = timed(times);
      expect(holes.count).toBe(1);
      expect(holes.longest).toBeCloseTo(0.51, 9);
      expect(holes.first[0]).toMatchObject({ line: at + 2 });
      expect(duration).toBeCloseTo(10.49, 9);
    }
  });

  it('that was set back, or forward by ten years, is no hole, and adds nothing to its length', () => {
    const YEARS = 3.156e8;
    const { jumps, holes, duration } = timed([0, 1, 2, 3, 3 + YEARS, 4 + YEARS, 2, 3, 4]);
    expect(jumps.count).toBe(2);
    expect(jumps.longest).toBeCloseTo(YEARS + 2, 0);
    expect(holes.count).toBe(0);
    expect(duration).toBeCloseTo(6, 6);
  });

  it('that trembles, with holes anywhere: the median is that of a sort, to 1 %, and every hole is found', () => {
    const step = fc.oneof(
      { weight: 20, arbitrary: fc.double({ min: 0.007, max: 0.013, noNaN: true }) },
      { weight: 1, arbitrary: fc.double({ min: 0.05, max: 100, noNaN: true }) },
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 20, maxLength: 1500 }), (steps) => {
        const times = [0];
        for (const one of steps) times.push(times[times.length - 1] + one);
        const real = times.slice(1).map((time, k) => time - times[k]);
        const sorted = [...real].sort((a, b) => a - b);
        fc.pre(sorted[sorted.length >> 1] < 0.014);
        const { interval, holes } = timed(times);
        expect(Math.abs(interval / sorted[Math.ceil(sorted.length / 2) - 1] - 1)).toBeLessThan(0.01);
        expect(holes.count).toBe(real.filter((one) => one > 3 * interval).length);
      }),
      { seed: 4, numRuns: 60 },
    );
  });
});

describe('what is doubted in a log', () => {
  const doubtsOf = (text: string) => {
    const bytes = bytesOf(text);
    const look = must(lookAtLog(bytes.subarray(0, HEAD_BYTES), { file: 'log.csv' }));
    look.push(bytes);
    const { doubts, use } = must(look.finish());
    return {
      use,
      codes: doubts.map(({ code }) => code),
      said: doubts.map((doubt) => logDoubtText(doubt, 'metric')),
    };
  };
  const rows = (names: string, cells: (k: number) => string, step = 0.01) =>
    `${names}\n${Array.from({ length: 1000 }, (_, k) => `${(k * step).toFixed(4)},${cells(k)}`).join('\n')}\n`;
  const noise = (k: number) => (0.05 * Math.sin(12.9 * k * k)).toFixed(3);

  it('a filtered channel: no peak of it is believed', () => {
    const { codes, use } = doubtsOf(rows('time (s),lin_x,lin_y,lin_z', (k) => `0,0,${noise(k)}`));
    expect(codes[0]).toBe('filtered');
    expect(use.peaks).toBe('no');
    expect(use.rms).toBe(false);
  });

  it('a channel without gravity that does not say so', () => {
    const { codes, use } = doubtsOf(rows('time (s),ax (m/s²),ay (m/s²),az (m/s²)', (k) => `0,0,${noise(k)}`));
    expect(codes).toContain('gravity-missing');
    expect(use.peaks).toBe('no');
  });

  it('a unit that gravity contradicts', () => {
    const { said } = doubtsOf(
      rows('time (s),ax (g),ay (g),az (g)', (k) => `0,0,${(9.8 + Number(noise(k)) / 100).toFixed(4)}`),
    );
    expect(said.join(' ')).toMatch(/At rest it reads 9\.8 g, not 1 g: the scale or the unit is off/);
  });

  it('a device that never rested, and a missing axis', () => {
    const { codes } = doubtsOf(
      rows('time (s),ay (m/s²),az (m/s²)', (k) => `${3 * Math.sin(k)},${9.8 + 4 * Math.cos(k)}`),
    );
    expect(codes).toContain('no-rest');
    expect(codes).toContain('axes-missing');
  });

  it('a good log of 1000 Hz has nothing wrong with it', () => {
    const { codes, use } = doubtsOf(
      rows('time (s),ax (m/s²),ay (m/s²),az (m/s²)', (k) => `0.${k % 7},0.${k % 5},9.8${k % 3}`, 0.001),
    );
    expect(codes.filter((code) => code !== 'no-rest')).toEqual([]);
    expect(use.peaks).toBe('low-passed');
  });
});
