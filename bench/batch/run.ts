/**
 * `npm run -s bench:batch [-- --json]`: 2 000 setup-courses of 20 s each at default accuracy, by one and by two worker
 * threads in turns, and once with trials over the readings. Says how long it took, how it grows with the workers,
 * whether memory stays flat, and that all answers are the same to the last bit.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'rolldown';

const here = import.meta.dirname;
const ROUNDS = 2;
const TARGET_SECONDS = 8;

interface Round {
  readonly workers: number;
  readonly trials: number;
  readonly setupCourses: number;
  readonly runs: number;
  readonly seconds: number;
  /** Of all threads of the process. */
  readonly cpuSeconds: number;
  readonly simulatedPerSecond: number;
  readonly memory: readonly number[];
  readonly stretches: number;
  readonly mostWaiting: number;
  readonly unfinished: number;
  readonly digest: string;
}

const folder = mkdtempSync(join(tmpdir(), 'lastinch-bench-batch-'));
try {
  for (const name of ['program', 'worker'])
    await build({
      input: join(here, `${name}.ts`),
      platform: 'node',
      logLevel: 'silent',
      output: { file: join(folder, `${name}.mjs`), format: 'es', codeSplitting: false },
    });
  const rig = join(here, '../../examples/ochre/ochre.rig.yaml');
  const ride = (workers: number, trials: number, setups: number): Round =>
    JSON.parse(
      execFileSync(
        process.execPath,
        [
          join(folder, 'program.mjs'),
          rig,
          join(folder, 'worker.mjs'),
          ...[workers, trials, setups].map(String),
        ],
        { maxBuffer: 1e8 },
      ).toString(),
    );
  const loadBefore = loadavg()[0] ?? 0;
  const rounds: Round[] = [];
  for (let round = 0; round < ROUNDS; round += 1)
    for (const workers of [1, 2]) rounds.push(ride(workers, 0, 100));
  // As many runs again, but few setup-courses and many trial rigs of each: memory must not know the difference.
  const withTrials = ride(2, 24, 4);
  report(rounds, withTrials, loadBefore);
} finally {
  rmSync(folder, { recursive: true });
}

function report(rounds: readonly Round[], withTrials: Round, loadBefore: number): void {
  const best = [1, 2].map((workers) =>
    rounds.filter((round) => round.workers === workers).reduce((a, b) => (b.seconds < a.seconds ? b : a)),
  );
  const isSame = new Set(rounds.map(({ digest }) => digest)).size === 1;
  const machine = {
    cpu: cpus()[0]?.model ?? 'unknown',
    cores: cpus().length,
    node: process.version,
    loadBefore,
  };
  if (process.argv.includes('--json')) {
    console.log(
      JSON.stringify({ machine, best, rounds, withTrials, isSame, targetSeconds: TARGET_SECONDS }, null, 2),
    );
    return;
  }
  console.log(
    `${machine.cpu}, ${machine.cores} cores, Node ${machine.node}; load before: ${loadBefore.toFixed(1)}`,
  );
  for (const round of [...best, withTrials]) {
    const { workers, runs, setupCourses, trials, seconds, memory } = round;
    console.log(
      [
        `${workers} worker${workers > 1 ? 's' : ' '}`,
        `${setupCourses} setup-courses${trials > 0 ? ` × ${trials + 1} rigs` : ''} of 20 s`,
        `${seconds.toFixed(2)} s (${round.cpuSeconds.toFixed(2)} s of processor)`,
        `${(runs / seconds).toFixed(0)} runs a second`,
        `${(round.simulatedPerSecond / workers).toFixed(0)} × real time a worker`,
        `memory at each quarter ${memory.join(', ')} MB`,
        `${round.stretches} stretches, at most ${round.mostWaiting} waiting`,
      ].join(' · '),
    );
  }
  const [one, two] = best;
  if (one === undefined || two === undefined) return;
  console.log(`two workers are ${(one.seconds / two.seconds).toFixed(2)} times as fast as one`);
  if (machine.loadBefore > 0.5)
    console.log(
      'other work was running: with both cores to itself expect the seconds of processor over the workers',
    );
  console.log(
    `target under ${TARGET_SECONDS} s on two cores: ${two.seconds < TARGET_SECONDS ? 'met' : 'missed'}`,
  );
  console.log(`same answer from all rounds: ${isSame ? 'yes, to the last bit' : 'NO'}`);
  if (two.unfinished > 0) console.log(`${two.unfinished} rides left the model's validity`);
}
