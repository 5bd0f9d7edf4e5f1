import { liftedHeight } from '../elements/axle-lift.ts';
import { ENDS, type End } from '../finding/place.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from './columns.ts';
import type { Draws } from './draws.ts';
import type { Moves } from './moves.ts';
import type { Weights } from './weights.ts';

/** A centre of gravity, sampled [m]: behind the front axle, left of the centre line, above the ground. */
export interface SampledPlace {
  readonly behindFrontAxle: Column;
  readonly left: Column;
  readonly height: Column;
}

/**
 * Centres of gravity of the whole rig and of what stands on the springs, by moments of the wheel loads.
 *
 *     x = wheelbase·rear ÷ total,   y = Σ ends (left − right)·track ÷ 2 ÷ total
 *     lift = (front lift·front + rear lift·rear) ÷ sprung mass,   front, rear: sprung mass of each end
 *     sprung height = (total·height − Σ axle mass·tyre radius) ÷ sprung mass + lift
 *     whole height = height + lift·sprung mass ÷ total
 *
 * where `height` is that of the rig as measured: the body is rigid and rises over each axle by what the setup lifts it
 * there, the axles stay where they are.
 *
 * @param moves – of both ends; their height, sag under added load taken off, is the lift
 * @validity level ground, rig at ride height; axles have their centre of gravity at hub height on the centre line;
 * added load lies as high as the rig's own centre; small pitch: where the lift of both ends differs, the body's centre
 * also goes to and fro by its height over the hubs × that difference ÷ wheelbase, which is left out, as is what the
 * tyres give under added load
 * @source moment balance
 */
export function centresOfGravity(
  setup: Setup,
  weights: Weights,
  moves: Readonly<Record<End, Moves>>,
  draws: Draws,
) {
  const { rig, ends } = setup;
  const length = draws.trials + 1;
  const wheelbase = draws.of(rig.wheelbase);
  const height = measuredHeight(rig, draws);
  const { corner, total, sprung, sprungEnd, sprungCorner } = weights;
  const track = per((end) => draws.of(ends[end].base.track));
  const axle = per((end) => draws.of(ends[end].base.unsprungMass));
  const radius = per((end) => draws.of(ends[end].base.tyre.radius));
  const leftMoment = (of: Weights['corner'], i: number) =>
    ((of.frontLeft[i] - of.frontRight[i]) * track.front[i] +
      (of.rearLeft[i] - of.rearRight[i]) * track.rear[i]) /
    2;
  const lift = columnOf(
    length,
    (i) =>
      (moves.front.height[i] * sprungEnd.front[i] + moves.rear.height[i] * sprungEnd.rear[i]) / sprung[i],
  );
  const whole: SampledPlace = {
    behindFrontAxle: columnOf(
      length,
      (i) => (wheelbase[i] * (corner.rearLeft[i] + corner.rearRight[i])) / total[i],
    ),
    left: columnOf(length, (i) => leftMoment(corner, i) / total[i]),
    height: columnOf(length, (i) => height[i] + (lift[i] * sprung[i]) / total[i]),
  };
  const body: SampledPlace = {
    behindFrontAxle: columnOf(length, (i) => (wheelbase[i] * sprungEnd.rear[i]) / sprung[i]),
    left: columnOf(length, (i) => leftMoment(sprungCorner, i) / sprung[i]),
    height: columnOf(
      length,
      (i) =>
        (total[i] * height[i] - axle.front[i] * radius.front[i] - axle.rear[i] * radius.rear[i]) / sprung[i] +
        lift[i],
    ),
  };
  return { whole, body };
}

/** Height of the rig as measured: where an axle was raised, with the same scales and tapes as all else in each trial. */
function measuredHeight(rig: Rig, draws: Draws): Column {
  const lift = rig.cgLift;
  if (!lift) return draws.of(rig.cgHeight);
  return columnOf(draws.trials + 1, (i) => liftedHeight(rig, lift, draws.trial(i)));
}

const per = <T>(of: (end: End) => T): Record<End, T> => {
  const [front, rear] = ENDS;
  return { front: of(front), rear: of(rear) };
};
