import type { Dimension, Figure } from '../finding/figure.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import type { RideRun } from '../ride/result.ts';
import { runRide } from '../ride/run.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { travelNeeds } from '../travel/travel.ts';
import { drawsToDrive, durationOf, speedProblem, TRIAL_TOLERANCE } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';
import type { CornerInterval, RideAnswer, RideRequest } from './protocol.ts';
import { rideFindings } from './ride-findings.ts';
import { spreadOf } from './spread.ts';

/**
 * Drives one setup over one course: the run at the nominal readings with its history, the interval of every headline
 * figure under the measurement tolerances, and findings against the owner's limits.
 *
 * @param onProgress – share of the work done, 0…1, never falling
 * @failure `ask-speed-absurd`, `ask-unknown-setup`, or the readings that the setup still needs
 */
export function rideRig(request: RideRequest, onProgress?: (share: number) => void): Result<RideAnswer> {
  const { rig, speed, course } = request;
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
      tolerance,
    });
  const run = drive(modelOf(0), request.historyRate);
  const runs: RideRun[] = [];
  for (let trial = 1; trial <= request.trials; trial += 1) {
    onProgress?.(trial / (request.trials + 1));
    runs.push(drive(modelOf(trial), 0, TRIAL_TOLERANCE));
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
  const answer = {
    rig: rig.name,
    setup: setup.id,
    course: request.courseName,
    tyres: grounds.foot(setup),
    speed,
    run,
    corners,
    body,
  };
  return good({ ...answer, findings: rideFindings(setup, answer, runs) });
}
