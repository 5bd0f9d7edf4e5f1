/**
 * `npm run -s bench:ride [-- --json] [-- --keep] [-- CASE…]`: our ride engine against rivals on the same cases, work
 * against precision. Every contestant tries all its settings; then the best of each run in turns, and the best time
 * counts. A figure is simulated seconds a second at ≤ 0.1 % error in peak crush and r.m.s. acceleration. `--keep` writes
 * `bench/results/ride.json`, from which the picture of the theory page is drawn.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { sampleCourse } from '@lastinch/core';
import { readRideCase } from '../../validation/ride-case/read.ts';
import { buildAll } from './build.ts';
import { caseNumbers } from './case-numbers.ts';
import { type Arena, contestants, errorOf, NAMES, type Name } from './contestants.ts';
import { bestPeak, measurePeak, operationsOf, type Peak } from './limit.ts';
import { type Tried, tried } from './precision.ts';
import { type Benched, jsonOf, printReport, type Report, resultsOf } from './report.ts';

const ALLOWED = 1e-3;
const ROUNDS = 5;
/** Settings of each that go into the rounds: one alone may owe its place to a quiet moment. */
const FINALISTS = 3;
/** Time spent on each setting [s]: while choosing, and in a round. SciPy, being slow, gets no more than it needs. */
const CHOOSING: Readonly<Record<Name, number>> = { ours: 0.05, cRk4: 0.03, cvode: 0.02, scipy: 0 };
const ROUND: Readonly<Record<Name, number>> = { ours: 0.15, cRk4: 0.05, cvode: 0.05, scipy: 0.05 };

const args = process.argv.slice(2);
const isQuiet = args.includes('--json');
const named = args.filter((arg) => !arg.startsWith('--'));
const folder = join(import.meta.dirname, '../../validation/ride-cases');
const files =
  named.length > 0
    ? named.map((file) => resolve(process.env.INIT_CWD ?? '.', file))
    : readdirSync(folder).map((file) => join(folder, file));

const work = mkdtempSync(join(tmpdir(), 'lastinch-bench-'));
try {
  await buildAll(work);
  const load = loadavg()[0] ?? 0;
  const peaks: Peak[] = [measurePeak(work)];
  const cases = files.map((file) => {
    const benched = bench(file);
    peaks.push(measurePeak(work));
    return benched;
  });
  const report: Report = {
    machine: { cpu: cpus()[0]?.model ?? 'unknown', cores: cpus().length, node: process.version, load },
    peak: bestPeak(peaks),
    cases,
  };
  if (isQuiet) console.log(JSON.stringify(jsonOf(report)));
  else printReport(report);
  if (args.includes('--keep'))
    writeFileSync(
      join(import.meta.dirname, '../results/ride.json'),
      `${JSON.stringify(resultsOf(report), null, 2)}\n`,
    );
} finally {
  rmSync(work, { recursive: true });
}

function bench(file: string): Benched {
  const rideCase = readRideCase(readFileSync(file, 'utf8'));
  const numbers = join(work, `${basename(file)}.txt`);
  writeFileSync(numbers, caseNumbers(rideCase));
  const { shortestFeature } = sampleCourse(rideCase.course);
  const arena: Arena = { case: rideCase, file, numbers, work, shortestFeature };
  const all = contestants(arena);
  const run = (name: Name, settings: readonly string[], seconds: number): readonly Tried[] =>
    settings.length === 0
      ? []
      : (all.find((one) => one.name === name)?.run(settings, seconds) ?? []).map((outcome) =>
          tried(outcome, errorOf(outcome, rideCase), rideCase.duration),
        );

  const settings = Object.fromEntries(all.map((one) => [one.name, one.settings]));
  const everything = Object.fromEntries(
    NAMES.map((name) => {
      if (!isQuiet) console.error(`${rideCase.name}: ${name} tries ${settings[name].length} settings`);
      return [name, run(name, settings[name], CHOOSING[name])];
    }),
  ) as Record<Name, readonly Tried[]>;
  const finalists = (name: Name): readonly string[] =>
    everything[name]
      .filter(({ error }) => error <= ALLOWED)
      .toSorted((a, b) => b.simulatedPerSecond - a.simulatedPerSecond)
      .slice(0, FINALISTS)
      .map(({ setting }) => setting);

  const best: Record<Name, Tried | null> = { ours: null, cRk4: null, cvode: null, scipy: null };
  const chosen = NAMES.map((name) => [name, finalists(name)] as const);
  for (let round = 0; round < ROUNDS; round += 1)
    for (const [name, each] of chosen)
      for (const one of run(name, each, ROUND[name]))
        if (one.error <= ALLOWED && one.simulatedPerSecond > (best[name]?.simulatedPerSecond ?? 0))
          best[name] = one;
  return {
    name: rideCase.name,
    duration: rideCase.duration,
    best,
    work: everything,
    operations: operationsOf(work, numbers),
  };
}
