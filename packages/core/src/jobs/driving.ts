import type { Track } from '../course/sampled.ts';
import type { Problem } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { DEFAULT_TRIALS, type Draws, drawsOf, firstTrials, NOMINAL_DRAWS } from '../stance/draws.ts';

/** Fastest speed that is worth an answer [m/s], 134 mph: beyond it somebody mistook a unit. */
export const FASTEST = 60;
/** Slowest [m/s], 0.22 mph. */
export const SLOWEST = 0.1;

/** Trials ask for spread, not for a fourth digit: their local error may be this much larger. */
export const TRIAL_TOLERANCE = 3e-4;

/**
 * The sampled rigs that are driven: the first ones of those behind the travel verdict, so that trial 17 is the same rig
 * in every question.
 */
export const drawsToDrive = (rig: Rig, { trials, seed }: { trials: number; seed: number }): Draws =>
  trials === 0
    ? NOMINAL_DRAWS
    : firstTrials(drawsOf(rig, { seed, trials: Math.max(trials, DEFAULT_TRIALS) }), trials);

/** Time left at the end for the rig to settle [s]. */
const SETTLE = 1.5;
/** How long a rig that is let go is watched [s]. */
const DROP_DURATION = 3;

/** How long a track is driven [s]: until the rear axle has passed the last of the ground, and a little more. */
export function durationOf(track: Track, wheelbase: number, speed: number): number {
  if (track.initialLift > 0) return DROP_DURATION;
  return (track.end + wheelbase) / speed + SETTLE;
}

/** What is wrong with a speed; nothing when it can be driven. */
export function speedProblem(speed: number): readonly Problem[] {
  if (speed >= SLOWEST && speed <= FASTEST) return [];
  return [
    {
      code: 'ask-speed-absurd',
      where: { key: 'speed' },
      found: `${speed} m/s`,
      accepted: `${SLOWEST} m/s to ${FASTEST} m/s, for example 20 mph or 32 km/h`,
    },
  ];
}
