import { CORNERS, type RideRun, runRide, sampleCourse } from '@lastinch/core';
import { type Allowed, CaseProblem, type RideCase } from './read.ts';

/** One number of a case, ours against theirs. */
export interface CaseLine {
  readonly quantity: string;
  readonly ours: number;
  readonly theirs: number;
  readonly difference: number;
  readonly allowed: Allowed;
  /** False for peaks too small to be compared: below 1 mm or 100 N, as the format says. */
  readonly compared: boolean;
  readonly ok: boolean;
}

export interface CaseOutcome {
  readonly name: string;
  readonly run: RideRun;
  readonly lines: readonly CaseLine[];
  readonly ok: boolean;
}

/** Used where a case gives no tolerance of its own. */
const DEFAULT: Record<string, Allowed> = {
  peakCrush: { kind: 'relative', value: 0.001 },
  peakStopForce: { kind: 'relative', value: 0.01 },
  peakBodyAcceleration: { kind: 'relative', value: 0.01 },
  rmsBodyAcceleration: { kind: 'relative', value: 0.001 },
  tyreAirborneShare: { kind: 'relative', value: 0.003 },
  bodyHeaveAtEnd: { kind: 'absolute', value: 1e-4 },
  bodyPitchAtEnd: { kind: 'absolute', value: 1e-4 },
};

const TOO_SMALL: Record<string, number> = { peakCrush: 1e-3, peakStopForce: 100 };

/** Our answer to every quantity that a case may expect. */
function ours(run: RideRun): Record<string, number | readonly number[]> {
  const corners = CORNERS.map((corner) => run.corners[corner]);
  return {
    peakCrush: corners.map((corner) => corner.peakCrush),
    peakStopForce: corners.map((corner) => corner.peakStopForce),
    peakBodyAcceleration: run.body.peakAcceleration,
    rmsBodyAcceleration: run.body.rmsAcceleration,
    tyreAirborneShare: corners.reduce((sum, corner) => sum + corner.airborneShare, 0) / 4,
    bodyHeaveAtEnd: run.body.heaveAtEnd,
    bodyPitchAtEnd: run.body.pitchAtEnd,
  };
}

/** Local error for a case [relative, see RunOptions]: its peaks stay far inside the 0.1 % of the format. */
const CASE_TOLERANCE = 1e-5;

/** Runs a case with our engine. */
export function rideOf(rideCase: RideCase, tolerance = CASE_TOLERANCE): RideRun {
  const track = { ...sampleCourse(rideCase.course), initialLift: rideCase.initialLift };
  return runRide(rideCase.model, track, {
    speed: rideCase.speed,
    duration: rideCase.duration,
    tolerance,
  });
}

/** Ours against theirs, number by number. */
export function compareCase(rideCase: RideCase, tolerance?: number): CaseOutcome {
  const run = rideOf(rideCase, tolerance);
  const mine = ours(run);
  const lines: CaseLine[] = [];
  for (const [quantity, theirs] of Object.entries(rideCase.expected)) {
    if (quantity === 'order') continue;
    if (!(quantity in mine)) throw new CaseProblem(`expected.${quantity}: not a quantity that a run answers`);
    const allowed = rideCase.tolerance[quantity] ?? DEFAULT[quantity];
    const values = Array.isArray(theirs) ? theirs : [theirs as number];
    values.forEach((expected: number, k: number) => {
      const found = Array.isArray(mine[quantity])
        ? (mine[quantity] as number[])[k]
        : (mine[quantity] as number);
      lines.push(
        compareOne(
          values.length > 1 ? `${quantity}.${CORNERS[k]}` : quantity,
          quantity,
          found,
          expected,
          allowed,
        ),
      );
    });
  }
  const ok = run.status === 'finished' && lines.every((line) => line.ok);
  return { name: rideCase.name, run, lines, ok };
}

function compareOne(
  label: string,
  quantity: string,
  found: number,
  expected: number,
  allowed: Allowed,
): CaseLine {
  const difference = found - expected;
  const small = TOO_SMALL[quantity] ?? 0;
  // A peak that is not a number is always compared, and never ok.
  const compared = !(Math.max(Math.abs(expected), Math.abs(found)) < small);
  const bound = allowed.kind === 'absolute' ? allowed.value : allowed.value * Math.abs(expected);
  return {
    quantity: label,
    ours: found,
    theirs: expected,
    difference,
    allowed,
    compared,
    ok: !compared || Math.abs(difference) <= bound,
  };
}
