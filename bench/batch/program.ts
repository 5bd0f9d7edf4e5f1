/** The bench itself, built: `program WORKERS TRIALS SETUPS [WORKER_SCRIPT]`, prints one line of JSON. */
import { readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { type BatchAnswer, startBatch, threadCrew, type WorkThread } from '@lastinch/core';
import { readRig } from '@lastinch/core/rigfile';
import { question, SECONDS } from './question.ts';

const [rigFile = '', script = '', workers = '1', trials = '0', setups = '100'] = process.argv.slice(2);

const read = readRig(readFileSync(rigFile, 'utf8'), { file: rigFile });
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const request = question(read.value, Number(trials), Number(setups));

function spawn(): WorkThread {
  const worker = new Worker(script);
  const thread: WorkThread = {
    onmessage: null,
    onerror: null,
    postMessage: (ask) => worker.postMessage(ask),
    terminate: () => void worker.terminate(),
  };
  worker.on('message', (data) => thread.onmessage?.({ data }));
  worker.on('error', (error) => thread.onerror?.({ message: error.message }));
  return thread;
}

const crew = threadCrew(spawn, Number(workers), () => performance.now());
/** Resident memory of the whole process with all its threads [MB], at each quarter of the work. */
const memory: number[] = [];
const cpuBefore = process.cpuUsage();
const since = performance.now();
const outcome = await startBatch(request, crew, {
  onProgress: (share) => {
    while (memory.length < 4 && share >= (memory.length + 1) / 4) memory.push(residentMegabytes());
  },
}).outcome;
const seconds = (performance.now() - since) / 1000;
const cpu = process.cpuUsage(cpuBefore);
crew.close();
if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));

const { answer, counters } = outcome;
console.log(
  JSON.stringify({
    workers: Number(workers),
    trials: Number(trials),
    setupCourses: answer.results.length,
    runs: counters.units,
    seconds,
    // Of all threads: what the wall clock would show with the machine to ourselves is this over the workers.
    cpuSeconds: (cpu.user + cpu.system) / 1e6,
    simulatedPerSecond: (counters.units * SECONDS) / seconds,
    memory,
    stretches: counters.stretches,
    mostWaiting: counters.mostWaiting,
    unfinished: answer.results.filter(({ status }) => status !== 'finished').length,
    digest: digestOf(answer),
  }),
);

function residentMegabytes(): number {
  return Math.round(process.memoryUsage().rss / 1e6);
}

/** One number that changes with any bit of any figure: FNV-1a over all of them. */
function digestOf({ results }: BatchAnswer): string {
  const text = JSON.stringify(results);
  let hash = 0x811c9dc5;
  for (let k = 0; k < text.length; k += 1) hash = Math.imul(hash ^ text.charCodeAt(k), 0x01000193);
  return (hash >>> 0).toString(16);
}
