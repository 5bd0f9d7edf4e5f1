/**
 * `npm run bench:mesh`: time and peak memory of the solid of a stop of 60 × 70 mm and of its files, each in a process of
 * its own, best of several.
 */
import { spawnSync } from 'node:child_process';
import { cpus, loadavg } from 'node:os';

const ROUNDS = 3;
const KINDS = ['solid', '3mf', 'stl'] as const;
/** Asked of it: ten seconds, a gigabyte (issue 5). */
const [MOST_SECONDS, MOST_MEGABYTES] = [10, 1000];

interface Measured {
  readonly triangles: number;
  readonly seconds: number;
  readonly processorSeconds: number;
  readonly peakMegabytes: number;
  readonly worst: number;
}

const measure = (kind: string, cell: number): Measured => {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['--import', 'tsx', `${import.meta.dirname}/program.ts`, kind, String(cell)],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
};

console.log(`${cpus().length} × ${cpus()[0]?.model}, load ${loadavg()[0]?.toFixed(1)}`);
console.log(`asked of it: ${MOST_SECONDS} s, ${MOST_MEGABYTES} MB\n`);
console.log('cell    what    triangles       s   cpu s   peak MB   worst slice');
for (const cell of [10, 8, 6])
  for (const kind of KINDS) {
    const rounds = Array.from({ length: ROUNDS }, () => measure(kind, cell));
    const best = rounds.reduce((a, b) => (b.seconds < a.seconds ? b : a));
    const peak = Math.max(...rounds.map(({ peakMegabytes }) => peakMegabytes));
    console.log(
      [
        `${cell} mm`.padEnd(6),
        kind.padEnd(7),
        best.triangles.toLocaleString('en').padStart(9),
        best.seconds.toFixed(2).padStart(7),
        best.processorSeconds.toFixed(2).padStart(7),
        peak.toFixed(0).padStart(9),
        `${(100 * best.worst).toFixed(2)} %`.padStart(13),
      ].join(' '),
    );
  }
