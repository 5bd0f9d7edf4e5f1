import type { End, Side } from '../finding/place.ts';
import { SIDES } from '../finding/place.ts';
import { curvesOf } from '../linkage/curves.ts';
import type { AxleCurves, StrutCurves } from '../linkage/curves-result.ts';
import type { EndLinks, RigLinks } from '../linkage/from-setup.ts';
import type { AxleGeometry, StrutId, Vector } from '../linkage/geometry.ts';
import { dragLinkOf } from '../linkage/lines-from-setup.ts';
import { behindFront } from '../linkage/measured-geometry.ts';
import { poseOf } from '../linkage/pose.ts';
import { LINE_PRACTICE } from '../linkage/reach-findings.ts';
import { directed, placed } from '../linkage/rigid-motion.ts';
import { type Shaft, shaftIn } from '../linkage/shaft.ts';
import {
  angleForSpeed,
  bindsAt,
  SHAFT_PRACTICE,
  shaftSpeed,
  speedForAngles,
  whirlSpeed,
} from '../linkage/shaft-limits.ts';
import type { TravelRange } from '../linkage/travel-range.ts';
import type { ValueOf } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import { padOffset } from '../travel/strut-travel.ts';
import type { EndInTrial } from './end-in-trial.ts';
import type { Limit, Put } from './link-columns.ts';
import { LINK_PRACTICE } from './links-limits.ts';
import { strokeOf } from './travel-columns.ts';

/** One end of a setup in one trial. */
export interface EndTrial {
  readonly setup: Setup;
  readonly end: End;
  readonly read: ValueOf;
  readonly links: RigLinks;
  readonly at: EndLinks;
  /** As measured, before anything was moved. */
  readonly measured: AxleGeometry;
  readonly range: TravelRange;
  readonly parts: EndInTrial;
  readonly cgHeight: number;
  readonly wheelbase: number;
  readonly roadSpeed: number;
  /** Length of the coil at ride height [m]; null when not known. */
  readonly coilAtRide: number | null;
  /** Height gained [m]. */
  readonly lift: number;
}

/** Where in the bumps of a trial ride height, full droop and full bump stand. */
const [DROOP, RIDE, BUMP] = [0, 2, 4];
/** A hundredth of a millimetre that a bush gives is nothing. */
const GIVES = 1e-5;

/** Everything that follows the links of one end, in one trial. */
export function endLines(trial: EndTrial, put: Put): void {
  const { setup, end, read, links, at, range } = trial;
  const { geometry } = at;
  const dragLink = dragLinkOf(setup, end, links, read);
  const curves = curvesOf(geometry, {
    bumps: [-range.droop, -range.droop / 2, 0, range.bump / 2, range.bump],
    rolls: [0],
    end,
    anti: { wheelbase: trial.wheelbase, cgHeight: trial.cgHeight, driveShare: 1, brakeShare: 1 },
    ...(dragLink && { dragLink }),
  });
  axleLines(trial, curves, put);
  if (dragLink) {
    const turned = curves.wheelSteer ?? new Float64Array();
    const most = Math.max(...[...turned].map((angle) => Math.abs(angle - turned[RIDE])));
    put('bump-steer', end, '', most);
  }
  const panhard = geometry.links.find(({ id }) => id === 'panhard');
  if (panhard) {
    const slope = rearSlope(panhard.axle, panhard.body);
    put('panhard-slope', end, '', Math.abs(slope), {
      at: LINK_PRACTICE.panhardSlope,
      scale: LINK_PRACTICE.panhardSlope,
    });
    if (dragLink) put('drag-link-slope', end, '', Math.abs(rearSlope(dragLink.axle, dragLink.body) - slope));
  }
  strutLines(trial, curves, put);
  const { shaft } = trial.parts;
  if (shaft) shaftLines(trial, shaft.shaft, put);
  for (const { hose, reach } of trial.parts.hoses)
    if (reach)
      put('hose-slack', end, hose.side ?? '', hose.freeLength - reach.longest.value, {
        at: LINE_PRACTICE.leastSlack,
        scale: LINE_PRACTICE.leastSlack,
      });
}

/** Slope of a bar seen from behind, along the way to the left. */
const rearSlope = (a: Vector, b: Vector): number => {
  const [dy, dz] = [b[1] - a[1], b[2] - a[2]];
  return Math.atan2(dy < 0 ? -dz : dz, Math.abs(dy));
};

function axleLines(trial: EndTrial, curves: AxleCurves, put: Put): void {
  const { setup, end, read, links, at, measured } = trial;
  const { rotation } = at.axle;
  const over = placed(links.body, [-behindFront(setup.rig, end, read), 0, measured.centre[2]]);
  const { centre } = at.geometry;
  put('axle-forward', end, '', centre[0] - over[0]);
  put('axle-sideways', end, '', centre[1] - over[1]);
  const hubs = directed(rotation, [0, 1, 0]);
  put('axle-steer', end, '', Math.atan2(-hubs[0], hubs[1]));
  put('sideways-swing', end, '', Math.max(...curves.sideways) - Math.min(...curves.sideways));
  put('roll-steer', end, '', curves.rollSteer[RIDE]);
  put('roll-centre', end, '', curves.rollCentreHeight[RIDE]);
  put('anti', end, '', (end === 'rear' ? curves.antiDrive : curves.antiBrake)?.[RIDE] ?? Number.NaN);
  const { points } = setup.ends[end].base;
  const caster = points.steering?.caster;
  if (caster) {
    const up = directed(rotation, [0, 0, 1]);
    const scale = LINK_PRACTICE.caster;
    put('caster', end, '', read(caster) - Math.atan2(up[0], up[2]), { at: LINK_PRACTICE.caster, scale });
  }
  if (!points.driveline) {
    // Nobody measured where it points: how far it has turned can be told all the same.
    const nose = directed(rotation, [end === 'rear' ? 1 : -1, 0, 0]);
    put('pinion-angle', end, 'turned', Math.asin(nose[2]));
  }
  const { halfTrack } = at.geometry;
  const { bump, droop } = trial.range;
  const flexed = poseOf(
    at.geometry,
    (bump - droop) / 2,
    Math.asin(Math.min(1, (bump + droop) / (2 * halfTrack))),
  );
  const give = Math.max(
    ...curves.rodGive,
    ...(flexed.status === 'reached' ? flexed.gives.map(({ length }) => Math.abs(length)) : [0]),
  );
  if (at.geometry.links.length === 5) put('bush-give', end, '', give < GIVES ? 0 : give);
}

function strutLines(trial: EndTrial, curves: AxleCurves, put: Put): void {
  const { setup, end, read, measured, at, range } = trial;
  const { base, spring } = setup.ends[end];
  const pair = (part: 'spring' | 'shock' | 'stop'): readonly { side: Side; id: StrutId; of: StrutCurves }[] =>
    SIDES.flatMap((side) => {
      const id: StrutId = `${part}-${side}`;
      const of = curves.struts[id];
      return of ? [{ side, id, of }] : [];
    });
  for (const [part, line] of [
    ['spring', 'spring-ratio'],
    ['shock', 'shock-ratio'],
    ['stop', 'stop-ratio'],
  ] as const) {
    const both = pair(part);
    if (both.length > 0)
      put(line, end, '', both.reduce((sum, { of }) => sum + of.byBump[RIDE], 0) / both.length);
  }
  const shocks = pair('shock');
  if (shocks.length > 0) {
    const scale = LINK_PRACTICE.shockLean;
    put('shock-lean', end, '', Math.max(...shocks.map(({ of }) => of.lean[RIDE])), { at: scale, scale });
    const { rideLength, collapsedLength, extendedLength } = base.shock;
    if (rideLength && collapsedLength) {
      const lengths = shocks.map(
        ({ id, of }) => read(rideLength) + of.length[BUMP] - strutLength(measured, id),
      );
      put('shock-left-bump', end, '', Math.min(...lengths) - read(collapsedLength), {
        at: read(base.shockReserve),
        scale: strokeOf(collapsedLength.value, extendedLength?.value),
      });
    }
  }
  const coils = pair('spring');
  const { coilAtRide } = trial;
  if (coils.length > 0 && coilAtRide !== null) {
    const after = (row: number, of: StrutCurves) => coilAtRide + of.length[row] - of.length[RIDE];
    const { solidLength, freeLength } = spring;
    const scale = strokeOf(solidLength?.value, freeLength?.value);
    if (solidLength)
      put(
        'coil-left-bump',
        end,
        '',
        Math.min(...coils.map(({ of }) => after(BUMP, of))) - read(solidLength),
        {
          at: read(base.coilReserve),
          scale,
        },
      );
    if (freeLength)
      put(
        'coil-held-droop',
        end,
        '',
        read(freeLength) - Math.max(...coils.map(({ of }) => after(DROOP, of))),
        {
          at: 0,
          scale,
        },
      );
  }
  const mount = base.points.mounts.stop;
  if (mount) {
    const roll = Math.asin(Math.min(1, (range.bump + range.droop) / (2 * at.geometry.halfTrack)));
    const offsets = SIDES.flatMap((side) => [
      padOffset(at.geometry, side, mount.carrier, { heave: range.bump, roll: 0 }),
      padOffset(at.geometry, side, mount.carrier, {
        heave: (range.bump - range.droop) / 2,
        roll: side === 'left' ? roll : -roll,
      }),
    ]).filter((offset) => offset !== null);
    const half = mount.padSize && read(mount.padSize) / 2;
    if (offsets.length > 0)
      put('stop-off-pad', end, '', Math.max(...offsets), half ? { at: half, scale: half } : undefined);
  }
}

function strutLength({ struts }: AxleGeometry, id: StrutId): number {
  const strut = struts[id];
  if (!strut) return Number.NaN;
  const [a, b] = [strut.axle, strut.body];
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function shaftLines(
  { setup, end, read, at, range, parts, roadSpeed }: EndTrial,
  shaft: Shaft,
  put: Put,
): void {
  const { geometry } = at;
  const [x, y, z] = shaft.pinionJoint.axis;
  put('pinion-angle', end, '', Math.atan2(z, Math.hypot(x, y)));
  const travel = parts.shaft?.travel;
  if (!travel) return;
  const { atRide } = travel;
  const ratio = setup.ends[end].base.points.axleRatio;
  const turns = ratio && roadSpeed > 0 ? shaftSpeed(roadSpeed, geometry.tyreRadius, read(ratio)) : null;
  const heave = (bump: number) => {
    const found = poseOf(geometry, bump, 0);
    return found.status === 'reached' ? shaftIn(shaft, geometry, found.pose) : null;
  };
  const [up, down] = [heave(range.bump), heave(-range.droop)];
  put('shaft-length', end, '', atRide.length);
  for (const joint of ['case', 'pinion'] as const) {
    const angle = `${joint}Angle` as const;
    const binds = bindsAt(shaft[`${joint}Joint`]);
    const own = shaft[`${joint}Joint`].bindsAt !== null;
    const limit: Limit = { at: binds, scale: binds, of: own ? 'part' : 'practice' };
    const allowed = turns === null ? null : angleForSpeed(turns);
    const shakes = shaft[`${joint}Joint`].kind === 'single' && allowed !== null;
    put('joint-ride', end, joint, atRide[angle], shakes ? { at: allowed, scale: allowed } : undefined);
    put('joint-bump', end, joint, up ? up[angle] : Number.NaN, limit);
    put('joint-droop', end, joint, down ? down[angle] : Number.NaN, limit);
    put('joint-most', end, joint, travel[angle].value, limit);
  }
  if (travel.slip && shaft.slip) {
    const { usable } = shaft.slip;
    put('slip-swing', end, '', travel.swing, { at: usable, scale: usable });
    const { leftIn, leftOut } = travel.slip;
    if (leftIn !== null)
      put('slip-left-in', end, '', leftIn, { at: SHAFT_PRACTICE.leftIn, scale: usable / 2 });
    if (leftOut !== null) put('slip-left-out', end, '', leftOut, { at: 0, scale: usable / 2 });
  }
  if (turns === null) return;
  const own = speedForAngles(atRide);
  const whirl = shaft.tube ? SHAFT_PRACTICE.whirlShare * whirlSpeed(shaft.tube, atRide.length) : Infinity;
  const fastest = (roadSpeed * Math.min(own.shaft, own.pinion, whirl)) / turns;
  // A straight shaft has no speed that its angles forbid.
  if (fastest < FAST) put('shaft-speed', end, '', fastest, { at: roadSpeed, scale: roadSpeed });
}

/** No road is faster than this [m/s]. */
const FAST = 200;
