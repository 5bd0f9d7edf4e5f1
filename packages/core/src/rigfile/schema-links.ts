import { z } from 'zod';
import { JOINT_KINDS, LINK_NAMES, LINKAGE_KINDS } from '../rig/linkage.ts';
import { quantity } from './leaf.ts';

/**
 * Points under the rig: fore and aft from the centre of the axle tube of that end, sideways as a left-to-right spread
 * or from the centreline, height from whatever the tape was put on.
 */

const place = (about: string, rare = false) => quantity('length', about, { sign: 'any', rare });
const ways = (about: string) => quantity('length', about, { sign: 'notNegative', rare: true });

const foreAft = {
  ahead: place('Ahead of the centre of the axle tube; minus is behind'),
  behind: place('Behind the centre of the axle tube', true),
};
const height = {
  aboveFloor: place('Above the floor'),
  aboveTube: place('Above the centre of the axle tube', true),
  belowTube: place('Below the centre of the axle tube', true),
  aboveRail: place('Above the underside of the frame rail', true),
  belowRail: place('Below the underside of the frame rail', true),
};
const spread = quantity('length', 'From the left one to the right one', { sign: 'notNegative' });
const out = ways('Out from the centreline');
const left = place('Left of the centreline; minus is right');
const right = place('Right of the centreline', true);

const pairPoint = z.strictObject({ ...foreAft, spread, out, ...height }).nullish();
const singlePoint = z.strictObject({ ...foreAft, left, right, ...height }).nullish();
/** Of one that may be either. */
const anyPoint = z.strictObject({ ...foreAft, spread, out, left, right, ...height }).nullish();
/** The right one of a pair, where it is not the mirror of the left. Whatever is left out is mirrored. */
const rightPoint = z
  .strictObject({
    ahead: place('Ahead of the centre of the axle tube, right side', true),
    behind: place('Behind the centre of the axle tube, right side', true),
    out: ways('Out from the centreline, right side'),
    aboveFloor: place('Above the floor, right side', true),
    aboveTube: place('Above the centre of the axle tube, right side', true),
    belowTube: place('Below the centre of the axle tube, right side', true),
    aboveRail: place('Above the underside of the frame rail, right side', true),
    belowRail: place('Below the underside of the frame rail, right side', true),
  })
  .nullish();
const rightPair = z.strictObject({ axle: rightPoint, frame: rightPoint }).nullish();
const between = quantity('length', 'Joint to joint, to check the points by', { rare: true });

const pair = z.strictObject({ axle: pairPoint, frame: pairPoint, length: between, right: rightPair });
const eitherWay = z.strictObject({ axle: anyPoint, frame: anyPoint, length: between, right: rightPair });
const alone = z.strictObject({ axle: singlePoint, frame: singlePoint, length: between });

const linkName = z.enum(LINK_NAMES);

/** What stands below `front` and `rear` about links. */
export const linkParts = {
  railHeight: quantity('length', 'Underside of the frame rail above the floor, by the axle'),
  links: z
    .strictObject({
      kind: z.enum(LINKAGE_KINDS).nullish().meta({ description: 'What holds the axle' }),
      lower: pair.nullish(),
      upper: eitherWay.nullish(),
      arm: pair.nullish(),
      panhard: alone.nullish(),
    })
    .nullish(),
  mounts: z
    .strictObject({
      spring: z.strictObject({ axle: pairPoint, frame: pairPoint, right: rightPair }).nullish(),
      shock: z.strictObject({ axle: pairPoint, frame: pairPoint, right: rightPair }).nullish(),
      stop: z
        .strictObject({
          axle: pairPoint,
          frame: pairPoint,
          right: rightPair,
          carrier: z.enum(['axle', 'frame']).nullish().meta({ description: 'What the stop is fixed to' }),
          padSize: quantity('length', 'Smallest side of the strike pad'),
          tipSize: quantity('length', 'Diameter of the tip of the stop'),
        })
        .nullish(),
    })
    .nullish(),
  steering: z
    .strictObject({
      dragLink: z.strictObject({ axle: singlePoint, frame: singlePoint, length: between }).nullish(),
      armLength: quantity('length', 'Kingpin axis to the ball of the drag link'),
      box: z.enum(['left', 'right']).nullish().meta({ description: 'Side of the steering box' }),
      kingpinSpread: quantity('length', 'From left kingpin to right one, at hub height'),
      inclination: quantity('angle', 'Top of the kingpin inboard of its foot', { sign: 'any' }),
      caster: quantity('angle', 'Top of the kingpin behind its foot', { sign: 'any' }),
      lock: quantity('angle', 'Turn of the wheels to full lock'),
    })
    .nullish(),
};

const joint = z.enum(JOINT_KINDS).nullish();

/** What stands below `shaft`, beside the droop that was found by turning it. */
export const shaftParts = {
  pinion: singlePoint,
  case: singlePoint,
  pinionAngle: quantity('angle', 'Pinion against level, its nose up', { sign: 'any' }),
  caseAngle: quantity('angle', 'Output of the case against level, its flange end up', { sign: 'any' }),
  pinionJoint: joint.meta({ description: 'Joint at the axle' }),
  caseJoint: joint.meta({ description: 'Joint at the case' }),
  pinionBindsAt: quantity('angle', 'Angle at which the joint at the axle binds, turned by hand'),
  caseBindsAt: quantity('angle', 'Angle at which the joint at the case binds, turned by hand'),
  yokeTwist: quantity('angle', 'Twist of the yoke at the pinion against the one at the case', {
    sign: 'any',
  }),
  tubeOutside: quantity('length', 'Outside diameter of the tube'),
  tubeWall: quantity('length', 'Wall of the tube'),
  slip: quantity('length', 'From all in to all out, less what must stay engaged'),
  slipIn: quantity('length', 'How far it can still go in at ride height', { sign: 'notNegative' }),
};

/** What stands below `hose`, beside the one distance taped at full droop. */
export const hoseParts = {
  axle: anyPoint,
  frame: anyPoint,
  right: rightPair,
  steers: z.boolean().nullish().meta({ description: 'Whether its outer end turns with the wheel' }),
  diameter: quantity('length', 'Outer diameter of the hose'),
  tieTo: linkName.nullish().meta({ description: 'Link along which it may be tied' }),
};

const shift = (about: string) => quantity('length', about, { sign: 'any', rare: true });
const pointPatch = z
  .strictObject({
    ahead: shift('Moved forward; minus is back'),
    out: shift('Moved out from the centreline; one that stands alone: to the left'),
    up: shift('Moved up; minus is down'),
  })
  .nullish();

const linkPatch = z
  .strictObject({
    axle: pointPatch,
    frame: pointPatch,
    longer: shift('Made longer; minus is shorter'),
  })
  .nullish();

/** What a setup may change about links. */
export const linkPatches = {
  links: z.strictObject({ lower: linkPatch, upper: linkPatch, arm: linkPatch, panhard: linkPatch }).nullish(),
  shaft: z
    .strictObject({
      case: pointPatch,
      pinionJoint: joint,
      caseJoint: joint,
      slip: quantity('length', 'Other slip', { rare: true }),
      slipIn: quantity('length', 'How far it can then go in at ride height', {
        sign: 'notNegative',
        rare: true,
      }),
    })
    .nullish(),
};
