import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { RideCase } from '../../validation/ride-case/read.ts';

/** What one run found, and the best time of its runs. */
export interface Outcome {
  readonly setting: string;
  readonly seconds: number;
  readonly peakCrush: readonly number[];
  readonly rms: number;
  readonly steps: number;
  readonly evaluations: number;
}

export const NAMES = ['ours', 'cRk4', 'cvode', 'scipy'] as const;
export type Name = (typeof NAMES)[number];

export interface Contestant {
  readonly name: Name;
  /** Every setting that it may choose from. */
  readonly settings: readonly string[];
  /** Runs the settings one after the other in one process, `seconds` on each and some runs at least. */
  run(settings: readonly string[], seconds: number): readonly Outcome[];
}

/** A case, its plain numbers on disk, and where the built programs are. */
export interface Arena {
  readonly case: RideCase;
  readonly file: string;
  readonly numbers: string;
  readonly work: string;
  /** Length of the shortest thing on the ground [m]. */
  readonly shortestFeature: number;
}

/** From high to low in steps of one factor: everybody chooses from a scale as fine as ours. */
function scale(high: number, low: number, factor: number): readonly string[] {
  const values: string[] = [];
  for (let value = high; value > low * 0.999; value /= factor) values.push(value.toExponential(3));
  return values;
}
const QUARTER_DECADE = 10 ** 0.25;
const HALF_DECADE = 10 ** 0.5;

export function contestants(arena: Arena): readonly Contestant[] {
  const { work, numbers, file, shortestFeature } = arena;
  const perFeature = shortestFeature / arena.case.speed;
  // Half of ours, so that nothing is jumped; as long as the whole thing; any: whoever fares best with that.
  const bounds = [Math.min(0.05, perFeature / 4), Math.min(0.2, perFeature), 0.2];
  const longest = [...new Set(bounds.map((s) => s.toPrecision(6)))];
  const times = (...lists: readonly (readonly string[])[]): readonly string[] =>
    lists.reduce((all, list) => all.flatMap((head) => list.map((tail) => `${head}:${tail}`)));
  return [
    {
      name: 'ours',
      settings: scale(1e-1, 1e-7, QUARTER_DECADE),
      run: (settings, seconds) =>
        call(process.execPath, [join(work, 'ours.mjs'), file, String(seconds)], settings),
    },
    {
      name: 'cRk4',
      settings: times(['rk4'], scale(6e-2, 1e-5, 1.15)),
      run: (settings, seconds) => call(join(work, 'rival'), [numbers, String(seconds)], settings),
    },
    {
      name: 'cvode',
      settings: [
        ['bdf', ['5', '3']] as const,
        ['adams', ['12', '3']] as const,
        ['fixedpoint', ['12', '3']] as const,
      ].flatMap(([family, orders]) =>
        times(
          ['cvode'],
          [family],
          scale(0.1, 1e-8, QUARTER_DECADE),
          ['free', 'stops'],
          longest,
          // High orders pay between switches, low ones across them.
          orders,
        ),
      ),
      run: (settings, seconds) => call(join(work, 'rival'), [numbers, String(seconds)], settings),
    },
    {
      name: 'scipy',
      settings: times(
        ['RK23', 'RK45', 'DOP853', 'LSODA', 'odeint', 'dopri5', 'dop853'],
        scale(1e-2, 1e-6, HALF_DECADE),
        longest,
      ),
      run: (settings, seconds) =>
        call(
          'python3',
          [join(import.meta.dirname, 'scipy_ride.py'), numbers, join(work, 'model.so'), String(seconds)],
          settings,
        ),
    },
  ];
}

function call(program: string, args: readonly string[], settings: readonly string[]): readonly Outcome[] {
  const lines = execFileSync(program, [...args, ...settings], {
    timeout: 600_000,
    stdio: ['ignore', 'pipe', 'ignore'],
    maxBuffer: 1e8,
  })
    .toString()
    .trim()
    .split('\n');
  return lines.map((line, k) => ({ setting: settings[k] ?? '', ...JSON.parse(line) }));
}

/** Largest relative error in peak crush (where it is at least 1 mm) and in r.m.s. acceleration. */
export function errorOf({ peakCrush, rms }: Outcome, { expected }: RideCase): number {
  const crush = expected.peakCrush as readonly number[];
  const theirs = expected.rmsBodyAcceleration as number;
  const errors = crush.map((each, k) => (each < 1e-3 ? 0 : Math.abs((peakCrush[k] ?? 0) / each - 1)));
  return Math.max(...errors, Math.abs(rms / theirs - 1));
}
