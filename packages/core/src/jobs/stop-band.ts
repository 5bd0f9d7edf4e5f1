import type { End } from '../finding/place.ts';
import { bad, good, type Result } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import { travelNeeds } from '../travel/travel.ts';
import { speedProblem } from './driving.ts';
import { FeltGrounds } from './felt-ground.ts';
import {
  type Broken,
  brokenBy,
  type Demand,
  driveStop,
  powerCurve,
  roomToCrush,
  type StopCurve,
  withStopCurve,
} from './stop-drive.ts';
import { familyOf, POWERS, type StopFamily } from './stop-family.ts';

export interface BandAsked {
  readonly rig: Rig;
  readonly setup: string;
  readonly end: End;
  readonly demands: readonly Demand[];
}

/** Which curves do at one end, and what drives others to see. */
export interface StopBand {
  readonly model: RideModel;
  readonly setup: Setup;
  readonly grounds: FeltGrounds;
  /** Crush from touch to where the reserve and the flex allowance begin [m]. */
  readonly room: number;
  readonly families: readonly StopFamily[];
  /** Places of the band [m], and the least and the most force there of all curves that do [N]; empty when none. */
  readonly crush: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
  /** What any curve breaks when it is driven over all demands. */
  readonly breaks: (curve: StopCurve) => ReadonlySet<Broken>;
}

const PLACES = 24;

/**
 * The band of curves at nominal readings: each of five steepnesses is driven at all strengths.
 *
 * @param onProgress – share of this work done, 0…1, never falling
 * @failure as `rideRig`; `stop-no-room` when reserve and flex leave nothing to crush
 */
export function stopBand(
  { rig, setup: name, end, demands }: BandAsked,
  onProgress?: (share: number) => void,
): Result<StopBand> {
  const problems = demands.flatMap(({ speed }) => speedProblem(speed));
  if (problems.length > 0) return bad(...problems);
  const resolved = resolveSetup(rig, name);
  if (!resolved.ok) return resolved;
  const setup = resolved.value;
  const needs = travelNeeds(setup);
  if (needs.length > 0) return bad(...needs);
  const model = rideModels(setup, NOMINAL_DRAWS)(0);
  const room = roomToCrush(model, setup, end);
  if (!(room > 0))
    return bad({
      code: 'stop-no-room',
      where: { key: `${end}.stop` },
      found: `${(room * 1000).toFixed(1)} mm`,
      accepted:
        'room between touch and where flex allowance and reserve begin: a smaller gap, a notch, a lift',
    });
  const grounds = new FeltGrounds();
  const breaks = (curve: StopCurve) =>
    brokenBy(driveStop(withStopCurve(model, end, curve), setup, end, demands, { grounds }), setup);
  const families = POWERS.map((power, i) => {
    const family = familyOf(power, (full) => breaks(powerCurve(room, power, full)));
    onProgress?.((i + 1) / POWERS.length);
    return family;
  });
  const doing = families.flatMap(({ power, range }) => (range ? [{ power, range }] : []));
  const crush = doing.length === 0 ? [] : Array.from({ length: PLACES + 1 }, (_, k) => (room * k) / PLACES);
  const across = (pick: 'least' | 'most', of: (...all: number[]) => number) =>
    crush.map((c) => of(...doing.map(({ power, range }) => range[pick] * (c / room) ** power)));
  return good({
    model,
    setup,
    grounds,
    room,
    families,
    crush,
    least: across('least', Math.min),
    most: across('most', Math.max),
    breaks,
  });
}
