import { ENDS, type End } from '../finding/place.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { nominal, type Reading, type ValueOf } from '../rig/reading.ts';
import type { AxleEnd } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { unitsOfRig } from '../rig/units-of-rig.ts';
import type { AxleGeometry, Link, Unreachable, Vector } from './geometry.ts';
import { geometryProblems } from './geometry-problems.ts';
import { behindFront, geometryAsMeasured } from './measured-geometry.ts';
import { poseOf } from './pose.ts';
import { followedBy, motionOf, placed, type RigidMotion } from './rigid-motion.ts';

/** What is wrong with the measured links of both ends of a setup; ask before `linksOf`, which takes them to be sound. */
export function linkProblemsOf(setup: Setup): readonly Problem[] {
  return ENDS.flatMap((end) => {
    const { base, patch } = setup.ends[end];
    const { wheelbase } = setup.rig;
    if (!patch.links && sound.get(base) === wheelbase) return [];
    const geometry = geometryAsMeasured(setup, end, nominal);
    if (!geometry) return [];
    const problems = geometryProblems(geometry, { key: `${end}.links`, system: unitsOfRig(setup.rig) });
    if (!patch.links && problems.length === 0) sound.set(base, wheelbase);
    return problems;
  });
}

/** Ends whose links are sound as measured, with the wheelbase they were placed by: setups seldom move a link. */
const sound = new WeakMap<AxleEnd, Reading>();

/** At which ride height links are asked for. */
export interface RideHeight {
  /** What the body was lifted over each axle since the rig was measured [m]: `movesOf(…).height` of the setup. */
  readonly lift: Readonly<Record<End, number>>;
  /** Readings as measured, or as they are in a trial; as measured when left out. */
  readonly read?: ValueOf;
}

/** The links of one end at the ride height of a setup. */
export interface EndLinks {
  /** Frame of the rig; at its bump and roll of zero the setup stands still. */
  readonly geometry: AxleGeometry;
  /** How the axle has moved since the rig was measured, in the frame of the rig. */
  readonly axle: RigidMotion;
}

/** Both ends of a setup, and how its body then stands. */
export interface RigLinks {
  /** Null where the links of an end were not measured. */
  readonly ends: Readonly<Record<End, EndLinks | null>>;
  /** How the body has moved since the rig was measured, in the frame of the rig. */
  readonly body: RigidMotion;
  /** Turn of the body since then, nose down positive [rad]. */
  readonly pitch: number;
}

/** An axle where its links let it stand, in the frame of the body as measured. */
interface Standing {
  /** As measured; null where no links were. */
  readonly geometry: AxleGeometry | null;
  /** How the axle has moved against the body. */
  readonly motion: RigidMotion;
  /** Its hub-line centre, as measured and after. */
  readonly was: Vector;
  readonly centre: Vector;
}

/**
 * Where the links of both ends stand at the ride height of a setup.
 *
 * The body is lifted over its axles and turns with the difference; the links swing, and the axles with them, keeping
 * their lengths: the pose is that of bump = −lift. All points are then given anew in the frame of the rig, x from the
 * front hub line, so that whatever follows starts from there.
 *
 *     −dx·sin(pitch) + dz·cos(pitch) = front tyre radius − rear,   dx, dz: front hub line from the rear one, in the body
 *
 * @failure `links-out-of-reach` names the links that stop it, by how much they are off, and where
 * @validity an end whose links were not measured moves straight up and down; tyres keep their radius; bushes that
 * were in tension at ride height are taken to have settled; lift counts along the body's own upright
 * @source rigid-body kinematics
 */
export function linksOf(setup: Setup, { lift, read = nominal }: RideHeight): Result<RigLinks> {
  const problems: Problem[] = [];
  const [front, rear] = ENDS.map((end) => standing(setup, end, lift[end], read, problems)) as [
    Standing,
    Standing,
  ];
  if (problems.length > 0) return bad(...problems);
  const { pitch, body } = bodyMotion(front, rear);
  return good({ ends: { front: endLinks(front, body), rear: endLinks(rear, body) }, body, pitch });
}

function standing(setup: Setup, end: End, lift: number, read: ValueOf, problems: Problem[]): Standing {
  const geometry = geometryAsMeasured(setup, end, read);
  const radius = read(setup.ends[end].base.tyre.radius);
  const was: Vector = [-behindFront(setup.rig, end, read), 0, radius];
  const straight: RigidMotion = { rotation: UNTURNED, shift: [0, 0, -lift] };
  const swung = geometry ? swing(geometry, lift) : straight;
  const reached = 'shift' in swung;
  if (!reached) problems.push(outOfReach(setup, end, swung));
  const motion = reached ? swung : straight;
  return { geometry, motion, was, centre: placed(motion, was) };
}

const UNTURNED = [1, 0, 0, 0, 1, 0, 0, 0, 1] as const;
/** A link is made longer by no more than this at once [m]. */
const TURN_OF_AN_ADJUSTER = 0.01;

/** How an axle moves against its body when links change length and the body is lifted off it. */
function swing(geometry: AxleGeometry, lift: number): RigidMotion | Unreachable {
  const most = Math.max(0, ...geometry.links.map(({ longer = 0 }) => Math.abs(longer)));
  const steps = Math.ceil(most / TURN_OF_AN_ADJUSTER);
  let motion: RigidMotion = { rotation: UNTURNED, shift: [0, 0, 0] };
  for (let step = 1; step <= steps; step += 1) {
    const links = geometry.links.map(
      ({ id, axle, body, longer = 0 }): Link => ({
        id,
        axle: placed(motion, axle),
        body,
        // What is missing up to this share of the way: what bushes gave before is not forgotten.
        longer: apart(axle, body) + (longer * step) / steps - apart(placed(motion, axle), body),
      }),
    );
    const now = { ...geometry, centre: placed(motion, geometry.centre), links };
    const result = poseOf(now, geometry.centre[2] - now.centre[2], 0);
    if (result.status === 'unreachable') return result.unreachable;
    motion = followedBy(motion, motionOf(result.pose, now));
  }
  if (lift === 0) return motion;
  const links = geometry.links.map(({ id, axle, body }): Link => ({ id, axle: placed(motion, axle), body }));
  const now = { ...geometry, centre: placed(motion, geometry.centre), links };
  const result = poseOf(now, -lift, 0);
  if (result.status === 'unreachable') return result.unreachable;
  return followedBy(motion, motionOf(result.pose, now));
}

/** The motion of the body that sets both axles on their tyres again, the front one at x = 0. */
function bodyMotion(front: Standing, rear: Standing) {
  const [dx, dz] = [front.centre[0] - rear.centre[0], front.centre[2] - rear.centre[2]];
  const pitch = Math.atan2(dz, dx) - Math.asin((front.was[2] - rear.was[2]) / Math.hypot(dx, dz));
  const [cos, sin] = [Math.cos(pitch), Math.sin(pitch)];
  const rotation = [cos, 0, sin, 0, 1, 0, -sin, 0, cos];
  const [x, , z] = placed({ rotation, shift: [0, 0, 0] }, front.centre);
  const body: RigidMotion = { rotation, shift: [-x, 0, front.was[2] - z] };
  return { pitch, body };
}

/** All points where they are after the move, as the new state of rest. */
function endLinks({ geometry, motion }: Standing, body: RigidMotion): EndLinks | null {
  if (!geometry) return null;
  const axle = followedBy(motion, body);
  const both = (pair: { readonly axle: Vector; readonly body: Vector }) => ({
    axle: placed(axle, pair.axle),
    body: placed(body, pair.body),
  });
  const struts = Object.entries(geometry.struts).map(([id, strut]) => [id, both(strut)] as const);
  return {
    geometry: {
      ...geometry,
      centre: placed(axle, geometry.centre),
      links: geometry.links.map((link) => ({ id: link.id, ...both(link) })),
      struts: Object.fromEntries(struts),
    },
    axle,
  };
}

const apart = (a: Vector, b: Vector): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function outOfReach(setup: Setup, end: End, { links, gap, bump }: Unreachable): Problem {
  const mm = (value: number) => `${Math.round(Math.abs(value) * 1000)} mm`;
  const names = links.map((id) => `${end}.links.${id}`).join(', ');
  return {
    code: 'links-out-of-reach',
    where: { key: `setups.${setup.id}.${end}` },
    found: `${names}, ${mm(gap)} off; they go to ${mm(bump)} of ${bump < 0 ? 'droop' : 'bump'}`,
    accepted: 'less lift, another length, or mounts moved back',
  };
}
