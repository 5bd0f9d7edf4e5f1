/**
 * The bench itself, built: `program RIG CASE`. Cost against the length of the course and against the number of setups, and the
 * heap after few and after many setups, all in one thread. Prints one line of JSON.
 */
import { readFileSync } from 'node:fs';
import {
  type BatchRequest,
  runRide,
  sampleCourse,
  serveWork,
  startBatch,
  threadCrew,
  type WorkThread,
} from '@lastinch/core';
import { readRig } from '@lastinch/core/rigfile';
import { readRideCase } from '../../validation/ride-case/read.ts';
import { question } from '../batch/question.ts';

/** Most of the work is there from here on; shorter runs are start-up. */
const KILOMETRES = [0.25, 0.5, 1, 2, 4, 8];
const SETUPS = [10, 30, 100, 300, 1000];
const SPEED = 10;
const RUNS = 3;
/** Of `bench:batch`: whoops of 0.1 m. */
const COURSE = 7;

const [file = '', caseFile = ''] = process.argv.slice(2);
const read = readRig(readFileSync(file, 'utf8'), { file });
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const rig = read.value;

console.log(JSON.stringify({ length: overLength(), setups: await overSetups() }));

function overLength() {
  const { model } = readRideCase(readFileSync(caseFile, 'utf8'));
  return [0.5, ...KILOMETRES].map(overOne).slice(1);

  function overOne(kilometres: number) {
    const length = 1000 * kilometres;
    const track = sampleCourse({
      kind: 'road-class',
      roughness: 4096e-6,
      length,
      fadeIn: 10,
      trackWidth: 1.5,
      seed: 1,
      mirrored: false,
    });
    let seconds = Infinity;
    let steps = 0;
    for (let run = 0; run < RUNS; run += 1) {
      const from = performance.now();
      const ride = runRide(model, track, { speed: SPEED, duration: length / SPEED });
      seconds = Math.min(seconds, (performance.now() - from) / 1000);
      if (ride.status !== 'finished')
        throw new Error(`the ride over ${kilometres} km ended as ${ride.status}`);
      steps = ride.counters.steps;
    }
    return { kilometres, seconds, steps };
  }
}

/** Whole batches over one of the courses of `bench:batch`, asked and answered in this thread. */
async function overSetups() {
  await batchOf(30);
  const rounds: { setups: number; seconds: number; heap: number }[] = [];
  for (const setups of SETUPS) {
    const seconds = await batchOf(setups);
    rounds.push({ setups, seconds, heap: settledHeap() });
  }
  return rounds;
}

/** Seconds, the best of some runs. What was asked and answered is out of sight afterwards. */
async function batchOf(setups: number): Promise<number> {
  const whole = question(rig, 0, setups);
  const request: BatchRequest = { ...whole, courses: whole.courses.slice(COURSE, COURSE + 1) };
  let seconds = Infinity;
  for (let run = 0; run < (setups < 300 ? RUNS : 1); run += 1) {
    const from = performance.now();
    await answered(request);
    seconds = Math.min(seconds, (performance.now() - from) / 1000);
  }
  return seconds;
}

async function answered(request: BatchRequest): Promise<void> {
  const crew = threadCrew(sameThread, 1, () => performance.now());
  const outcome = await startBatch(request, crew).outcome;
  crew.close();
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
}

function sameThread(): WorkThread {
  const serve = serveWork((reply) => setImmediate(() => thread.onmessage?.({ data: reply })));
  const thread: WorkThread = {
    onmessage: null,
    onerror: null,
    postMessage: (ask) => void setImmediate(() => serve(ask)),
    terminate: () => undefined,
  };
  return thread;
}

/** What is still held once everything that can go has gone [bytes]; needs --expose-gc. */
function settledHeap(): number {
  for (let k = 0; k < 3; k += 1) globalThis.gc?.();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}
