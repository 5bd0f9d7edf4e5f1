import { BRACKET_READINGS } from './bracket-readings.ts';
import { CHOICE_READINGS } from './choice-readings.ts';

/**
 * A reading in the words of the trade: `front.stop.gap.left` → `front stop gap, left`. A key that is not known comes
 * back as it is, so that nothing is ever hidden.
 */
export function readingName(key: string): string {
  const path = key.split('.');
  for (const [pattern, name] of NAMES) {
    const match = matched(pattern, path);
    if (match) return name(...match);
  }
  return key;
}

type Name = (...slots: string[]) => string;

/** `*` takes one step of the path; a trailing left or right is taken wherever it stands. */
function matched(pattern: string, path: readonly string[]): string[] | null {
  const side = path.at(-1) === 'left' || path.at(-1) === 'right' ? path.at(-1)! : null;
  const steps = side ? path.slice(0, -1) : path;
  const wanted = pattern.split('.');
  if (wanted.length !== steps.length) return null;
  const slots: string[] = [];
  for (const [index, want] of wanted.entries()) {
    if (want === '*') slots.push(steps[index]!);
    else if (want !== steps[index]) return null;
  }
  return [...slots, side ? `, ${side}` : ''];
}

const END_PARTS: Readonly<Record<string, string>> = {
  ...BRACKET_READINGS,
  'axle.track': 'track',
  'axle.unsprungMass': 'unsprung mass',
  'axle.rollInertia': 'roll inertia of the axle',
  flex: 'flex allowance',
  'spring.rate': 'spring rate',
  'spring.freeLength': 'free length of the spring',
  'spring.solidLength': 'solid length of the spring',
  'spring.rideLength': 'coil length at ride height',
  'spring.ratio': 'travel ratio of the spring',
  'spring.spread': 'distance between the springs',
  'spring.reserve': 'coil reserve',
  'shock.rideLength': 'shock length at ride height',
  'shock.collapsedLength': 'collapsed length of the shock',
  'shock.extendedLength': 'extended length of the shock',
  'shock.ratio': 'travel ratio of the shock',
  'shock.spread': 'distance between the shocks',
  'shock.reserve': 'shock reserve in bump',
  'shock.gasPressure': 'gas pressure of the shock',
  'shock.rodDiameter': 'rod diameter of the shock',
  'shock.gasRise': 'rise of gas pressure over the stroke',
  'shock.friction': 'seal friction of the shock',
  'shock.topOutRate': 'stiffness of the shock on its top',
  'shock.droopReserve': 'shock reserve in droop',
  'stop.gap': 'stop gap',
  'stop.freeLength': 'free length of the stop',
  'stop.usableCrush': 'usable crush of the stop',
  'stop.curve': 'force curve of the stop',
  'stop.forceAtFullCrush': 'stop force at full crush',
  'stop.rateFactor': 'rate factor of the stop',
  'stop.hysteresis': 'press loss of the stop',
  'stop.dynamicFactor': 'dynamic factor of the stop',
  'stop.vent.cavity': 'air space across the stop',
  'stop.vent.hole': 'vent hole of the stop',
  'stop.vent.discharge': 'discharge of the vent hole of the stop',
  'stop.gas.rodDiameter': 'rod diameter of the gas stop',
  'stop.gas.pressure': 'charge of the gas stop',
  'stop.gas.column': 'gas column of the stop',
  'stop.gas.index': 'gas index of the stop',
  'stop.gas.oil.force': 'oil force of the gas stop',
  'stop.gas.oil.speed': 'speed of the oil force of the gas stop',
  'antiRollBar.rate': 'rate of the anti-roll bar',
  'antiRollBar.linkRate': 'link rate of the anti-roll bar',
  'antiRollBar.linkSpread': 'distance between the links of the anti-roll bar',
  'antiRollBar.linkRatio': 'travel ratio of the links of the anti-roll bar',
  'stop.ratio': 'travel ratio of the stop',
  'stop.spread': 'distance between the stops',
  metalRate: 'stiffness of metal on metal',
  'strap.length': 'strap length',
  'strap.stretch': 'strap stretch',
  'strap.tightAtShock': 'shock length when the strap comes tight',
  'strap.rate': 'strap rate',
  'strap.ratio': 'ratio of strap to shock travel',
  'hose.freeLength': 'hose length',
  'hose.distanceAtDroop': 'hose distance at droop',
  'shaft.droop': 'droop left to the driveshaft',
  'axle.ratio': 'axle ratio',
  railHeight: 'height of the frame rail',
  'shaft.pinionAngle': 'pinion angle',
  'shaft.caseAngle': 'angle of the case output',
  'shaft.slip': 'slip of the driveshaft',
  'shaft.slipIn': 'slip left at ride height',
  'hose.diameter': 'diameter of the hose',
  'mounts.stop.padSize': 'size of the strike pad',
  'mounts.stop.tipSize': 'size of the tip of the stop',
  'steering.armLength': 'length of the steering arm',
  'steering.caster': 'caster',
  'steering.lock': 'steering lock',
  'steering.kingpinSpread': 'distance between the kingpins',
  'steering.inclination': 'inclination of the kingpin',
  'shaft.pinionBindsAt': 'angle at which the pinion joint binds',
  'shaft.caseBindsAt': 'angle at which the case joint binds',
  'shaft.yokeTwist': 'twist of the yokes of the driveshaft',
  'shaft.tubeOutside': 'diameter of the driveshaft',
  'shaft.tubeWall': 'wall of the driveshaft',
  'tyre.rate': 'tyre rate',
  'tyre.damping': 'tyre damping',
  'tyre.pressure': 'tyre pressure',
  'tyre.radius': 'loaded radius of the tyre',
  'witness.clay': 'clay thickness',
};

/** Points: what of, and which end of it. */
const POINT_OF: readonly (readonly [pattern: string, name: string])[] = [
  ['links.lower', 'lower link'],
  ['links.upper', 'upper link'],
  ['links.arm', 'radius arm'],
  ['links.panhard', 'Panhard bar'],
  ['mounts.spring', 'spring'],
  ['mounts.shock', 'shock'],
  ['mounts.stop', 'stop'],
  ['hose', 'hose'],
  ['steering.dragLink', 'drag link'],
];
const AXES: Readonly<Record<string, string>> = {
  ahead: 'ahead of the axle tube',
  behind: 'behind the axle tube',
  spread: 'left to right',
  out: 'out from the centreline',
  aboveFloor: 'above the floor',
  aboveTube: 'above the axle tube',
  belowTube: 'below the axle tube',
  aboveRail: 'above the frame rail',
  belowRail: 'below the frame rail',
};
const MOVED: Readonly<Record<string, string>> = { ahead: 'forward', out: 'outward', up: 'up' };

function pointNames(end: string): readonly (readonly [string, Name])[] {
  const axes = (path: string, name: string): (readonly [string, Name])[] => [
    ...Object.entries(AXES).map(
      ([axis, said]) => [`${end}.${path}.${axis}`, () => `${end} ${name}, ${said}`] as const,
    ),
    // So far left or right of the centreline.
    [`${end}.${path}`, (side = '') => `${end} ${name}${side} of the centreline`],
  ];
  const links = POINT_OF.flatMap(([path, name]) => [
    ...['axle', 'frame'].flatMap((at) => [
      ...axes(`${path}.${at}`, `${name} at the ${at}`),
      ...axes(`${path}.right.${at}`, `right ${name} at the ${at}`),
      ...Object.entries(MOVED).map(
        ([axis, said]) =>
          [
            `setups.*.${end}.${path}.${at}.${axis}`,
            (setup = '') => `${end} ${name} at the ${at}, moved ${said} (setup ${setup})`,
          ] as const,
      ),
    ]),
    [`${end}.${path}.length`, () => `${end} ${name}, length`] as const,
    [
      `setups.*.${end}.${path}.longer`,
      (setup = '') => `${end} ${name}, made longer (setup ${setup})`,
    ] as const,
  ]);
  return [
    ...links,
    ...axes('shaft.pinion', 'pinion joint'),
    ...axes('shaft.case', 'case joint'),
    ...Object.entries(MOVED).map(
      ([axis, said]) =>
        [
          `setups.*.${end}.shaft.case.${axis}`,
          (setup = '') => `${end} case joint, moved ${said} (setup ${setup})`,
        ] as const,
    ),
    ...(['slip', 'slipIn'] as const).map(
      (name) =>
        [
          `setups.*.${end}.shaft.${name}`,
          (setup = '') => `${end} ${END_PARTS[`shaft.${name}`]} (setup ${setup})`,
        ] as const,
    ),
  ];
}

const CHANGES: Readonly<Record<string, string>> = {
  stopGap: 'stop gap',
  stopSpacer: 'stop spacer',
  seatAndStopDrop: 'seat and stop drop',
  springSpacer: 'spring spacer',
  tyrePressure: 'tyre pressure',
  addedLoad: 'added load',
  strapLength: 'strap length',
};

const SHELF: Readonly<Record<string, string>> = {
  freeLength: 'free length',
  usableCrush: 'usable crush',
  curve: 'force curve',
  forceAtFullCrush: 'force at full crush',
  rateFactor: 'rate factor',
  hysteresis: 'press loss',
  dynamicFactor: 'dynamic factor',
  'vent.cavity': 'air space',
  'vent.hole': 'vent hole',
  'vent.discharge': 'discharge of the vent hole',
  'gas.rodDiameter': 'rod diameter',
  'gas.pressure': 'charge',
  'gas.column': 'gas column',
  'gas.index': 'gas index',
  'gas.oil.force': 'oil force',
  'gas.oil.speed': 'speed of the oil force',
  rate: 'rate',
  solidLength: 'solid length',
};

const CORNER_NAMES: Readonly<Record<string, string>> = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
};

const ends = ['front', 'rear'];

/** Patterns with their names, the first that fits wins. */
const NAMES: readonly (readonly [string, Name])[] = [
  ['measured.wheelbase', () => 'wheelbase'],
  ['measured.weights.*', (corner = '') => `weight on the ${CORNER_NAMES[corner] ?? corner} tyre`],
  ['measured.cgHeight', () => 'height of the centre of gravity'],
  ['measured.cgLift.by', () => 'height by which one axle was raised'],
  ['measured.cgLift', (side = '') => `weight with the other axle raised${side}`],
  ['measured.cgLift.tyreRadius', () => 'loaded radius with the other axle raised'],
  ['measured.cgLift.give', () => 'give of the springs with one axle raised'],
  ['measured.rollInertia', () => 'roll inertia of the body'],
  ['measured.pitchInertia', () => 'pitch inertia of the body'],
  ['driver.mass', () => 'mass of the driver'],
  ['driver.onSeat', () => 'share of the driver on the seat'],
  ['driver.seat.behindFrontAxle', () => 'front axle to seat'],
  ['driver.seat', () => 'middle of the rig to the seat'],
  ['driver.seat.sag', () => 'sag of the seat'],
  ['driver.seat.rate', () => 'rate of the seat'],
  ['driver.seat.frequency', () => 'frequency of the driver on the seat'],
  ['driver.seat.dampingRatio', () => 'damping ratio of the seat'],
  ['limits.reserve', () => 'clearance reserve'],
  ['limits.bodyAcceleration', () => 'accepted body acceleration'],
  ['limits.bracketFactor', () => 'wanted factor of safety of brackets'],
  ['limits.bracketForce', () => 'accepted force on one corner of the frame'],
  ['limits.absorbedPower', () => 'accepted power that a seated body takes up'],
  ['limits.seatShock', () => 'accepted peak acceleration of the seat'],
  ['limits.seatDose', () => 'accepted vibration dose of the seat in a day'],
  ['limits.tyreContact', () => 'accepted share of time with a tyre on the ground'],
  ...ends.flatMap((end): (readonly [string, Name])[] => [
    ...Object.entries(END_PARTS).map(
      ([part, name]) => [`${end}.${part}`, (side = '') => `${end} ${name}${side}`] as const,
    ),
    [`${end}.contacts.*.gap`, (id = '', side = '') => `${end} gap at ${id}${side}`],
    [`${end}.contacts.*.spread`, (id = '') => `${end} distance from left to right of ${id}`],
    [`${end}.contacts.*.ratio`, (id = '') => `${end} travel ratio of ${id}`],
    [`${end}.shock.settings.*`, (id = '') => `${end} shock setting ${id}`],
    [
      `${end}.shock.settings.*.dampingRatio.compression`,
      (id = '') => `${end} damping ratio of ${id} in compression`,
    ],
    [`${end}.shock.settings.*.dampingRatio.rebound`, (id = '') => `${end} damping ratio of ${id} in rebound`],
    ...(['speed', 'push', 'pull'] as const).map(
      (what) =>
        [
          `${end}.shock.settings.*.handPush.${what}`,
          (id = '') => `${end} hand push of ${id}, ${what}`,
        ] as const,
    ),
    ...pointNames(end),
    [`${end}.witness.passes.*`, (index = '0') => `${end} marker, pass ${Number(index) + 1}`],
    [`setups.*.${end}.notch.*`, (setup = '', contact = '') => `${end} notch at ${contact} (setup ${setup})`],
    ...Object.entries(CHANGES).map(
      ([part, name]) =>
        [`setups.*.${end}.${part}`, (setup = '') => `${end} ${name} (setup ${setup})`] as const,
    ),
  ]),
  ...Object.entries(SHELF).flatMap(([part, name]): (readonly [string, Name])[] => [
    [`parts.stops.*.${part}`, (id = '') => `${name} of the stop ${id}`],
    [`parts.springs.*.${part}`, (id = '') => `${name} of the spring ${id}`],
  ]),
  ...CHOICE_READINGS,
];
