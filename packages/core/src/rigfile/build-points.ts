import { type End, SIDES } from '../finding/place.ts';
import {
  type Driveline,
  type EndPoints,
  type HosePoints,
  JOINT_KINDS,
  type JointKind,
  LINK_NAMES,
  type MeasuredDragLink,
  type Mounts,
  type SteeringPoints,
  type StopPoints,
  type TapedPair,
} from '../rig/linkage.ts';
import type { Reading, Sided } from '../rig/reading.ts';
import type { AxleKind } from '../rig/rig.ts';
import { buildLinkage, checkSide, hasBothEnds } from './build-links.ts';
import { type Datums, isWhole, pairAlone, pointAlone, pointOfPair, sidedPair } from './build-point.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps } from './gaps.ts';
import { USUAL } from './usual-value.ts';

const ANGLE = { dimension: 'angle', tool: 'level-tolerance' } as const;
/** By hand, until it binds: to a degree or two. */
const TURNED = { dimension: 'angle', tool: 'guess-tolerance' } as const;
/** Counted off, or stamped on the housing. */
const COUNTED = { dimension: 'ratio', tool: 'choice' } as const;
const DEGREES = Math.PI / 180;

interface Spreads {
  readonly spring: Reading;
  readonly shock: Reading;
  readonly stop: Reading;
}

/** Everything of one end that moves with links: nothing of it must be there, but what is begun must be whole. */
export function buildPoints(
  gaps: Gaps,
  { end, kind }: { readonly end: End; readonly kind: AxleKind },
  tube: Reading,
  spreads: Spreads,
): EndPoints {
  if (kind === 'independent' && gaps.at(`${end}.links`) !== undefined)
    gaps.problem(
      'rig-inconsistent',
      `${end}.links`,
      'links',
      'no links: these hold a solid axle, wheels are independent',
    );
  const railKey = `${end}.railHeight`;
  const datums: Datums = { tube, rail: gaps.typedReading(railKey, TAPED), railKey };
  return {
    railHeight: datums.rail,
    linkage: buildLinkage(gaps, end, datums),
    mounts: buildMounts(gaps, end, datums, spreads),
    driveline: buildDriveline(gaps, end, datums),
    hose: buildHosePoints(gaps, end, datums),
    steering: buildSteering(gaps, end, datums),
    axleRatio: gaps.typedReading(`${end}.axle.ratio`, COUNTED),
  };
}

function buildMounts(gaps: Gaps, end: End, datums: Datums, spreads: Spreads): Mounts {
  const of = (part: keyof Spreads): Sided<TapedPair> | null => {
    const key = `${end}.mounts.${part}`;
    if (gaps.names(key).length === 0 || !hasBothEnds(gaps, key, false)) return null;
    return sidedPair(gaps, key, datums, spreads[part]);
  };
  const stop = of('stop');
  return { spring: of('spring'), shock: of('shock'), stop: stop && buildStopPoints(gaps, end, stop) };
}

function buildStopPoints(gaps: Gaps, end: End, points: Sided<TapedPair>): StopPoints {
  const key = `${end}.mounts.stop`;
  return {
    points,
    carrier: gaps.text(`${key}.carrier`) === 'axle' ? 'axle' : 'frame',
    padSize: gaps.typedReading(`${key}.padSize`, TAPED),
    tipSize: gaps.typedReading(`${key}.tipSize`, TAPED),
  };
}

/** Whether more of a shaft is typed than how far it lets the axle droop. */
export const hasDriveline = (gaps: Gaps, end: End): boolean =>
  gaps.names(`${end}.shaft`).some((name) => name !== 'droop');

function buildDriveline(gaps: Gaps, end: End, datums: Datums): Driveline | null {
  const key = `${end}.shaft`;
  if (!hasDriveline(gaps, end)) return null;
  const missing = ['pinion', 'case'].filter((which) => gaps.at(`${key}.${which}`) === undefined);
  for (const which of missing) gaps.ask(`${key}.${which}`, '{ ahead: 12 in, left: 1 in, aboveFloor: 18 in }');
  const joint = (which: string): JointKind =>
    JOINT_KINDS.find((kind) => kind === gaps.text(`${key}.${which}`)) ?? 'single';
  if (gaps.at(`${key}.pinionAngle`) === undefined)
    gaps.ask(`${key}.pinionAngle`, '5 deg, nose up; minus is nose down');
  const point = (which: string) =>
    missing.includes(which) ? null : pointAlone(gaps, `${key}.${which}`, datums);
  const pinion = point('pinion');
  const atCase = point('case');
  const rest: Omit<Driveline, 'pinion' | 'case'> = {
    pinionAngle:
      gaps.typedReading(`${key}.pinionAngle`, ANGLE) ?? gaps.standIn(`${key}.pinionAngle`, 'angle'),
    caseAngle: gaps.readingOr(`${key}.caseAngle`, ANGLE, USUAL.caseAngle),
    pinionJoint: joint('pinionJoint'),
    caseJoint: joint('caseJoint'),
    pinionBindsAt: gaps.typedReading(`${key}.pinionBindsAt`, TURNED),
    caseBindsAt: gaps.typedReading(`${key}.caseBindsAt`, TURNED),
    yokeTwist: gaps.typedReading(`${key}.yokeTwist`, TURNED),
    tubeOutside: gaps.typedReading(`${key}.tubeOutside`, TAPED),
    tubeWall: gaps.typedReading(`${key}.tubeWall`, TAPED),
    slip: gaps.typedReading(`${key}.slip`, TAPED),
    slipIn: gaps.typedReading(`${key}.slipIn`, TAPED),
  };
  const { slip, slipIn } = rest;
  for (const angle of [rest.pinionAngle, rest.caseAngle]) notSteeper(gaps, angle, 60);
  if (slip && slipIn && slipIn.value > slip.value)
    gaps.problem('rig-inconsistent', slipIn.key, slipIn.text, `at most the whole slip, ${slip.text}`);
  if (!pinion || !atCase) return null;
  if (isWhole(gaps, pinion, atCase)) checkSide(gaps, end, { axle: pinion, frame: atCase });
  return { pinion, case: atCase, ...rest };
}

function notSteeper(gaps: Gaps, angle: Reading | null, most: number): void {
  if (angle && angle.text !== '' && Math.abs(angle.value) > most * DEGREES)
    gaps.problem('quantity-out-of-range', angle.key, angle.text, `at most ${most} deg either way`);
}

/** Whether the ends of a hose are typed, and not only one distance between them. */
export const hasHoseEnds = (gaps: Gaps, end: End): boolean =>
  ['axle', 'frame'].some((which) => gaps.at(`${end}.hose.${which}`) !== undefined);

function buildHosePoints(gaps: Gaps, end: End, datums: Datums): HosePoints | null {
  const key = `${end}.hose`;
  if (!hasHoseEnds(gaps, end) || !hasBothEnds(gaps, key, false)) return null;
  const steers = gaps.at(`${key}.steers`) === true;
  if (steers && gaps.at(`${end}.steering.kingpinSpread`) === undefined)
    gaps.ask(`${end}.steering.kingpinSpread`, '54 in, from kingpin to kingpin: its outer end turns about it');
  return {
    points: hoseEnds(gaps, key, datums),
    steers,
    freeLength: gaps.needed(`${key}.freeLength`, TAPED),
    diameter: gaps.typedReading(`${key}.diameter`, TAPED),
    tieTo: LINK_NAMES.find((name) => name === gaps.text(`${key}.tieTo`)) ?? null,
  };
}

/** One hose in the middle, one to each wheel, or two to one point of the frame. */
function hoseEnds(gaps: Gaps, key: string, datums: Datums): Sided<TapedPair> {
  const stands = (which: string, ...names: readonly string[]) =>
    names.some((name) => gaps.at(`${key}.${which}.${name}`) !== undefined);
  const single = (which: string) => stands(which, 'left', 'right') && !stands(which, 'spread', 'out');
  if (single('axle')) {
    const pair = pairAlone(gaps, key, datums);
    return { left: pair, right: pair };
  }
  if (!single('frame')) return sidedPair(gaps, key, datums);
  const frame = pointAlone(gaps, `${key}.frame`, datums);
  const axle = pointOfPair(gaps, `${key}.axle`, datums, null);
  const mirror = { ...axle, left: { reading: axle.left.reading, factor: -axle.left.factor } };
  return { left: { axle, frame }, right: { axle: mirror, frame } };
}

function buildSteering(gaps: Gaps, end: End, datums: Datums): SteeringPoints | null {
  const key = `${end}.steering`;
  if (gaps.names(key).length === 0) return null;
  const caster = gaps.typedReading(`${key}.caster`, ANGLE);
  const lock = gaps.typedReading(`${key}.lock`, TURNED);
  const inclination = gaps.typedReading(`${key}.inclination`, TURNED);
  for (const angle of [caster, inclination]) notSteeper(gaps, angle, 30);
  notSteeper(gaps, lock, 60);
  return {
    dragLink: buildDragLink(gaps, key, datums),
    kingpinSpread: gaps.typedReading(`${key}.kingpinSpread`, TAPED),
    inclination,
    caster,
    lock,
  };
}

function buildDragLink(gaps: Gaps, key: string, datums: Datums): MeasuredDragLink | null {
  const about = ['dragLink', 'armLength', 'box'].some((name) => gaps.at(`${key}.${name}`) !== undefined);
  if (!about || !hasBothEnds(gaps, `${key}.dragLink`, true)) return null;
  const points = pairAlone(gaps, `${key}.dragLink`, datums);
  const { left } = points.frame;
  return {
    points,
    armLength: gaps.needed(`${key}.armLength`, TAPED),
    boxSide:
      SIDES.find((side) => side === gaps.text(`${key}.box`)) ??
      (left.factor * left.reading.value < 0 ? 'right' : 'left'),
  };
}
