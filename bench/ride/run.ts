/**
 * `npm run -s bench:ride [-- --json] [-- CASE…]`: our ride engine against rivals on the same cases, work against
 * precision. Every contestant may choose its best setting; then the chosen ones run in turns, and the best time of each
 * counts. A figure is simulated seconds a second at ≤ 0.1 % error in peak crush and r.m.s. acceleration.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'rolldown';
import { type RideCase, readRideCase } from '../../validation/ride-case/read.ts';
import { caseNumbers } from './case-numbers.ts';

const here = import.meta.dirname;
const ALLOWED = 1e-3;
const ROUNDS = 5;

interface Outcome {
  readonly seconds: number;
  readonly peakCrush: readonly number[];
  readonly rms: number;
  readonly steps: number;
  readonly evaluations: number;
}

interface Contestant {
  readonly name: 'ours' | 'cRk4' | 'cvode' | 'scipy';
  /** Settings, cheap ones first within each family. */
  readonly settings: readonly (readonly string[])[];
  run(setting: readonly string[]): Outcome;
}

interface Entry {
  readonly simulatedPerSecond: number;
  readonly error: number;
  readonly setting: string;
  readonly evaluations: number;
}

function main(): void {
  const args = process.argv.slice(2);
  const asJson = args.includes('--json');
  const named = args.filter((arg) => !arg.startsWith('--'));
  const folder = join(here, '../../validation/ride-cases');
  const files =
    named.length > 0
      ? named.map((file) => resolve(process.env.INIT_CWD ?? '.', file))
      : readdirSync(folder).map((file) => join(folder, file));
  const work = mkdtempSync(join(tmpdir(), 'lastinch-bench-'));
  void prepare(work)
    .then(() => files.map((file) => bench(file, work, asJson)))
    .then((cases) => report(cases, asJson))
    .finally(() => rmSync(work, { recursive: true }));
}

async function prepare(work: string): Promise<void> {
  await build({
    input: join(here, 'ours.ts'),
    platform: 'node',
    logLevel: 'silent',
    output: { file: join(work, 'ours.mjs') },
  });
  const libraries = ['cvode', 'nvecserial', 'sunmatrixdense', 'sunlinsoldense', 'sunnonlinsolfixedpoint'];
  try {
    execFileSync('gcc', [
      ...['-O3', '-march=native', '-std=gnu11', '-o', join(work, 'rival')],
      ...[join(here, 'rival.c'), join(here, 'model.c')],
      ...libraries.map((name) => `-lsundials_${name}`),
      '-lm',
    ]);
  } catch {
    console.error("bench: the C rivals do not build; they need gcc and Debian's libsundials-dev");
    process.exit(2);
  }
}

const call = (program: string, args: readonly string[]): Outcome =>
  JSON.parse(
    execFileSync(program, args, { timeout: 120_000, stdio: ['ignore', 'pipe', 'ignore'] }).toString(),
  );

function contestants(file: string, numbers: string, work: string): readonly Contestant[] {
  const steps = [4e-3, 3e-3, 2e-3, 1.5e-3, 1e-3, 7e-4, 5e-4, 3e-4, 2e-4, 1e-4, 5e-5, 2e-5];
  const rtols = ['1e-2', '3e-3', '1e-3', '3e-4', '1e-4', '3e-5', '1e-5', '3e-6', '1e-6', '1e-7', '1e-8'];
  const cvode = ['bdf', 'adams', 'fixedpoint'].flatMap((family) =>
    ['free', 'stops'].flatMap((roots) => rtols.map((rtol) => [family, rtol, roots])),
  );
  const scipy = ['RK45', 'LSODA'].flatMap((method) =>
    ['1e-3', '1e-4', '1e-5', '1e-6'].map((rtol) => [method, rtol]),
  );
  return [
    {
      name: 'ours',
      settings: ['1e-3', '7e-4', '5e-4', '3e-4', '2e-4', '1e-4', '5e-5', '3e-5', '1e-5', '1e-6'].map((t) => [
        t,
      ]),
      run: ([tolerance]) => call(process.execPath, [join(work, 'ours.mjs'), file, tolerance]),
    },
    {
      name: 'cRk4',
      settings: steps.map((step) => [String(step)]),
      run: ([step]) => call(join(work, 'rival'), [numbers, 'rk4', step]),
    },
    {
      name: 'cvode',
      settings: cvode,
      run: (setting) => call(join(work, 'rival'), [numbers, 'cvode', ...setting]),
    },
    {
      name: 'scipy',
      settings: scipy,
      run: (setting) => call('python3', [join(here, 'scipy_ride.py'), numbers, ...setting]),
    },
  ];
}

interface Benched {
  readonly name: string;
  readonly entries: Readonly<Record<Contestant['name'], Entry | null>>;
}

function bench(file: string, work: string, quiet: boolean): Benched {
  const rideCase = readRideCase(readFileSync(file, 'utf8'));
  const numbers = join(work, 'case.txt');
  writeFileSync(numbers, caseNumbers(rideCase));
  const all = contestants(file, numbers, work);
  const chosen = all.map((contestant) => {
    if (!quiet) console.error(`${rideCase.name}: ${contestant.name} looks for its best setting`);
    return { contestant, setting: bestSetting(contestant, rideCase) };
  });
  const entries = Object.fromEntries(all.map(({ name }) => [name, null])) as Record<
    Contestant['name'],
    Entry | null
  >;
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const { contestant, setting } of chosen) {
      if (!setting || (contestant.name === 'scipy' && round > 0)) continue;
      const outcome = contestant.run(setting);
      const speed = rideCase.duration / outcome.seconds;
      const before = entries[contestant.name];
      if (before && before.simulatedPerSecond >= speed) continue;
      entries[contestant.name] = {
        simulatedPerSecond: speed,
        error: errorOf(outcome, rideCase),
        setting: setting.join(' '),
        evaluations: outcome.evaluations,
      };
    }
  }
  return { name: rideCase.name, entries };
}

/** The fastest setting whose error is allowed, out of all of them. */
function bestSetting({ settings, run }: Contestant, rideCase: RideCase): readonly string[] | null {
  let best: { setting: readonly string[]; seconds: number } | null = null;
  for (const setting of settings) {
    let outcome: Outcome;
    try {
      outcome = run(setting);
    } catch {
      continue;
    }
    if (errorOf(outcome, rideCase) > ALLOWED) continue;
    if (!best || outcome.seconds < best.seconds) best = { setting, seconds: outcome.seconds };
  }
  return best?.setting ?? null;
}

/** Largest relative error in peak crush (where it is at least 1 mm) and in r.m.s. acceleration. */
function errorOf(outcome: Outcome, { expected }: RideCase): number {
  const crush = expected.peakCrush as readonly number[];
  const rms = expected.rmsBodyAcceleration as number;
  const errors = crush.map((theirs, k) => (theirs < 1e-3 ? 0 : Math.abs(outcome.peakCrush[k] / theirs - 1)));
  return Math.max(...errors, Math.abs(outcome.rms / rms - 1));
}

function report(cases: readonly Benched[], asJson: boolean): void {
  const machine = { cpu: cpus()[0]?.model ?? 'unknown', cores: cpus().length, load: loadavg()[0] };
  const ratios = Object.fromEntries(
    (['cRk4', 'cvode', 'scipy'] as const).map((rival) => [
      rival,
      geometricMean(cases.map((one) => ratio(one, rival))),
    ]),
  );
  if (asJson) {
    const speed = (entry: Entry | null): number | null => entry?.simulatedPerSecond ?? null;
    console.log(
      JSON.stringify({
        schema: 'lastinch/bench-ride/1',
        machine,
        cases: cases.map(({ name, entries }) => ({
          name,
          ours: speed(entries.ours),
          cRk4: speed(entries.cRk4),
          cvode: speed(entries.cvode),
          scipy: speed(entries.scipy),
          error: entries.ours?.error ?? null,
          settings: entries,
        })),
        geometricMeanRatio: ratios,
      }),
    );
    return;
  }
  console.log(`\n${machine.cpu}, ${machine.cores} cores, load ${machine.load.toFixed(1)}`);
  console.log(
    'simulated seconds a second at ≤ 0.1 % error in peak crush and r.m.s. acceleration; ours ÷ theirs',
  );
  for (const one of cases) {
    console.log(`\n${one.name}`);
    for (const [name, entry] of Object.entries(one.entries)) {
      const against = name === 'ours' ? null : ratio(one, name as Contestant['name']);
      console.log(
        entry
          ? `  ${name.padEnd(6)} ${entry.simulatedPerSecond.toFixed(0).padStart(8)}  error ${(100 * entry.error).toFixed(3)} %  ${String(entry.evaluations).padStart(7)} evaluations  ${against ? `${against.toFixed(2)} ×` : '      '}  (${entry.setting})`
          : `  ${name.padEnd(6)} never reached`,
      );
    }
  }
  console.log('\ngeometric mean, ours ÷ theirs:');
  for (const [rival, mean] of Object.entries(ratios))
    console.log(`  ${rival.padEnd(6)} ${mean?.toFixed(2) ?? '–'} ×`);
}

function ratio({ entries }: Benched, rival: Contestant['name']): number | null {
  const [mine, theirs] = [entries.ours, entries[rival]];
  return mine && theirs ? mine.simulatedPerSecond / theirs.simulatedPerSecond : null;
}

function geometricMean(values: readonly (number | null)[]): number | null {
  const known = values.filter((value): value is number => value !== null);
  return known.length > 0
    ? Math.exp(known.reduce((sum, value) => sum + Math.log(value), 0) / known.length)
    : null;
}

main();
