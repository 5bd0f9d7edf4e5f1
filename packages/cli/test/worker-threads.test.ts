import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type BatchRequest, startBatch } from '@lastinch/core';
import { build } from 'rolldown';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BATCH, crewContract } from '../../core/test/jobs/crew-contract.ts';
import { crewHere, ownThread, workerThreads } from '../src/hosts/worker-threads.ts';

const folder = mkdtempSync(join(tmpdir(), 'lastinch-worker-'));
const script = pathToFileURL(join(folder, 'worker.js'));
beforeAll(async () => {
  await build({
    input: resolve(import.meta.dirname, '../src/hosts/work-thread.ts'),
    platform: 'node',
    logLevel: 'silent',
    output: { file: join(folder, 'worker.js'), format: 'es' },
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

crewContract("the program's own thread", ownThread);
crewContract('one worker thread', () => workerThreads(script, 1));
crewContract('two worker threads', () => workerThreads(script, 2));

it("falls back to the program's own thread where the script of the workers is missing", () => {
  expect(crewHere(pathToFileURL(join(folder, 'gone.js'))).size).toBe(1);
});

it('says why when no worker can be started', async () => {
  const crew = workerThreads(pathToFileURL(join(folder, 'gone.js')), 2);
  const outcome = await startBatch(BATCH, crew).outcome;
  expect(outcome).toMatchObject({ kind: 'broken', message: expect.stringMatching(/gone\.js/) });
});

it('keeps other work going while threads are busy, and lets the process end after', async () => {
  const crew = workerThreads(script, 2);
  const long: BatchRequest = { ...BATCH, trials: 60 };
  let turns = 0;
  const timer = setInterval(() => {
    turns += 1;
  }, 1);
  const outcome = await startBatch(long, crew).outcome;
  clearInterval(timer);
  crew.close();
  expect(outcome.kind).toBe('done');
  expect(turns).toBeGreaterThan(5);
});
