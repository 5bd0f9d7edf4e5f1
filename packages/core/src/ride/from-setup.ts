import { barRateOf } from '../elements/anti-roll-bar.ts';
import { asSolidAxle } from '../elements/independent-axle.ts';
import { seatUnder } from '../elements/seat.ts';
import { cornerAt, type End, SIDES, type Side } from '../finding/place.ts';
import { cubicBySlopes, cubicValue } from '../numerics/monotone-cubic.ts';
import type { Driver } from '../rig/driver.ts';
import type { ValueOf } from '../rig/reading.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import type { Column } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import { tyreRate } from '../stance/tyre-rate.ts';
import { weightsOf } from '../stance/weights.ts';
import { SHOCK } from '../travel/contacts.ts';
import { type SampledColumn, sampleColumn, sampleEnd } from '../travel/sampled-column.ts';
import type { AxleModel, RideModel, SeatModel } from './model.ts';
import { type MountedPath, pathsOf } from './paths-from-setup.ts';
import { shockLaw } from './shock-from-setup.ts';
import { stopLaw } from './stop-from-setup.ts';
import { strapLaw } from './strap-from-setup.ts';

/**
 * The ride model of a setup in any trial: index 0 is the rig at its nominal readings, 1 … trials the sampled ones.
 *
 * Mass and lengths come from the same columns as the travel verdict: metal stands where the first hard contact of the
 * corner does, the stop where its gap ends in this setup.
 *
 * @validity left and right share the load of their axle evenly here, whatever the scales said: an uneven rig rides on
 * its mean. Where links and mounts were measured, spring, shock and stop close along the path of their points
 * (`paths-from-setup`); elsewhere by the typed ratio, the same over all travel. Ends of the shock and of the strap are
 * those of the travel column. Force tables carry no tolerance.
 */
export function rideModels(setup: Setup, draws: Draws): (trial: number) => RideModel {
  const { rig } = setup;
  const weights = weightsOf(setup, draws);
  const wheelbase = draws.of(rig.wheelbase);
  const axles = { front: axleModels(setup, 'front', draws), rear: axleModels(setup, 'rear', draws) };
  return (trial) => {
    const mass = weights.sprung[trial];
    const toFrontAxle = (wheelbase[trial] * weights.sprungEnd.rear[trial]) / mass;
    const at = draws.trial(trial);
    const seat = rig.driver && seatModel(rig.driver, toFrontAxle, at);
    return {
      sprung: {
        mass,
        ...bodyInertias(rig, seat, at),
        toFrontAxle,
        toRearAxle: wheelbase[trial] - toFrontAxle,
      },
      axles: { front: axles.front(trial), rear: axles.rear(trial) },
      gravity: STANDARD_GRAVITY,
      ...(seat && { seat }),
    };
  };
}

function seatModel(driver: Driver, toFrontAxle: number, at: ValueOf): SeatModel {
  return {
    ...seatUnder(driver, at, STANDARD_GRAVITY),
    ahead: toFrontAxle - at(driver.behindFrontAxle),
    left: at(driver.left),
  };
}

/**
 * Inertias of the body without who sits on a spring of his own: what was measured or estimated holds him, so m·d² of his
 * is taken out. As with sampled inertias, a tenth is left however far off the rest of them is.
 *
 * @validity the centre of gravity stays that of both together; the lean by which the body alone differs from it is left out
 */
function bodyInertias({ rollInertia, pitchInertia }: Rig, seat: SeatModel | null, at: ValueOf) {
  const [roll, pitch] = [at(rollInertia), at(pitchInertia)];
  if (seat === null) return { rollInertia: roll, pitchInertia: pitch };
  const { mass, left, ahead } = seat;
  return {
    rollInertia: Math.max(roll - mass * left ** 2, roll / 10),
    pitchInertia: Math.max(pitch - mass * ahead ** 2, pitch / 10),
  };
}

function axleModels(setup: Setup, end: End, draws: Draws): (trial: number) => AxleModel {
  const { base, spring, stop, antiRollBar } = setup.ends[end];
  const rate = tyreRate(setup.ends[end], draws);
  const shared = sampleEnd(setup, end, draws);
  const [left, right] = SIDES.map((side) => sampleColumn(setup, cornerAt(end, side), draws, shared));
  const droopTo = (id: string): Column | undefined => shared.droop.find((line) => line.id === id)?.travel;
  const [opens, stretches] = [droopTo('shock'), droopTo('strap')];
  const paths = pathsOf(setup)[end];
  const stopCrushAt = paths.stop && compressionAlong(paths.stop);
  const closes = left.contacts.find(({ id }) => id === SHOCK)?.travel;
  return (trial) => {
    const at = draws.trial(trial);
    const stopRatio = at(base.stopMount.ratio);
    const perSide = (of: (column: SampledColumn) => number): Readonly<Record<Side, number>> => ({
      left: of(left),
      right: of(right),
    });
    const mass = at(base.unsprungMass);
    const closed = closes?.[trial] ?? Infinity;
    // Where a closed shock is the first hard contact of a side, it is the metal of that side already.
    const isMetal = closed <= Math.max(left.hard[trial], right.hard[trial]);
    return {
      mass,
      rollInertia:
        base.kind === 'independent'
          ? asSolidAxle({ mass, track: at(base.track) }).rollInertia
          : at(base.axleRollInertia),
      halfTrack: at(base.track) / 2,
      spring: {
        rate: at(spring.rate),
        halfStation: at(base.springSpread) / 2,
        ratio: at(base.springRatio),
        ...mounted(paths.spring),
      },
      shock: {
        ...shockLaw(setup, end, { bump: isMetal ? Infinity : closed, droop: opens?.[trial] ?? Infinity }, at),
        ...mounted(paths.shock),
      },
      ...(antiRollBar && { antiRollRate: barRateOf(antiRollBar, at) }),
      stop: {
        halfStation: at(base.stopMount.spread) / 2,
        ratio: stopRatio,
        gap: perSide((column) => column.freeBump[trial] * stopRatio),
        ...stopLaw(stop, at),
        ...mounted(paths.stop),
      },
      metal: {
        atCrush: perSide(
          (column) =>
            (stopCrushAt ? stopCrushAt(column.hard[trial]) : stopRatio * column.hard[trial]) -
            column.freeBump[trial] * stopRatio,
        ),
        rate: at(base.metalRate),
      },
      droopLimit: strapLaw(setup, end, stretches?.[trial] ?? Infinity, at),
      tyre: { rate: rate[trial], damping: at(base.tyre.damping) },
    };
  };
}

/** What measured mounts put in the place of a typed ratio and spread. */
function mounted(path: MountedPath | null) {
  if (path === null) return {};
  const { halfStation, travel, compression, ratio } = path;
  return { halfStation, ratio: ratioAtRide(path), path: { travel, compression, ratio } };
}

const ratioAtRide = ({ travel, ratio }: MountedPath): number => ratio[travel.indexOf(0)];

/** Compression from ride height at an axle travel [m]. */
function compressionAlong({ travel, compression, ratio }: MountedPath): (axleTravel: number) => number {
  const path = cubicBySlopes(travel, compression, ratio);
  return (axleTravel) => cubicValue(path, axleTravel);
}
