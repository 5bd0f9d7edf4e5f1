import {
  AS_MEASURED,
  type AxleEnd,
  type Contact,
  type Dimension,
  type End,
  type Reading,
  type Rig,
  resolveSetup,
  type Setup,
} from '@lastinch/core';

/**
 * Readings of a check by key: a bare number has no uncertainty, a pair is value and 95 % half-width. SI.
 * A key of one side is written out: `front.stop.gap` moves both sides together.
 */
export type Known = Readonly<Record<string, number | readonly [number, number]>>;

/** A smooth invented rig. A check names the readings that its result rests on; these only fill the rest. */
const FILL: Readonly<Record<string, number>> = {
  wheelbase: 2.6,
  'measured.cornerMass.frontLeft': 480,
  'measured.cornerMass.frontRight': 480,
  'measured.cornerMass.rearLeft': 420,
  'measured.cornerMass.rearRight': 420,
  'measured.cgHeight': 0.8,
  'measured.rollInertia': 500,
  'measured.pitchInertia': 1700,
  'limits.reserve': 0,
  'limits.bodyAcceleration': 30,
};

const END_FILL: Readonly<Record<string, number>> = {
  track: 1.6,
  'axle.mass': 240,
  'axle.rollInertia': 60,
  'spring.rate': 30_000,
  'spring.ratio': 1,
  'spring.spread': 0.9,
  'spring.coilReserve': 0,
  'shock.reserve': 0,
  'shock.droopReserve': 0,
  'shock.ratio': 1,
  'shock.spread': 1.1,
  'shock.slope': 2000,
  'stop.gap': 0.06,
  'stop.ratio': 1,
  'stop.spread': 0.88,
  'stop.usableCrush': 0.04,
  'stop.rateFactor': 0,
  'contacts.sump.gap': 0.12,
  'contacts.sump.ratio': 1,
  flex: 0,
  'metal.rate': 2e7,
  'tyre.rate': 200_000,
  'tyre.damping': 0,
  'tyre.radius': 0.42,
};

/** Dimension of a reading: no view of it is made here, so only length and the rest are told apart. */
const dimensionOf = (key: string): Dimension =>
  /ratio$|rateFactor$/i.test(key) ? 'ratio' : /[mM]ass/.test(key) ? 'mass' : 'length';

/** The rig of a check, as measured. Throws on a key that nothing uses: it is our own mistake. */
export function knownSetup(known: Known): Setup {
  const left = new Set(Object.keys(known));
  const reading = (key: string, fill: number): Reading => {
    left.delete(key);
    const given = known[key] ?? fill;
    const [value, tolerance] = typeof given === 'number' ? [given, 0] : given;
    return {
      key,
      dimension: dimensionOf(key),
      value,
      plus: tolerance,
      minus: tolerance,
      origin: 'measured',
      toleranceOrigin: 'measured',
      text: String(value),
    };
  };
  const whole = (key: string) => reading(key, FILL[key]);
  const rig: Rig = {
    name: 'known',
    notes: '',
    wheelbase: whole('wheelbase'),
    cornerMass: {
      frontLeft: whole('measured.cornerMass.frontLeft'),
      frontRight: whole('measured.cornerMass.frontRight'),
      rearLeft: whole('measured.cornerMass.rearLeft'),
      rearRight: whole('measured.cornerMass.rearRight'),
    },
    cgHeight: whole('measured.cgHeight'),
    rollInertia: whole('measured.rollInertia'),
    pitchInertia: whole('measured.pitchInertia'),
    front: axleEnd('front', known, reading),
    rear: axleEnd('rear', known, reading),
    shelf: { stops: {}, springs: {} },
    setups: {},
    courses: {},
    limits: {
      reserve: whole('limits.reserve'),
      bodyAcceleration: whole('limits.bodyAcceleration'),
      bracketForce: null,
      bracketFactor: null,
      absorbedPower: null,
      seatShock: null,
      seatDose: null,
      tyreContact: null,
    },
    choices: null,
    driver: null,
    assumptions: [],
    cgLift: null,
  };
  if (left.size > 0) throw new Error(`A check names readings that no rig has: ${[...left].join(', ')}`);
  const setup = resolveSetup(rig, AS_MEASURED);
  if (!setup.ok) throw new Error(`The rig of a check cannot be resolved: ${JSON.stringify(setup.problems)}`);
  return setup.value;
}

function axleEnd(end: End, known: Known, reading: (key: string, fill: number) => Reading): AxleEnd {
  const own = (key: string) => reading(`${end}.${key}`, END_FILL[key]);
  const maybe = (key: string) => (`${end}.${key}` in known ? reading(`${end}.${key}`, 0) : null);
  const both = (key: string) => {
    const one = own(key);
    return { left: one, right: one };
  };
  const ids = Object.keys(known).flatMap((key) => key.match(`^${end}\\.contacts\\.(.+)\\.gap$`)?.[1] ?? []);
  const contacts = (ids.length > 0 ? ids : ['sump']).map((id): Contact => {
    const gap = reading(`${end}.contacts.${id}.gap`, END_FILL['contacts.sump.gap']);
    const ratio = reading(`${end}.contacts.${id}.ratio`, 1);
    return { id, name: id, kind: 'body', gap: { left: gap, right: gap }, ratio, spread: null };
  });
  const slope = own('shock.slope').value;
  const crush = own('stop.usableCrush');
  return {
    end,
    brackets: { stop: null, spring: null, shock: null },
    points: {
      railHeight: null,
      linkage: null,
      mounts: { spring: null, shock: null, stop: null },
      driveline: null,
      hose: null,
      steering: null,
      axleRatio: null,
    },
    kind: 'solid',
    track: own('track'),
    unsprungMass: own('axle.mass'),
    axleRollInertia: own('axle.rollInertia'),
    spring: {
      id: 'as-fitted',
      rate: own('spring.rate'),
      freeLength: maybe('spring.freeLength'),
      solidLength: maybe('spring.solidLength'),
    },
    springRideLength: maybe('spring.rideLength'),
    springRatio: own('spring.ratio'),
    springSpread: own('spring.spread'),
    coilReserve: own('spring.coilReserve'),
    shockReserve: own('shock.reserve'),
    shockDroopReserve: own('shock.droopReserve'),
    shock: {
      rideLength: maybe('shock.rideLength'),
      collapsedLength: maybe('shock.collapsedLength'),
      extendedLength: maybe('shock.extendedLength'),
      ratio: own('shock.ratio'),
      spread: own('shock.spread'),
      settings: { only: { id: 'only', speed: [-1, 0, 1], force: [-slope, 0, slope], origin: 'measured' } },
      setting: 'only',
      gas: null,
      friction: null,
      topOutRate: null,
    },
    stop: {
      id: 'as-fitted',
      freeLength: null,
      usableCrush: crush,
      crush: [0, crush.value / 2, crush.value],
      force: [0, 2000, 9000],
      rateFactor: own('stop.rateFactor'),
      hysteresis: null,
      dynamicFactor: null,
      gas: null,
      vent: null,
      origin: 'measured',
    },
    stopMount: { gap: both('stop.gap'), ratio: own('stop.ratio'), spread: own('stop.spread') },
    antiRollBar: null,
    contacts,
    flex: own('flex'),
    strap: null,
    hose: null,
    shaft: null,
    tyre: {
      rate: own('tyre.rate'),
      damping: own('tyre.damping'),
      pressure: null,
      radius: own('tyre.radius'),
      size: null,
    },
    metalRate: own('metal.rate'),
    witness: null,
  };
}
