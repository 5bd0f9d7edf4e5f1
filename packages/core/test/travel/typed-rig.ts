import type { Dimension } from '../../src/finding/figure.ts';
import type { End, Side } from '../../src/finding/place.ts';
import type { Spring, Stop } from '../../src/rig/parts.ts';
import type { Reading } from '../../src/rig/reading.ts';
import type { AxleEnd, Contact, Hose, Rig, Strap, Witness } from '../../src/rig/rig.ts';
import type { Setup } from '../../src/rig/setup.ts';
import type { EndPatch } from '../../src/rig/setup-patch.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';

/** A value in SI, with or without a half-width; two half-widths are up and down. */
export type Given = number | readonly [number, number] | readonly [number, number, number];

export const reading = (key: string, given: Given, dimension: Dimension = 'length'): Reading => {
  const [value, plus, minus] = typeof given === 'number' ? [given, 0] : given;
  return {
    key,
    dimension,
    value,
    plus,
    minus: minus ?? plus,
    origin: 'measured',
    toleranceOrigin: 'measured',
    text: String(value),
  };
};

/** What a test says about one end; the rest is an invented rig that no expectation rests on. Lengths in m. */
export interface EndFacts {
  readonly contacts?: Readonly<Record<string, { gap: Given; ratio?: Given; spread?: Given }>>;
  readonly gap?: Given;
  readonly gapRight?: Given;
  readonly stopRatio?: Given;
  readonly crush?: Given;
  readonly stopFree?: Given;
  readonly curve?: { readonly crush: readonly number[]; readonly force: readonly number[] };
  readonly flex?: Given;
  readonly coil?: { ride?: Given; solid?: Given; free?: Given; reserve?: Given };
  readonly springRate?: Given;
  readonly springRatio?: Given;
  readonly springSpread?: Given;
  readonly shock?: {
    ride?: Given;
    closed?: Given;
    open?: Given;
    ratio?: Given;
    reserve?: Given;
    droopReserve?: Given;
  };
  readonly shockSlope?: readonly [number, number];
  readonly axleMass?: Given;
  readonly tyreRate?: Given;
  readonly strap?: { length: Given; stretch: Given; tight: Given; ratio?: Given };
  readonly hose?: { free: Given; apart: Given };
  readonly shaft?: Given;
  readonly witness?: { passes: readonly Given[]; clay?: Given };
}

export interface RigFacts {
  readonly reserve?: Given;
  readonly corners?: readonly [Given, Given, Given, Given];
  readonly front?: EndFacts;
  readonly rear?: EndFacts;
  readonly stops?: Readonly<Record<string, { free?: Given; crush: Given }>>;
  readonly springs?: Readonly<Record<string, { rate: Given; free?: Given; solid?: Given }>>;
  readonly setups?: Readonly<Record<string, { front?: EndPatch; rear?: EndPatch }>>;
}

export function rigOf(facts: RigFacts = {}): Rig {
  const corner = facts.corners ?? [480, 480, 420, 420];
  const mass = (name: string, given: Given) => reading(`measured.cornerMass.${name}`, given, 'mass');
  const record = <A, B>(from: Readonly<Record<string, A>> | undefined, make: (id: string, a: A) => B) =>
    Object.fromEntries(Object.entries(from ?? {}).map(([id, a]) => [id, make(id, a)]));
  return {
    name: 'test rig',
    notes: '',
    wheelbase: reading('measured.wheelbase', 2.6),
    cornerMass: {
      frontLeft: mass('frontLeft', corner[0]),
      frontRight: mass('frontRight', corner[1]),
      rearLeft: mass('rearLeft', corner[2]),
      rearRight: mass('rearRight', corner[3]),
    },
    cgHeight: reading('measured.cgHeight', 0.8),
    rollInertia: reading('measured.rollInertia', 500, 'inertia'),
    pitchInertia: reading('measured.pitchInertia', 1700, 'inertia'),
    front: endOfRig('front', facts.front ?? {}),
    rear: endOfRig('rear', facts.rear ?? {}),
    shelf: {
      stops: record(facts.stops, (id, { free, crush }) => stopOf(`shelf.stops.${id}`, id, crush, free)),
      springs: record(facts.springs, (id, { rate, free, solid }) =>
        springOf(`shelf.springs.${id}`, id, rate, free, solid),
      ),
    },
    setups: record(facts.setups, (id, { front, rear }) => ({
      id,
      notes: '',
      front: front ?? {},
      rear: rear ?? {},
    })),
    courses: {},
    limits: {
      reserve: reading('limits.reserve', facts.reserve ?? 0.01),
      bodyAcceleration: reading('limits.bodyAcceleration', 25, 'acceleration'),
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
}

const maybe = (key: string, given: Given | undefined) => (given === undefined ? null : reading(key, given));

const springOf = (key: string, id: string, rate: Given, free?: Given, solid?: Given): Spring => ({
  id,
  rate: reading(`${key}.rate`, rate, 'rate'),
  freeLength: maybe(`${key}.freeLength`, free),
  solidLength: maybe(`${key}.solidLength`, solid),
});

const stopOf = (key: string, id: string, crush: Given, free?: Given, curve?: EndFacts['curve']): Stop => {
  const usable = reading(`${key}.usableCrush`, crush);
  return {
    id,
    freeLength: maybe(`${key}.freeLength`, free),
    usableCrush: usable,
    crush: curve?.crush ?? [0, usable.value / 2, usable.value],
    force: curve?.force ?? [0, 2000, 9000],
    rateFactor: reading(`${key}.rateFactor`, 0, 'stiffnessOverSpeed'),
    hysteresis: null,
    dynamicFactor: null,
    gas: null,
    vent: null,
    origin: 'measured',
  };
};

function endOfRig(end: End, facts: EndFacts): AxleEnd {
  const r = (key: string, given: Given, dimension: Dimension = 'length') =>
    reading(`${end}.${key}`, given, dimension);
  const m = (key: string, given: Given | undefined) => maybe(`${end}.${key}`, given);
  const contacts = Object.entries(
    facts.contacts ?? ({ sump: { gap: 0.13 } } as NonNullable<EndFacts['contacts']>),
  ).map(([id, { gap, ratio, spread }]): Contact => {
    const taped = r(`contacts.${id}.gap`, gap);
    return {
      id,
      name: id,
      kind: 'body',
      gap: { left: taped, right: taped },
      ratio: r(`contacts.${id}.ratio`, ratio ?? 1, 'ratio'),
      spread: maybe(`${end}.contacts.${id}.spread`, spread),
    };
  });
  const left = r('stop.gap', facts.gap ?? 0.06);
  const gap: Readonly<Record<Side, Reading>> = {
    left,
    right: facts.gapRight === undefined ? left : r('stop.gap.right', facts.gapRight),
  };
  const [compression, rebound] = facts.shockSlope ?? [1500, 3000];
  const strap: Strap | null = facts.strap
    ? {
        length: r('strap.length', facts.strap.length),
        stretch: r('strap.stretch', facts.strap.stretch, 'ratio'),
        tightAtShock: r('strap.tightAtShock', facts.strap.tight),
        ratio: r('strap.ratio', facts.strap.ratio ?? 1, 'ratio'),
        rate: null,
      }
    : null;
  const hose: Hose | null = facts.hose
    ? {
        freeLength: r('hose.freeLength', facts.hose.free),
        distanceAtDroop: r('hose.distanceAtDroop', facts.hose.apart),
      }
    : null;
  const witness: Witness | null = facts.witness
    ? {
        passes: facts.witness.passes.map((pass, i) => r(`witness.passes.${i}`, pass)),
        clay: m('witness.clay', facts.witness.clay),
      }
    : null;
  return {
    end,
    brackets: { stop: null, spring: null, shock: null },
    kind: 'solid',
    points: {
      railHeight: null,
      linkage: null,
      mounts: { spring: null, shock: null, stop: null },
      driveline: null,
      hose: null,
      steering: null,
      axleRatio: null,
    },
    track: r('track', 1.6),
    unsprungMass: r('axle.mass', facts.axleMass ?? 250, 'mass'),
    axleRollInertia: r('axle.rollInertia', 60, 'inertia'),
    spring: springOf(
      `${end}.spring`,
      'as-fitted',
      facts.springRate ?? 30_000,
      facts.coil?.free,
      facts.coil?.solid,
    ),
    springRideLength: m('spring.rideLength', facts.coil?.ride),
    springRatio: r('spring.ratio', facts.springRatio ?? 1, 'ratio'),
    springSpread: r('spring.spread', facts.springSpread ?? 0.9),
    coilReserve: r('spring.reserve', facts.coil?.reserve ?? 0.008),
    shockReserve: r('shock.reserve', facts.shock?.reserve ?? 0.01),
    shockDroopReserve: r('shock.droopReserve', facts.shock?.droopReserve ?? 0.012),
    shock: {
      rideLength: m('shock.rideLength', facts.shock?.ride),
      collapsedLength: m('shock.collapsedLength', facts.shock?.closed),
      extendedLength: m('shock.extendedLength', facts.shock?.open),
      ratio: r('shock.ratio', facts.shock?.ratio ?? 1, 'ratio'),
      spread: r('shock.spread', 1.1),
      settings: {
        middle: {
          id: 'middle',
          speed: [-1, -0.25, 0, 0.25, 1],
          force: [-rebound * 0.5, -rebound * 0.25, 0, compression * 0.25, compression * 0.5],
          origin: 'measured',
        },
      },
      setting: 'middle',
      gas: null,
      friction: null,
      topOutRate: null,
    },
    stop: stopOf(`${end}.stop`, 'as-fitted', facts.crush ?? 0.04, facts.stopFree, facts.curve),
    stopMount: { gap, ratio: r('stop.ratio', facts.stopRatio ?? 1, 'ratio'), spread: r('stop.spread', 0.88) },
    antiRollBar: null,
    contacts,
    flex: r('flex', facts.flex ?? 0.01),
    strap,
    hose,
    shaft: facts.shaft === undefined ? null : { droop: r('shaft.droop', facts.shaft) },
    tyre: {
      rate: r('tyre.rate', facts.tyreRate ?? 200_000, 'rate'),
      damping: r('tyre.damping', 0, 'damping'),
      pressure: r('tyre.pressure', 170_000, 'pressure'),
      radius: r('tyre.radius', 0.42),
      size: null,
    },
    metalRate: r('metal.rate', 2e7, 'rate'),
    witness,
  };
}

/** The setup of a test; a wrong name is a mistake of the test. */
export function setupOf(rig: Rig, id = 'as-measured'): Setup {
  const result = resolveSetup(rig, id);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** One patch at the front of a rig, as the setup `changed`. */
export const changed = (facts: RigFacts, front: EndPatch, rear: EndPatch = {}): Setup =>
  setupOf(rigOf({ ...facts, setups: { ...facts.setups, changed: { front, rear } } }), 'changed');
