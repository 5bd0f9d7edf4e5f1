import v8 from 'node:v8';
import vm from 'node:vm';
import { afterEach, describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import type { RideRun } from '../../src/ride/result.ts';
import { runRide } from '../../src/ride/run.ts';
import { unevenRig } from './invented-rigs.ts';

/**
 * All memory of a run is made before its first step. By count and not by time: arrays that are made while it runs are
 * counted, in a short run and in one ten times as long. Numbers that the machine boxes between two functions are not
 * ours to count; that nothing of them stays is the second test.
 */

const track = sampleCourse({
  kind: 'whoops',
  height: 0.26,
  spacing: 5,
  count: 60,
  start: 1,
  rightPhase: 0.5,
});
const drive = (duration: number, tolerance = 1e-4): RideRun =>
  runRide(unevenRig, track, { speed: 9, duration, tolerance });

const undo: (() => void)[] = [];
afterEach(() => {
  while (undo.length > 0) undo.pop()!();
});

/** Counts every array that is made through a constructor or by a method that makes one. */
function countArrays(): () => number {
  let made = 0;
  for (const name of ['Float64Array', 'Float32Array', 'Int32Array', 'Uint8Array', 'Array'] as const) {
    const real = globalThis[name];
    const counted = new Proxy(real as unknown as new () => object, {
      construct(target, args, self) {
        made += 1;
        return Reflect.construct(target, args, self);
      },
    });
    Object.assign(globalThis, { [name]: counted });
    undo.push(() => Object.assign(globalThis, { [name]: real }));
  }
  for (const [owner, methods] of [
    [Object.getPrototypeOf(Float64Array.prototype), ['subarray', 'slice', 'map', 'filter']],
    [Array.prototype, ['slice', 'map', 'filter', 'concat', 'flat', 'flatMap']],
  ] as const) {
    for (const method of methods) {
      const real = owner[method] as (...args: unknown[]) => unknown;
      owner[method] = function (this: unknown, ...args: unknown[]) {
        made += 1;
        return real.apply(this, args);
      };
      undo.push(() => {
        owner[method] = real;
      });
    }
  }
  return () => made;
}

describe('the memory of a run', () => {
  it('is made once: a run of ten times as many steps makes as many arrays', () => {
    // The kernel and its memory are made once a thread.
    drive(12);
    const made = countArrays();
    const short = drive(1);
    const byShort = made();
    const long = drive(12);
    const byLong = made() - byShort;
    expect(long.counters.steps).toBeGreaterThan(9 * short.counters.steps);
    expect(long.counters.events).toBeGreaterThan(5 * short.counters.events);
    expect(byShort).toBeGreaterThan(10);
    expect(byLong).toBe(byShort);
  });

  it('is counted at all: a right-hand side that made an array would be seen', () => {
    const made = countArrays();
    const before = made();
    for (let k = 0; k < 5; k += 1) new Float64Array(3).subarray(1);
    expect(made() - before).toBe(10);
  });

  it('is given back: nothing of thousands of steps stays', () => {
    v8.setFlagsFromString('--expose-gc');
    const collect = vm.runInNewContext('gc') as () => void;
    const staysAfter = (duration: number): number => {
      collect();
      const before = v8.getHeapStatistics().used_heap_size;
      drive(duration, 1e-6);
      collect();
      return v8.getHeapStatistics().used_heap_size - before;
    };
    // Compiled code and what it learned of types come and go, so one clean round is enough: a run that kept one number a
    // step would hold on to more in every round.
    const { steps } = drive(8, 1e-6).counters;
    let least = Infinity;
    for (let round = 0; round < 8 && least >= 8 * steps; round += 1) {
      least = Math.min(least, staysAfter(8));
    }
    expect(steps).toBeGreaterThan(4000);
    expect(least).toBeLessThan(8 * steps);
  });
});
