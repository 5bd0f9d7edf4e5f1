/**
 * Works the finite-element decks out again with CalculiX and holds the figures against the stored ones. Ends with an
 * error when one differs, or when something that is needed is missing: a comparison that is skipped proves nothing.
 * `--store` writes the new figures down instead, for a person to look at in `git diff`.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { installOnDebian, missingOf, missingText, needsOf } from './find-solver.ts';
import { agrees, differences, type Results, STORED, storedResults, TOLERANCE } from './stored.ts';

const PYTHON = process.env.PYTHON || 'python3';
const CCX = process.env.CCX || 'ccx';
const HERE = fileURLToPath(new URL('.', import.meta.url));

function fail(text: string): never {
  console.error(text);
  process.exit(1);
}

function python(script: string, ...words: readonly string[]): string {
  const run = spawnSync(PYTHON, ['-B', join(HERE, script), ...words], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  if (run.status !== 0) fail(`${script} ended with an error:\n${run.stderr || run.error?.message}`);
  return run.stdout;
}

function solve(folder: string, deck: string): void {
  const began = performance.now();
  const run = spawnSync(CCX, ['-i', deck], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
    env: { ...process.env, OMP_NUM_THREADS: process.env.OMP_NUM_THREADS || '2' },
  });
  if (run.status !== 0) fail(`CalculiX did not finish ${deck}:\n${run.stdout?.slice(-1500)}`);
  console.log(`${deck.padEnd(26)} ${((performance.now() - began) / 1000).toFixed(1)} s`);
}

function workedOut(folder: string): Results {
  for (const deck of python('decks.py', folder).trim().split('\n')) solve(folder, deck);
  const pressed = JSON.parse(python('collect.py', folder)) as Results;
  console.log('gyroid by voxels, about a minute');
  return { ...pressed, ...(JSON.parse(python('gyroid.py')) as Results) };
}

const needs = needsOf(process.env);
if (missingOf(needs).length > 0) installOnDebian(missingOf(needs), process.env);
const missing = missingOf(needs);
if (missing.length > 0) fail(missingText(missing));

const folder = mkdtempSync(join(tmpdir(), 'decks-'));
try {
  const again = workedOut(folder);
  if (process.argv.includes('--store')) {
    writeFileSync(STORED, `${JSON.stringify(again, null, 2)}\n`);
    console.log('Stored. Run biome over results.json, the makers that read it, and look at the difference.');
  } else {
    const rows = differences(storedResults(), again);
    console.log(`\ncase                       largest difference, ${TOLERANCE} allowed`);
    for (const row of rows)
      console.log(
        `${row.name.padEnd(26)} ${row.fault ?? row.worst.toExponential(1)}${agrees(row) ? '' : '  DIFFERS'}`,
      );
    if (!rows.every(agrees)) fail('\nThe decks no longer give the stored results.');
    console.log('\nAll stored results come out again.');
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
