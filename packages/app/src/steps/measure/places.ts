import type { FieldState } from '@lastinch/core/rigfile';

/** The pages of the Measure step. */
export const PLACES = ['rig', 'front', 'rear', 'shelf', 'text'] as const;
export type MeasurePlace = (typeof PLACES)[number];

export const PLACE_NAME: Readonly<Record<MeasurePlace, string>> = {
  rig: 'Whole rig',
  front: 'Front',
  rear: 'Rear',
  shelf: 'On the shelf',
  text: 'As text',
};

/** Where a reading is typed; null when that is not in the Measure step (setups, courses). */
export function placeOf(key: string): MeasurePlace | null {
  const [first = ''] = key.split('.');
  if (first === 'measured' || first === 'limits' || first === 'driver') return 'rig';
  if (first === 'front' || first === 'rear') return first;
  return first === 'parts' ? 'shelf' : null;
}

/** Fields that are typed side by side, under one heading. */
export interface FieldGroup {
  readonly id: string;
  readonly title: string;
  /** Why it is measured, in one line. */
  readonly about: string;
  readonly fields: readonly FieldState[];
  /** A part that a rig may do without, and this one has not. */
  readonly absent: boolean;
}

interface Heading {
  readonly title: string;
  readonly about: string;
}

/** In the order in which they matter for the travel column. */
const HEADINGS: Readonly<Record<string, Heading>> = {
  'measured.weights': {
    title: 'Weight on each tyre',
    about: 'On level ground, driver and fuel aboard, rolled and bounced, not jacked.',
  },
  measured: { title: 'Size and balance', about: 'Where the mass is, and how it resists being turned.' },
  driver: {
    title: 'Driver and seat',
    about:
      'Aboard in the weights already; here the seat gets its spring. Sag, or rate, or frequency: one of them.',
  },
  'measured.cgLift': {
    title: 'One axle raised',
    about:
      'For the height of the centre of gravity: rated lifting gear, suspension locked, wheels free, nobody under or beside it.',
  },
  limits: { title: 'What you accept', about: 'The limits that every verdict is held against.' },
  stop: {
    title: 'Bump stop',
    about: 'The one on the rig now. Crush is how far it may be pressed, not its length.',
  },
  spring: { title: 'Spring', about: 'Coil lengths are along its axis.' },
  shock: { title: 'Shock', about: 'Lengths are eye to eye.' },
  frame: { title: 'Frame', about: 'What gives on the worst hit.' },
  axle: { title: 'Axle', about: 'Everything that moves with the wheels.' },
  tyre: { title: 'Tyre', about: 'At the pressure in use.' },
  antiRollBar: {
    title: 'Anti-roll bar',
    about: 'By its rate at the axle, or at its links with one of them held.',
  },
  strap: { title: 'Limit strap', about: 'Ends droop before the shock does.' },
  links: {
    title: 'Links',
    about:
      'Joint centres at ride height: ahead of the axle tube, left to right, above the floor. The right one of a pair is the mirror of the left.',
  },
  mounts: {
    title: 'Where spring, shock and stop sit',
    about: 'Both ends of each, measured like the links: gives their true travel ratios.',
  },
  steering: { title: 'Steering', about: 'The drag link, measured like the links.' },
  hose: {
    title: 'Brake hose',
    about: 'Its distance at strap-stretched droop and full lock, or where its fixed ends are.',
  },
  shaft: { title: 'Driveshaft', about: 'Runs out of plunge or joint angle in droop.' },
  witness: {
    title: 'Witness marks',
    about: 'From a test drive: markers on the shock rod, clay at the first contact.',
  },
};

const OPTIONAL = new Set([
  'measured.cgLift',
  'driver',
  'antiRollBar',
  'links',
  'mounts',
  'steering',
  'strap',
  'hose',
  'shaft',
  'witness',
]);

/** The groups of one place, in the order in which they are worked through. */
export function groupsOf(
  fields: readonly FieldState[],
  place: MeasurePlace,
  contactNames: ReadonlyMap<string, string>,
): readonly FieldGroup[] {
  const groups = new Map<string, FieldState[]>();
  for (const field of fields) {
    if (placeOf(field.path.join('.')) !== place) continue;
    const id = groupIdOf(field.path);
    groups.set(id, [...(groups.get(id) ?? []), field]);
  }
  return [...groups]
    .map(([id, of]) => groupFrom(id, of, contactNames))
    .sort((a, b) => rank(a.id) - rank(b.id));
}

/** `weights`, `contacts.sump`, `stop`, `parts.stops.soft`. */
function groupIdOf(path: readonly string[]): string {
  const [first = '', second = '', third = ''] = path;
  if (first === 'measured') return path.length === 2 ? 'measured' : `measured.${second}`;
  if (first === 'limits' || first === 'driver') return first;
  if (first === 'parts') return `parts.${second}.${third}`;
  if (second === 'contacts') return `contacts.${third}`;
  return path.length === 2 ? 'frame' : second;
}

function groupFrom(
  id: string,
  fields: readonly FieldState[],
  contactNames: ReadonlyMap<string, string>,
): FieldGroup {
  const absent = OPTIONAL.has(id) && fields.every(({ typed }) => typed === null);
  const named = id.split('.').at(-1) ?? id;
  if (id.startsWith('contacts.'))
    return {
      id,
      fields,
      absent,
      title: `Contact: ${contactNames.get(named) ?? named}`,
      about: 'Metal meets metal here when all else is used up.',
    };
  if (id.startsWith('parts.stops.'))
    return { id, fields, absent, title: `Stop: ${named}`, about: 'Not on the rig; a setup may name it.' };
  if (id.startsWith('parts.springs.'))
    return { id, fields, absent, title: `Spring: ${named}`, about: 'Not on the rig; a setup may name it.' };
  const heading = HEADINGS[id] ?? { title: named, about: '' };
  return { id, fields, absent, ...heading };
}

const ORDER = Object.keys(HEADINGS);
function rank(id: string): number {
  if (id.startsWith('contacts.')) return -1;
  const place = ORDER.indexOf(id);
  return place < 0 ? ORDER.length : place;
}

const LABELS: Readonly<Record<string, string>> = {
  wheelbase: 'Wheelbase',
  frontLeft: 'Front left',
  frontRight: 'Front right',
  rearLeft: 'Rear left',
  rearRight: 'Rear right',
  cgHeight: 'Height of the centre of gravity',
  by: 'Hubs raised by',
  tyreRadius: 'Loaded radius of the other axle meanwhile',
  pitchInertia: 'Pitch inertia of the body',
  mass: 'Weight of the driver',
  onSeat: 'Share on the seat',
  behindFrontAxle: 'Front axle to hips',
  seat: 'Seat off the middle',
  sag: 'Sag of the seat',
  frequency: 'Frequency on the seat',
  dampingRatio: 'Damping ratio',
  reserve: 'Reserve to keep',
  bodyAcceleration: 'Body acceleration',
  bracketForce: 'Force on one corner of the frame',
  absorbedPower: 'Power that a seated body takes up',
  seatShock: 'Peak of the seat, below 30 Hz',
  seatDose: 'Dose of the seat in a day',
  tyreContact: 'Time with each tyre on the ground',
  track: 'Track',
  unsprungMass: 'Unsprung mass',
  gap: 'Gap at ride height',
  ratio: 'Travel ratio',
  flex: 'Flex allowance',
  metalRate: 'Stiffness of metal on metal',
  rate: 'Rate',
  freeLength: 'Free length',
  solidLength: 'Solid length',
  rideLength: 'Length at ride height',
  spread: 'Left to right',
  collapsedLength: 'Collapsed length',
  extendedLength: 'Extended length',
  droopReserve: 'Reserve in droop',
  usableCrush: 'Usable crush',
  forceAtFullCrush: 'Force at full crush',
  rateFactor: 'Rate factor',
  hysteresis: 'Lost in a slow press',
  dynamicFactor: 'Dynamic factor',
  cavity: 'Air space, across',
  hole: 'Vent hole',
  discharge: 'Discharge of the vent hole',
  rodDiameter: 'Rod diameter',
  column: 'Gas column',
  index: 'Gas index',
  gasPressure: 'Gas pressure',
  gasRise: 'Rise of gas pressure',
  friction: 'Seal friction',
  topOutRate: 'Stiffness on its top',
  linkRate: 'Link rate',
  linkSpread: 'Link to link',
  linkRatio: 'Travel ratio of a link',
  push: 'Push by hand',
  pull: 'Pull by hand',
  force: 'Force of the oil',
  length: 'Length',
  stretch: 'Stretch at full load',
  tightAtShock: 'Shock length when tight',
  distanceAtDroop: 'Distance at full droop',
  droop: 'Droop left to it',
  railHeight: 'Frame rail above the floor',
  pinionAngle: 'Pinion, nose up',
  caseAngle: 'Output of the case, flange up',
  slip: 'Slip',
  slipIn: 'Slip left to go in',
  diameter: 'Outer diameter',
  padSize: 'Strike pad, smallest side',
  tipSize: 'Tip of the stop',
  armLength: 'Steering arm',
  caster: 'Caster',
  lock: 'Steering lock',
  kingpinSpread: 'Kingpin to kingpin',
  inclination: 'Kingpin, top inboard',
  pinionBindsAt: 'Pinion joint binds at',
  caseBindsAt: 'Case joint binds at',
  yokeTwist: 'Twist of the yokes',
  tubeOutside: 'Tube, outside',
  tubeWall: 'Tube, wall',
  damping: 'Damping',
  pressure: 'Pressure',
  radius: 'Loaded radius',
  clay: 'Thinnest clay',
  speed: 'Speed',
  perDay: 'Driven in a day',
  height: 'Height',
  spacing: 'Crest to crest',
  start: 'Flat run before it',
  rightPhase: 'Lag of the right track',
  n: 'Waves per length',
  common: 'Height, both sides',
  commonPhase: 'Phase, both sides',
  own: 'Height, each side',
  leftPhase: 'Phase, left',
  fadeIn: 'Fades in over',
  left: 'Left',
  right: 'Right',
};

/** Links and mounts under one heading: which of them, which end of it, which way. */
const POINTED: Readonly<Record<string, string>> = {
  lower: 'Lower link',
  upper: 'Upper link',
  arm: 'Radius arm',
  panhard: 'Panhard bar',
  spring: 'Spring',
  shock: 'Shock',
  stop: 'Stop',
  hose: 'Hose',
  dragLink: 'Drag link',
  pinion: 'Pinion joint',
  case: 'Case joint',
};
const WAYS: Readonly<Record<string, string>> = {
  ahead: 'ahead of the axle tube',
  behind: 'behind the axle tube',
  spread: 'left to right',
  out: 'out from the centreline',
  left: 'left of the centreline',
  right: 'right of the centreline',
  aboveFloor: 'above the floor',
  aboveTube: 'above the axle tube',
  belowTube: 'below the axle tube',
  aboveRail: 'above the frame rail',
  belowRail: 'below the frame rail',
};

function pointLabel(path: readonly string[]): string | null {
  const way = WAYS[path.at(-1) ?? ''];
  const at = path.at(-2) ?? '';
  if (way === undefined) return null;
  if (at === 'pinion' || at === 'case') return `${POINTED[at]}, ${way}`;
  if (at !== 'axle' && at !== 'frame') return null;
  const right = path.at(-3) === 'right';
  const of = POINTED[path.at(right ? -4 : -3) ?? ''];
  return of === undefined ? null : `${of}${right ? ' on the right' : ''}, ${at} end, ${way}`;
}

/** A short label for the eye; the group heading says of what. */
export function labelOf(path: readonly string[]): string {
  const last = path.at(-1) ?? '';
  const pointed = pointLabel(path);
  if (pointed !== null) return pointed;
  if (last === 'ratio' && path.at(-2) === 'axle') return 'Axle ratio';
  if (last === 'rollInertia') return path[0] === 'measured' ? 'Roll inertia of the body' : 'Roll inertia';
  if (last === 'left' || last === 'right') {
    const of = LABELS[path.at(-2) ?? ''];
    return of === undefined ? (LABELS[last] ?? last) : `${of}, ${last}`;
  }
  if (path.at(-3) === 'waves')
    return `Wave ${Number(path.at(-2)) + 1}: ${(LABELS[last] ?? last).toLowerCase()}`;
  if (path.at(-2) === 'passes') return `Marker, pass ${Number(last) + 1}`;
  return LABELS[last] ?? spelledOut(last);
}

/** `bracketForce` → `Bracket force`: a reading that is new to the file still has a name here. */
const spelledOut = (key: string): string => {
  const words = key.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
};
