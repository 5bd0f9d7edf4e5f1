import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type Crew, sameThreadCrew, threadCrew, type WorkAsk, type WorkThread } from '@lastinch/core';

/** More share out no faster what takes seconds, and each takes its memory. */
const MOST_WORKERS = 8;

const clock = (): number => performance.now();

/** The script of the worker threads, beside the built program. */
export const WORKER_SCRIPT = new URL('./lastinch-worker.js', import.meta.url);

/** As many worker threads as this machine has room for; the program's own thread where their script is not at hand. */
export function crewHere(script: URL = WORKER_SCRIPT): Crew {
  const size = Math.min(MOST_WORKERS, availableParallelism());
  if (size < 2 || !existsSync(fileURLToPath(script))) return ownThread();
  return workerThreads(script, size);
}

/** @param script – built from `work-thread.ts` */
export const workerThreads = (script: URL, size: number): Crew =>
  threadCrew(() => spawn(script), size, clock);

/** No other thread: work stops for a moment after each stretch, so that signals and the progress line get their turn. */
export const ownThread = (): Crew =>
  sameThreadCrew(() => new Promise((resume) => setImmediate(resume)), clock);

/** A worker thread of Node in the dress of a browser's. */
function spawn(script: URL): WorkThread {
  const worker = new Worker(script);
  let ended = false;
  const thread: WorkThread = {
    onmessage: null,
    onerror: null,
    postMessage: (ask: WorkAsk) => worker.postMessage(ask),
    terminate() {
      ended = true;
      void worker.terminate();
    },
  };
  worker.on('message', (data) => thread.onmessage?.({ data }));
  worker.on('error', (error) => thread.onerror?.({ message: error.message }));
  worker.on('exit', (code) => {
    if (!ended) thread.onerror?.({ message: `A worker thread ended with ${code}.` });
  });
  return thread;
}
