import { blameAt } from './blame.ts';
import type { AxleCurves, CurveOptions } from './curves-result.ts';
import { headingOf, knuckleTurn } from './drag-link.ts';
import type { AxleGeometry, Unreachable } from './geometry.ts';
import { BUMP, GIVE, STATES, WIND, X, Y, YAW } from './layout.ts';
import { MOTION, motionInto, SPEED, SPIN } from './motion.ts';
import { follow, remember, restore, type Solver, solverOf } from './solve.ts';
import { type FollowedStrut, followedStruts, measureStrut } from './strut-curves.ts';

/** The curves of `AxleCurves` that are one number a pose and always there. */
const SINGLE = [
  'forward',
  'sideways',
  'steer',
  'bumpSteer',
  'rollSteer',
  'pinion',
  'caster',
  'instantX',
  'instantZ',
  'antiSlope',
  'rollCentreZ',
  'rollCentreHeight',
  'rollAxisRise',
  'rodGive',
  'clampTurn',
] as const;
type Single = Record<(typeof SINGLE)[number], Float64Array>;

/**
 * Everything that moves with an axle over a grid of bump and roll, from the motion at each instant rather than from
 * lines drawn on paper; where the drawing applies the two are the same.
 *
 * **Pinion and caster**: turn of the axle about its hub line. **Steer**: direction of the hub line seen from above.
 * Slopes are exact (implicit function), not differences.
 *
 * **Instant centre**: the point of the plane through the hub-line centre, seen from the side, that stands still when
 * the axle heaves with its roll held; where the links of a side view meet.
 *
 * **Anti-squat, anti-lift, anti-dive**: the wheel locked to the axle, as with a final drive in the axle and with
 * brakes on it, so drive and brakes share one line. Its rise from the contact patch to the instant centre,
 *
 *     antiSlope = ∓ (fore-aft speed of the patch) ÷ (its vertical speed),   − rear, + front
 *     antiDrive = share·antiSlope·wheelbase ÷ cgHeight
 *
 * is 1 (100 %) where the links alone carry the load transfer of a force put down at that axle. cgHeight is that of
 * the whole vehicle, the mass of the axle itself is left out, the centre of gravity is not moved with the pose.
 *
 * **Roll centre**: the point in the plane across the axle through its hub line, on the centre line, that does not move
 * sideways when axle and body roll against each other with the bump held; there a sideways force on the body rolls
 * nothing. With one Panhard and level links it is where the bar crosses the centre plane. **Roll axis**: the line of
 * all such points on the centre plane; its rise is the turn about z by the turn about x.
 *
 * @returns flat arrays, not a number where a pose is out of reach
 * @validity as `poseOf`; roll centre moments: links carry forces, bushes no moments
 * @source instantaneous kinematics and virtual work; SAE J670 for the meaning of roll centre (from memory)
 */
export function curvesOf(geometry: AxleGeometry, options: CurveOptions): AxleCurves {
  const bumps = Float64Array.from(options.bumps);
  const rolls = Float64Array.from(options.rolls);
  const poses = bumps.length * rolls.length;
  const curve = () => new Float64Array(poses).fill(Number.NaN);
  const single = Object.fromEntries(SINGLE.map((name) => [name, curve()])) as Single;
  const struts = followedStruts(geometry, poses);
  const wheelSteer = options.dragLink === undefined ? null : curve();
  const reached = new Uint8Array(poses);

  const solver = solverOf(geometry);
  const heave = new Float64Array(MOTION);
  const roll = new Float64Array(MOTION);
  const middle = new Float64Array(3 * STATES);
  const column = new Float64Array(3 * STATES);
  let nearest: { readonly bump: number; readonly roll: number } | null = null;
  const far = (bump: number, angle: number) => Math.abs(bump) + geometry.halfTrack * Math.abs(angle);
  const missed = (bump: number, angle: number) => {
    if (nearest === null || far(bump, angle) < far(nearest.bump, nearest.roll))
      nearest = { bump, roll: angle };
  };
  remember(solver, middle);

  for (const bumpOrder of outward(bumps)) {
    restore(solver, middle);
    for (const i of bumpOrder) {
      if (follow(solver, bumps[i], 0) < 1) {
        missed(bumps[i], 0);
        break;
      }
      remember(solver, column);
      for (const rollOrder of outward(rolls)) {
        restore(solver, column);
        let turned = 0;
        for (const j of rollOrder) {
          if (follow(solver, bumps[i], rolls[j]) < 1) {
            missed(bumps[i], rolls[j]);
            break;
          }
          const at = i * rolls.length + j;
          reached[at] = 1;
          motionInto(solver, solver.byBump, heave);
          motionInto(solver, solver.byRoll, roll);
          measure(solver, single, heave, roll, at, options.end === 'rear' ? -1 : 1);
          for (const strut of struts) measureStrut(solver, strut, heave, roll, at);
          if (wheelSteer !== null && options.dragLink !== undefined) {
            const next = knuckleTurn(solver, options.dragLink, turned);
            wheelSteer[at] = headingOf(solver, next);
            turned = Number.isNaN(next) ? 0 : next;
          }
        }
      }
    }
  }
  return {
    bumps,
    rolls,
    reached,
    unreachable: nearest === null ? null : why(geometry, nearest),
    ...single,
    ...antisOf(single.antiSlope, options),
    wheelSteer,
    struts: Object.fromEntries(struts.map(({ id, curves }: FollowedStrut) => [id, curves])),
  };
}

function why(
  geometry: AxleGeometry,
  { bump, roll }: { readonly bump: number; readonly roll: number },
): Unreachable {
  const solver = solverOf(geometry);
  follow(solver, bump, roll);
  return blameAt(solver, bump, roll);
}

function antisOf(slope: Float64Array, { anti }: CurveOptions): Pick<AxleCurves, 'antiDrive' | 'antiBrake'> {
  if (anti === undefined) return { antiDrive: null, antiBrake: null };
  const whole = anti.wheelbase / anti.cgHeight;
  return {
    antiDrive: slope.map((rise) => anti.driveShare * rise * whole),
    antiBrake: slope.map((rise) => anti.brakeShare * rise * whole),
  };
}

/** Indices from the middle out: first those not below zero, rising, then those below, falling. */
function outward(values: Float64Array): readonly [number[], number[]] {
  const all = [...values.keys()].sort((a, b) => Math.abs(values[a]) - Math.abs(values[b]));
  return [all.filter((i) => values[i] >= 0), all.filter((i) => values[i] < 0)];
}

/** Fills the curves of one number at the pose where the solver stands. */
function measure(
  { q, byBump, byRoll, conditions }: Solver,
  into: Single,
  heave: Float64Array,
  roll: Float64Array,
  at: number,
  sense: 1 | -1,
): void {
  const { geometry, clamps, share } = conditions;
  into.forward[at] = q[X];
  into.sideways[at] = q[Y];
  into.steer[at] = q[YAW];
  into.bumpSteer[at] = byBump[YAW];
  into.rollSteer[at] = byRoll[YAW];
  into.pinion[at] = sense * q[WIND];
  into.caster[at] = -q[WIND];

  const z = geometry.centre[2] + q[BUMP];
  const pitching = heave[SPIN + 1];
  into.instantX[at] = geometry.centre[0] + q[X] + 1 / pitching;
  into.instantZ[at] = z - heave[SPEED] / pitching;
  into.antiSlope[at] = sense * (heave[SPEED] - pitching * geometry.tyreRadius);

  const rise = roll[SPEED + 1] / roll[SPIN];
  into.rollCentreZ[at] = z + rise;
  into.rollCentreHeight[at] = geometry.tyreRadius + rise;
  into.rollAxisRise[at] = roll[SPIN + 2] / roll[SPIN];

  let give = 0;
  for (let i = 0; i < share.length; i += 1) give = Math.max(give, Math.abs(share[i] * q[GIVE]));
  into.rodGive[at] = give;
  into.clampTurn[at] = clamps.length === 0 ? 0 : Math.max(Math.abs(clamps[0]), Math.abs(clamps[1]));
}
