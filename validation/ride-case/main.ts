/**
 * `npm run -s case -- FILE…`: runs `ride-case/1` files, prints ours against theirs, exits 1 when one is outside its
 * tolerance and 2 when one cannot be read.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type CaseLine, compareCase } from './compare.ts';
import { CaseProblem, readRideCase } from './read.ts';

const args = process.argv.slice(2);
const files = args.filter((arg) => !arg.startsWith('--'));
const asJson = args.includes('--json');

const number = (value: number): string =>
  value === 0 ? '0' : Math.abs(value) < 1e-3 ? value.toExponential(3) : value.toPrecision(7);

function difference(line: CaseLine): string {
  if (!line.compared) return 'too small to compare';
  if (line.allowed.kind === 'absolute')
    return `${line.difference.toExponential(2)} of ±${line.allowed.value}`;
  const share = line.theirs === 0 ? line.difference : line.difference / Math.abs(line.theirs);
  return `${(100 * share).toFixed(4)} % of ±${+(100 * line.allowed.value).toPrecision(3)} %`;
}

let failed = 0;
let unreadable = 0;
const outcomes = [];

for (const file of files) {
  const path = resolve(process.env.INIT_CWD ?? '.', file);
  try {
    const outcome = compareCase(readRideCase(readFileSync(path, 'utf8')));
    if (!outcome.ok) failed += 1;
    const { lines, run } = outcome;
    outcomes.push({ name: outcome.name, ok: outcome.ok, lines, counters: run.counters, status: run.status });
    if (asJson) continue;
    const { steps, rejected, events, evaluations } = run.counters;
    console.log(`\n${outcome.ok ? 'ok  ' : 'FAIL'} ${outcome.name} (${run.status})`);
    for (const line of lines) {
      console.log(
        `  ${line.ok ? ' ' : '✗'} ${line.quantity.padEnd(26)} ours ${number(line.ours).padStart(13)}   theirs ${number(line.theirs).padStart(13)}   ${difference(line)}`,
      );
    }
    console.log(
      `    energy balance ${run.energy.relativeResidual.toExponential(1)}; ${steps} steps, ${rejected} rejected, ${events} events, ${evaluations} evaluations`,
    );
  } catch (error) {
    unreadable += 1;
    const reason =
      error instanceof CaseProblem || (error as NodeJS.ErrnoException).code !== undefined
        ? (error as Error).message
        : String((error as Error).stack);
    console.error(`${file}: ${reason}`);
  }
}

if (asJson) console.log(JSON.stringify({ schema: 'lastinch/case/1', cases: outcomes }, null, 1));
if (files.length === 0) {
  console.error('case: name one or more ride-case/1 files, for example validation/ride-cases/*.json');
  unreadable += 1;
}
if (!asJson) console.log(`\n${files.length - failed - unreadable} passed, ${failed + unreadable} failed`);
process.exitCode = unreadable > 0 ? 2 : failed > 0 ? 1 : 0;
