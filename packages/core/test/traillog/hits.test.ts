import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { lookAtLog } from '../../src/jobs/log.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { runRide } from '../../src/ride/run.ts';
import { HEAD_BYTES } from '../../src/traillog/open-log.ts';
import { mustFinish } from '../ride/energy.ts';
import { unevenRig } from '../ride/invented-rigs.ts';
import { must } from '../rigfile/smallest-rig.ts';
import { bytesOf } from './read.ts';

/** Truth is the ride engine's own acceleration at this rate [Hz]. */
const RATE = 1000;
const GRAVITY = 9.80665;
const APART = 0.25;
/** A log and the truth agree on a time to within three rows of the slowest log [s]. */
const SAME = 0.03;

interface Spoilt {
  readonly rate: number;
  readonly noise: number;
  readonly jitter: number;
  readonly range: number;
}

/** Drives of the engine over whoops of several heights, each after five seconds of rest: acceleration of the body. */
const drives = [0.18, 0.24, 0.3].map((height, k) => {
  const track = sampleCourse({
    kind: 'whoops',
    height,
    spacing: 4.5 + k,
    count: 8,
    start: 2,
    rightPhase: 0.4,
  });
  const run = mustFinish(
    runRide(unevenRig, track, { speed: 7 + k, duration: 8, historyRate: 0, shakeRate: RATE }),
  );
  if (run.shake === null) throw new Error('nothing recorded');
  return [...new Float64Array(5 * RATE), ...run.shake.heave];
});

interface TrueHit {
  readonly from: number;
  readonly to: number;
  readonly peak: number;
}

/** Where the true size is above a limit; closer together it is one hit. */
function truth(heave: readonly number[], limit: number): TrueHit[] {
  const hits: TrueHit[] = [];
  heave.forEach((acceleration, k) => {
    const time = k / RATE;
    const size = Math.abs(acceleration + GRAVITY);
    if (size < limit) return;
    const last = hits[hits.length - 1];
    if (last === undefined || time - last.to > APART) hits.push({ from: time, to: time, peak: size });
    else hits[hits.length - 1] = { from: last.from, to: time, peak: Math.max(last.peak, size) };
  });
  return hits;
}

const covers = ({ from, to }: TrueHit, time: number): boolean => time >= from - SAME && time <= to + SAME;

/** The same drive as a device writes it that hangs askew: mean over each of its rows, noise, jitter, the end of its range. */
function logOf(heave: readonly number[], { rate, noise, jitter, range }: Spoilt, seed: number): string {
  const random = randomStream(seed, 1);
  const spread = () => (random.below(20_001) - 10_000) / 10_000;
  const up = [0.36, 0.48, 0.8];
  const lines = ['time (s),ax (m/s²),ay (m/s²),az (m/s²)'];
  const every = RATE / rate;
  for (let row = 1; row * every < heave.length; row += 1) {
    const piece = heave.slice(Math.round((row - 1) * every), Math.round(row * every));
    const felt = piece.reduce((sum, one) => sum + one, 0) / piece.length + GRAVITY;
    const cells = up.map((part) =>
      Math.max(-range, Math.min(range, part * felt + noise * spread())).toFixed(3),
    );
    lines.push([(row / rate + (jitter / rate) * spread()).toFixed(5), ...cells].join(','));
  }
  return `${lines.join('\n')}\n`;
}

function found(text: string) {
  const bytes = bytesOf(text);
  const look = must(lookAtLog(bytes.subarray(0, HEAD_BYTES), { file: 'drive.csv' }));
  look.push(bytes);
  const { inspection } = must(look.finish());
  return inspection.acceleration?.hits ?? [];
}

/** Recall of the hits that go a fifth beyond 2 g, and the share of found ones where the truth never comes within a fifth of it. */
function score(spoilt: Spoilt) {
  const counted = { clear: 0, recalled: 0, all: 0, wrong: 0 };
  for (const [k, heave] of drives.entries()) {
    const hits = found(logOf(heave, spoilt, 40 + k));
    const clear = truth(heave, 2 * GRAVITY).filter(({ peak }) => peak > 1.2 * 2 * GRAVITY);
    const possible = truth(heave, (2 / 1.2) * GRAVITY);
    counted.clear += clear.length;
    counted.recalled += clear.filter((one) => hits.some(({ time }) => covers(one, time))).length;
    counted.all += hits.length;
    counted.wrong += hits.filter(({ time }) => !possible.some((one) => covers(one, time))).length;
  }
  const { clear, recalled, all, wrong } = counted;
  return { clear, all, recall: recalled / clear, wrong: wrong / all };
}

describe('hits in logs of drives whose truth is known', () => {
  it.each([
    ['a good logger', { rate: 500, noise: 0.05, jitter: 0, range: 16 * GRAVITY }, 1],
    ['a phone of 200 Hz', { rate: 200, noise: 0.2, jitter: 0.2, range: 8 * GRAVITY }, 1],
    ['a phone of 100 Hz that ends at 2 g', { rate: 100, noise: 0.3, jitter: 0.3, range: 2 * GRAVITY }, 0.96],
  ] as const)(
    '%s: found is what goes a fifth beyond 2 g, and nothing that stays a fifth below',
    (_, spoilt, least) => {
      const { clear, recall, all, wrong } = score(spoilt);
      expect(clear).toBeGreaterThan(10);
      expect(all).toBeGreaterThan(10);
      expect(recall).toBeGreaterThanOrEqual(least);
      expect(wrong).toBe(0);
    },
  );

  it('there are none on a rig that stands still, whatever the noise of its sensor', () => {
    const still = Array.from({ length: 20 * RATE }, () => 0);
    expect(found(logOf(still, { rate: 200, noise: 0.5, jitter: 0.2, range: 8 * GRAVITY }, 7))).toEqual([]);
  });

  it('a rig that is dropped falls, and lands: the flight is told to within three rows', () => {
    // Closed form: a fall over h lasts √(2h/g); then 4 g for 50 ms.
    const fall = Math.sqrt((2 * 0.5) / GRAVITY);
    const heave = [
      ...Array.from({ length: 5 * RATE }, () => 0),
      ...Array.from({ length: Math.round(fall * RATE) }, () => -GRAVITY),
      ...Array.from({ length: 50 }, () => 3 * GRAVITY),
      ...Array.from({ length: 3 * RATE }, () => 0),
    ];
    const hits = found(logOf(heave, { rate: 200, noise: 0.05, jitter: 0, range: 16 * GRAVITY }, 3));
    expect(hits).toHaveLength(1);
    expect(hits[0].size / GRAVITY).toBeCloseTo(4, 1);
    expect(Math.abs(hits[0].flight - fall)).toBeLessThan(3 / 200);
  });
});
