/**
 * `npm run -s bench:log [-- --json]`: how fast a log of a drive is read, by the
 * processor's seconds. Target: 50 MB/s.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'rolldown';

const TARGET = 50;
const folder = mkdtempSync(join(tmpdir(), 'lastinch-bench-log-'));
try {
  const program = join(folder, 'program.mjs');
  await build({
    input: join(import.meta.dirname, 'program.ts'),
    platform: 'node',
    logLevel: 'silent',
    output: { file: program, format: 'es', codeSplitting: false },
  });
  const answer = JSON.parse(execFileSync(process.execPath, [program, '64']).toString()) as {
    readonly megabytes: number;
    readonly point: { readonly megabytesPerSecond: number; readonly rows: number };
    readonly comma: { readonly megabytesPerSecond: number; readonly rows: number };
  };
  if (process.argv.includes('--json'))
    console.log(JSON.stringify({ schema: 'lastinch/bench-log/1', ...answer, target: TARGET }, null, 2));
  else
    for (const [name, { megabytesPerSecond, rows }] of [
      ['decimal points', answer.point],
      ['decimal commas', answer.comma],
    ] as const)
      console.log(
        `${name}: ${megabytesPerSecond.toFixed(0)} MB a second of the processor, ${rows} rows of ${answer.megabytes} MB; target ${TARGET}: ${megabytesPerSecond >= TARGET ? 'met' : 'missed'}`,
      );
} finally {
  rmSync(folder, { recursive: true });
}
