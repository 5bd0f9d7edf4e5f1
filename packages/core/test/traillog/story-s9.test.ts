import { describe, expect, it } from 'vitest';
import { lookAtLog } from '../../src/jobs/log.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { harmonicsKnown } from '../../src/traillog/conclusions.ts';
import { HEAD_BYTES } from '../../src/traillog/open-log.ts';
import { logDoubtText } from '../../src/words/log-doubts.ts';
import { must } from '../rigfile/smallest-rig.ts';
import { bytesOf } from './read.ts';

const RANGE = 19.61;
const HITS = 17;
const ROWS = 41_820;
const DURATION = 436;
const WASHBOARD = 60 / 3.6 / 0.75;

/** The log of the story: a phone at 45°, ±2 g, three holes, the longest followed by 70 rows at one time. Invented. */
function phoneLog(): string {
  const random = randomStream(9, 1);
  const lines = ['time (s),ax (m/s^2),ay (m/s^2),az (m/s^2)'];
  const holes = new Map([
    [9000, 0.31],
    [20_000, 0.724],
    [33_000, 0.45],
  ]);
  const heldRows = 70;
  const gone = [...holes.values()].reduce((sum, hole) => sum + hole, 0);
  const step = (DURATION - gone) / (ROWS - 1 - holes.size - heldRows);
  let time = 0;
  const hitAt = (k: number) =>
    Array.from({ length: HITS }, (_, n) => 3000 + n * 2100).findIndex((row) => k >= row && k < row + 4);
  const cut = (value: number) => Math.max(-RANGE, Math.min(RANGE, value));
  for (let k = 0; k < ROWS; k += 1) {
    if (k > 0 && !(k > 20_000 && k <= 20_000 + heldRows)) time += holes.get(k) ?? step;
    const jitter = k % 40 === 0 && (k < 20_000 || k > 20_100) ? 0.3 * step : 0;
    const isAtRest = k < 1000 || k > ROWS - 1000;
    const shake = isAtRest ? 0 : 4 * Math.sin(2 * Math.PI * WASHBOARD * time);
    const knock = hitAt(k) >= 0 ? 30 : 0;
    const noise = () => ((random.below(2001) - 1000) / 1000) * 0.03;
    const along = Math.SQRT1_2 * (shake + knock);
    const cells = [0.3 + noise(), cut(6.9 + along + noise()), cut(6.9 + along + noise())];
    lines.push([(time + jitter).toFixed(6), ...cells.map((cell) => cell.toFixed(3))].join(','));
  }
  return `${lines.join('\n')}\n`;
}

describe('story S9, the log of a phone', () => {
  const bytes = bytesOf(phoneLog());
  const look = must(lookAtLog(bytes.subarray(0, HEAD_BYTES), { file: 'phone.csv' }));
  for (let at = 0; at < bytes.length; at += 60_000) look.push(bytes.subarray(at, at + 60_000));
  const { inspection, use, doubts, report } = must(look.finish());
  const { acceleration, timing } = inspection;

  it('has 41 820 rows in 436 s, 95.9 a second, and three holes, the longest 724 ms', () => {
    expect(report.rows.acceleration).toBe(ROWS);
    expect(timing.acceleration?.duration).toBeCloseTo(DURATION, 1);
    expect(timing.acceleration?.rate).toBeCloseTo(95.9, 1);
    expect(timing.acceleration?.holes.count).toBe(3);
    expect(timing.acceleration?.holes.longest).toBeCloseTo(0.724, 2);
    expect(timing.acceleration?.repeats.count).toBe(70);
  });

  it('ends at ±2 g in 17 hits: peaks are no use, and it says "at least 17", no number of g', () => {
    expect(acceleration?.clipped).toHaveLength(HITS);
    expect(acceleration?.range).toBe(RANGE);
    expect(use.peaks).toBe('no');
    const clipped = doubts.find(({ code }) => code === 'clipped');
    expect(clipped && logDoubtText(clipped, 'metric')).toBe(
      'At least 17 hits went beyond 2 g, the end of the sensor: how hard they were is not known. As it hung, a hit straight up ends at 2.83 g, 1.83 g above rest. Use a sensor of 8 g or more.',
    );
  });

  it('hung 45° askew, and rests at 9.76 m/s²', () => {
    expect(acceleration?.rest?.size).toBeCloseTo(9.76, 2);
    expect(acceleration?.rest?.vector[1]).toBeCloseTo(6.9, 1);
    const tilted = doubts.find((doubt) => doubt.code === 'tilted');
    expect(tilted && (tilted.angle * 180) / Math.PI).toBeCloseTo(45, 0);
  });

  it('tells the r.m.s. where it is not clipped: that of the washboard', () => {
    expect(use.rms).toBe(true);
    const { cleanSeconds = 0, verticalRms } = acceleration ?? {};
    expect(cleanSeconds).toBeGreaterThan(380);
    // A sine of 4 m/s² over all but some 20 s of rest.
    expect(verticalRms).toBeCloseTo(4 / Math.SQRT2, 0);
  });

  it('tells the main tone of the washboard, 22 Hz, and no harmonic of it', () => {
    expect(use.nyquist).toBeCloseTo(48, 0);
    expect(harmonicsKnown(use.trustedTo ?? 0, WASHBOARD)).toBe(1);
  });
});
