/**
 * The bench itself, built: `program RIG CASE`. Cost against the length of the course and against the number of setups, and the
 * heap after few and after many setups, all in one thread. Time is that of the processor, the least of some runs taken in
 * turns, so that other work on the machine bends no exponent. Prints one line of JSON.
 */
import { readFileSync } from 'node:fs';
import {
  type BatchRequest,
  runRide,
  sampleCourse,
  serveWork,
  startBatch,
  type Track,
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
  const drives = KILOMETRES.map((kilometres) => ({
    kilometres,
    track: road(kilometres),
    seconds: Infinity,
    steps: 0,
  }));
  driveOn(drives[1].track, 500);
  for (let run = 0; run < RUNS; run += 1)
    for (const drive of drives) {
      const from = processorSeconds();
      drive.steps = driveOn(drive.track, 1000 * drive.kilometres);
      drive.seconds = Math.min(drive.seconds, processorSeconds() - from);
    }
  return drives.map(({ kilometres, seconds, steps }) => ({ kilometres, seconds, steps }));

  function road(kilometres: number): Track {
    return sampleCourse({
      kind: 'road-class',
      roughness: 4096e-6,
      length: 1000 * kilometres,
      fadeIn: 10,
      trackWidth: 1.5,
      seed: 1,
      mirrored: false,
    });
  }

  function driveOn(track: Track, length: number): number {
    const ride = runRide(model, track, { speed: SPEED, duration: length / SPEED });
    if (ride.status !== 'finished') throw new Error(`the ride over ${length} m ended as ${ride.status}`);
    return ride.counters.steps;
  }
}

/** Whole batches over one of the courses of `bench:batch`, asked and answered in this thread. */
async function overSetups() {
  await batchOf(30);
  const rounds = SETUPS.map((setups) => ({ setups, seconds: Infinity, heap: 0 }));
  for (let run = 0; run < RUNS; run += 1)
    for (const round of rounds) {
      round.seconds = Math.min(round.seconds, await batchOf(round.setups));
      round.heap = settledHeap();
    }
  return rounds;
}

/** Seconds of the processor. What was asked and answered is out of sight afterwards. */
async function batchOf(setups: number): Promise<number> {
  const whole = question(rig, 0, setups);
  const request: BatchRequest = { ...whole, courses: whole.courses.slice(COURSE, COURSE + 1) };
  const from = processorSeconds();
  await answered(request);
  return processorSeconds() - from;
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

/** Of this process with all its threads. */
function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}
