/**
 * `npm run -s bench:choose [-- --shard I/N]`: 5 000 candidates over 4 courses in 16 sampled rigs, by the built program on
 * as many threads as there are cores. Says how long it took, what became of the candidates, and how many stand.
 * A shard alone tells the same of a share of the parts.
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

const TARGET_SECONDS = 120;
const house = join(import.meta.dirname, '../..');

/** 2 settings × (2 stops × 5 spacers × 5 drops) at each end, invented like the rig. No limit takes any away. */
const END = `    stop: { soft: { price: 95, hours: 1 } }
    stopSpacer: { from: 1/4 in ± 1/32, to: 1 in, step: 1/4 in, price: 12, hours: 1 }
    seatAndStopDrop: { from: 1/2 in ± 1/32, to: 2 in, step: 1/2 in, price: 60, hours: 8 }
`;
const CHOICES = `choices:
  front:
${END}    trail: { shockSetting: [trail, road] }
    road: { shockSetting: [trail, road] }
  rear:
${END}  drive:
    - { course: whoops, trim: trail }
    - { course: ledge, trim: trail }
    - { course: connecting-road, trim: trail, speed: 25 mph, perDay: 2 mi }
    - { course: connecting-road, trim: road }
  fastest: { course: whoops, trim: trail, from: 5 mph, to: 45 mph }
`;

/** What is read of a file of parts. */
interface Kept {
  readonly done: readonly {
    readonly tally: {
      readonly seen: number;
      readonly judged: number;
      readonly barred: number;
      readonly discarded: readonly number[];
    };
    readonly front: readonly unknown[];
  }[];
}

const folder = mkdtempSync(join(tmpdir(), 'lastinch-bench-choose-'));
try {
  await build({
    configFile: join(house, 'packages/cli/vite.config.ts'),
    build: { outDir: join(folder, 'program'), emptyOutDir: true },
    logLevel: 'silent',
  });
  chmodSync(folder, 0o755);
  const rig = readFileSync(join(house, 'examples/ochre/ochre.rig.yaml'), 'utf8');
  const file = join(folder, 'many.rig.yaml');
  writeFileSync(
    file,
    rig.replace(/^choices:\n(?: .*\n)+/m, () => CHOICES),
  );
  const kept = join(folder, 'parts.json');
  const at = process.argv.indexOf('--shard');
  const shard = at < 0 ? '1/1' : (process.argv[at + 1] ?? '1/1');
  const loadBefore = loadavg()[0] ?? 0;
  const since = performance.now();
  execFileSync(
    process.execPath,
    [join(folder, 'program/lastinch.js'), 'choose', file, '--shard', shard, '-o', kept],
    { stdio: ['ignore', 'ignore', 'inherit'], maxBuffer: 1e9 },
  );
  const seconds = (performance.now() - since) / 1000;
  report(JSON.parse(readFileSync(kept, 'utf8')) as Kept, { shard, seconds, loadBefore });
} finally {
  rmSync(folder, { recursive: true });
}

interface Run {
  readonly shard: string;
  readonly seconds: number;
  readonly loadBefore: number;
}

function report({ done }: Kept, { shard, seconds, loadBefore }: Run): void {
  const sum = (of: (one: Kept['done'][number]) => number): number =>
    done.reduce((total, one) => total + of(one), 0);
  const seen = sum(({ tally }) => tally.seen);
  const share = (count: number): string => `${count} (${Math.round((100 * count) / seen)} %)`;
  const stages = done[0]?.tally.discarded.length ?? 0;
  const lines = [
    `${cpus()[0]?.model ?? 'unknown'}, ${availableParallelism()} threads, node ${process.version}, load ${loadBefore.toFixed(1)} before`,
    `shard ${shard}: ${seen} candidates in ${seconds.toFixed(0)} s (target for all 5 000: ${TARGET_SECONDS} s)`,
    `discarded by bounds ${share(sum(({ tally }) => tally.discarded.reduce((a, b) => a + b, 0)))}, judged in full ${share(sum(({ tally }) => tally.judged))}, barred ${share(sum(({ tally }) => tally.barred))}`,
    `discarded after each stage: ${Array.from({ length: stages }, (_, k) => sum(({ tally }) => tally.discarded[k] ?? 0)).join(' ')}`,
  ];
  console.log(lines.join('\n'));
}
