/**
 * `npm run -s bench:linear [-- --json]`: shows that cost grows linearly with the length of the course and with the number
 * of setups, and that memory does not grow at all. The exponent is the slope of a straight line through the logarithms.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'rolldown';

interface Answer {
  readonly length: readonly {
    readonly kilometres: number;
    readonly seconds: number;
    readonly steps: number;
  }[];
  readonly setups: readonly { readonly setups: number; readonly seconds: number; readonly heap: number }[];
}

const here = import.meta.dirname;
const folder = mkdtempSync(join(tmpdir(), 'lastinch-bench-linear-'));
try {
  const program = join(folder, 'program.mjs');
  await build({
    input: join(here, 'program.ts'),
    platform: 'node',
    logLevel: 'silent',
    output: { file: program, format: 'es', codeSplitting: false },
  });
  const rig = join(here, '../../examples/ochre/ochre.rig.yaml');
  const rideCase = join(here, '../../validation/ride-cases/whoops-20.json');
  report(JSON.parse(execFileSync(process.execPath, ['--expose-gc', program, rig, rideCase]).toString()));
} finally {
  rmSync(folder, { recursive: true });
}

function report({ length, setups }: Answer): void {
  const exponents = {
    timeOverLength: slope(length.map(({ kilometres, seconds }) => [kilometres, seconds])),
    stepsOverLength: slope(length.map(({ kilometres, steps }) => [kilometres, steps])),
    timeOverSetups: slope(setups.map((round) => [round.setups, round.seconds])),
  };
  if (process.argv.includes('--json')) {
    console.log(JSON.stringify({ schema: 'lastinch/bench-linear/1', length, setups, exponents }, null, 2));
    return;
  }
  console.log(
    'rough road at 10 m/s, default accuracy, one thread; seconds of the processor, the least of three',
  );
  for (const { kilometres, seconds, steps } of length)
    console.log(
      `  ${String(kilometres).padStart(5)} km  ${(1000 * seconds).toFixed(1).padStart(8)} ms  ${(1000 * (seconds / kilometres)).toFixed(1).padStart(6)} ms a km  ${String(steps).padStart(7)} steps`,
    );
  console.log(
    `  time goes with length to the power ${exponents.timeOverLength.toFixed(3)}, steps to the power ${exponents.stepsOverLength.toFixed(3)}`,
  );
  console.log('batches of setups on whoops of 20 s, one thread');
  for (const { setups: count, seconds, heap } of setups)
    console.log(
      `  ${String(count).padStart(5)} setups  ${seconds.toFixed(2).padStart(6)} s  ${((1000 * seconds) / count).toFixed(1).padStart(6)} ms a setup  ${(heap / 1e6).toFixed(1)} MB held afterwards`,
    );
  console.log(`  time goes with the number of setups to the power ${exponents.timeOverSetups.toFixed(3)}`);
}

/** Slope of the straight line through the logarithms, least squares. */
function slope(points: readonly (readonly [number, number])[]): number {
  const logs = points.map(([x, y]) => [Math.log(x), Math.log(y)] as const);
  const meanX = logs.reduce((sum, [x]) => sum + x, 0) / logs.length;
  const meanY = logs.reduce((sum, [, y]) => sum + y, 0) / logs.length;
  const top = logs.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  return top / logs.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
}
