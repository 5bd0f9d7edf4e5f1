import type { End } from '../finding/place.ts';
import type { RideModel } from '../ride/model.ts';
import type { Setup } from '../rig/setup.ts';
import type { FeltGrounds } from './felt-ground.ts';
import { brokenBy, type Demand, driveStop, powerCurve, withStopCurve } from './stop-drive.ts';
import { POWERS, TRIED_FORCES } from './stop-family.ts';

/** What else must change where no stop will do, one thing at a time. */
export interface StopCures {
  /** The other end runs past its own reserve even with `MOST_ROOM` more at this one. */
  readonly isOtherEndShort: boolean;
  /** Share of the asked speeds at which some stop does; null when none does even at a quarter of them. */
  readonly speedShare: number | null;
  /** Axle travel between touch and metal that is missing [m], all else left alone; null when more than `MOST_ROOM`. */
  readonly moreRoom: number | null;
  /** The same share of the speeds with `DAMPING_GAIN` times the compression damping at this end; 1 when as asked. */
  readonly speedShareDamped: number | null;
}

/** What compression damping is multiplied by. */
export const DAMPING_GAIN = 1.2;
/** Travel that is asked for at most, and in steps of what it is found [m]. */
export const MOST_ROOM = 0.15;
const ROOM_STEP = 0.005;

/** Tries what would help; each answer is a drive with every curve that the band was looked for with. */
export function curesOf(
  model: RideModel,
  setup: Setup,
  end: End,
  demands: readonly Demand[],
  { room, grounds }: { readonly room: number; readonly grounds: FeltGrounds },
): StopCures {
  const someDoes = (of: RideModel, withRoom: number, share: number): boolean =>
    POWERS.some((power) =>
      TRIED_FORCES.some((full) => {
        const tried = withStopCurve(of, end, powerCurve(withRoom, power, full));
        const worst = driveStop(tried, setup, end, demands, {
          grounds,
          share,
          isEnough: (so) => brokenBy(so, setup).size > 0,
        });
        return brokenBy(worst, setup).size === 0;
      }),
    );
  const { ratio } = model.axles[end].stop;
  const damped = withMoreDamping(model, end, DAMPING_GAIN);
  const roomy = driveStop(withMoreRoom(model, end, MOST_ROOM), setup, end, demands, { grounds });
  return {
    isOtherEndShort: roomy.otherSpare < 0,
    speedShare: slowerShare((share) => someDoes(model, room, share)),
    moreRoom: leastRoom((more) => someDoes(withMoreRoom(model, end, more), room + more * ratio, 1)),
    speedShareDamped: someDoes(damped, room, 1) ? 1 : slowerShare((share) => someDoes(damped, room, share)),
  };
}

/** Largest share of the speeds, in tenths down to a quarter, at which some stop does; null when none. */
function slowerShare(does: (share: number) => boolean): number | null {
  for (let k = 19; k >= 5; k -= 2) if (does(k / 20)) return k / 20;
  return null;
}

/** The least of 5, 10 … that will do: doubled until one does, then halved. */
function leastRoom(does: (more: number) => boolean): number | null {
  const most = Math.round(MOST_ROOM / ROOM_STEP);
  let [no, yes] = [0, 1];
  while (!does(yes * ROOM_STEP)) {
    if (yes === most) return null;
    [no, yes] = [yes, Math.min(2 * yes, most)];
  }
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (does(middle * ROOM_STEP)) yes = middle;
    else no = middle;
  }
  return yes * ROOM_STEP;
}

/** Metal, and a shock that closes, stand further from ride height; the stop touches where it did. */
function withMoreRoom(model: RideModel, end: End, more: number): RideModel {
  const axle = model.axles[end];
  const { metal, stop, shock } = axle;
  const atCrush = {
    left: metal.atCrush.left + more * stop.ratio,
    right: metal.atCrush.right + more * stop.ratio,
  };
  const ends = shock.ends && { ...shock.ends, closedAt: shock.ends.closedAt + more };
  const changed = { ...axle, metal: { ...metal, atCrush }, shock: { ...shock, ...(ends && { ends }) } };
  return { ...model, axles: { ...model.axles, [end]: changed } };
}

function withMoreDamping(model: RideModel, end: End, gain: number): RideModel {
  const axle = model.axles[end];
  const force = axle.shock.force.map((f, i) => (axle.shock.speed[i] > 0 ? gain * f : f));
  return { ...model, axles: { ...model.axles, [end]: { ...axle, shock: { ...axle.shock, force } } } };
}
