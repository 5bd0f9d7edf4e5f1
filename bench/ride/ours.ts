/** Our engine as a contestant: `ours CASE SECONDS TOLERANCE…`, prints a line of JSON a tolerance, as rival.c does. */
import { readFileSync } from 'node:fs';
import { CORNERS, type RideRun, runRide, sampleCourse } from '@lastinch/core';
import { readRideCase } from '../../validation/ride-case/read.ts';

/** The compiler of the engine needs some hundred runs before it has seen everything; the rivals need none. */
const WARM_UP = 0.4;

const [file = '', budget = '0', ...tolerances] = process.argv.slice(2);
const { model, course, speed, duration, initialLift } = readRideCase(readFileSync(file, 'utf8'));
// The ground is sampled once, for us as for the rivals.
const track = { ...sampleCourse(course), initialLift };

for (const [k, each] of tolerances.entries()) {
  const tolerance = Number(each);
  const ride = () => runRide(model, track, { speed, duration, tolerance });
  let run = ride();
  if (k === 0) run = bestOf(ride, WARM_UP).run;
  const timed = bestOf(ride, Number(budget));
  run = timed.run;
  const isWhole = run.status === 'finished';
  console.log(
    JSON.stringify({
      seconds: timed.seconds,
      peakCrush: CORNERS.map((corner) => run.corners[corner].peakCrush),
      rms: isWhole ? run.body.rmsAcceleration : 1e99,
      steps: run.counters.steps,
      evaluations: run.counters.evaluations,
    }),
  );
}

function bestOf(ride: () => RideRun, seconds: number): { run: RideRun; seconds: number } {
  let run: RideRun;
  let best = Infinity;
  let spent = 0;
  let runs = 0;
  do {
    const from = process.hrtime.bigint();
    run = ride();
    const took = Number(process.hrtime.bigint() - from) / 1e9;
    spent += took;
    runs += 1;
    best = Math.min(best, took);
  } while (runs < 3 || spent < seconds);
  return { run, seconds: best };
}
