import { exposureFindings } from '../exposure/findings.ts';
import type { Dimension, Figure } from '../finding/figure.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import { knownPaths } from '../ride/paths-from-setup.ts';
import type { RideRun } from '../ride/result.ts';
import { runRide } from '../ride/run.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { travelNeeds } from '../travel/travel.ts';
import { worstFirst } from './check.ts';
import { drawsToDrive, durationOf, speedProblem, TRIAL_TOLERANCE } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';
import type { CornerInterval, RideAnswer, RideRequest } from './protocol.ts';
import { ExposureBook } from './ride-exposure.ts';
import { rideFindings } from './ride-findings.ts';
import { SEAT_RATE } from './seat-record.ts';
import { spreadOf } from './spread.ts';

/**
 * Drives one setup over one course: the run at the nominal readings with its history, the interval of every headline
 * figure under the measurement tolerances, what the seat takes, and findings against the owner's limits.
 *
 * @param onProgress – share of the work done, 0…1, never falling
 * @failure `ask-speed-absurd`, `ask-unknown-setup`, or the readings that the setup still needs
 */
export function rideRig(request: RideRequest, onProgress?: (share: number) => void): Result<RideAnswer> {
  const { rig, speed, course, courseName } = request;
  const problems = speedProblem(speed);
  if (problems.length > 0) return bad(...problems);
  const resolved = resolveSetup(rig, request.setup);
  if (!resolved.ok) return resolved;
  const setup = resolved.value;
  const needs = travelNeeds(setup);
  if (needs.length > 0) return bad(...needs);

  const modelOf = rideModels(setup, drawsToDrive(rig, request));
  const grounds = new FeltGrounds(request.tyres);
  const track = grounds.of(course, setup);
  const drive = (model: RideModel, historyRate: number, tolerance?: number): RideRun =>
    runRide(model, track, {
      speed,
      duration: durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed),
      historyRate,
      shakeRate: SEAT_RATE,
      tolerance,
    });
  const letGo = course.kind === 'drop';
  const book = new ExposureBook({
    trials: request.trials,
    seed: request.seed,
    speed: letGo ? null : speed,
    distancePerDay: request.distancePerDay ?? null,
  });
  /** The record of the seat is long and goes into the book at once: nobody gets it who did not ask. */
  const ridden = (trial: number, historyRate: number, tolerance?: number): RideRun => {
    const model = modelOf(trial);
    const one = drive(model, historyRate, tolerance);
    book.take(one, model, trial);
    return { ...one, shake: null };
  };
  const run = ridden(0, request.historyRate);
  const runs: RideRun[] = [];
  for (let trial = 1; trial <= request.trials; trial += 1) {
    onProgress?.(trial / (request.trials + 1));
    runs.push(ridden(trial, 0, TRIAL_TOLERANCE));
  }
  onProgress?.(1);

  const figure = (dimension: Dimension, of: (one: RideRun) => number): Figure => ({
    dimension,
    value: of(run),
    tolerance: spreadOf(runs, run, of),
  });
  const corners = Object.fromEntries(
    CORNERS.map((corner): [Corner, CornerInterval] => [
      corner,
      {
        peakTravel: figure('length', (one) => one.corners[corner].peakTravel),
        peakCrush: figure('length', (one) => one.corners[corner].peakCrush),
        clearance: figure('length', (one) => one.corners[corner].clearance),
        peakStopForce: figure('force', (one) => one.corners[corner].peakStopForce),
        airborneShare: figure('ratio', (one) => one.corners[corner].airborneShare),
      },
    ]),
  ) as Record<Corner, CornerInterval>;
  const body = {
    peakAcceleration: figure('acceleration', (one) => one.body.peakAcceleration),
    rmsAcceleration: figure('acceleration', (one) => one.body.rmsAcceleration),
  };
  const exposure = book.finish();
  const answer = {
    rig: rig.name,
    setup: setup.id,
    course: courseName,
    tyres: grounds.foot(setup),
    paths: knownPaths(setup),
    speed,
    run,
    corners,
    body,
    exposure,
  };
  const { result, figures, at } = exposure;
  const said = letGo ? [] : exposureFindings(result, figures, { course: courseName, speed, seat: at });
  return good({ ...answer, findings: worstFirst([...rideFindings(setup, answer, runs), ...said]) });
}
