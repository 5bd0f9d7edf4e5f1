import { cornerAt, type End } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import type { AxleEnd, Contact, Hose, Shock, Strap, Tyre, Witness } from '../rig/rig.ts';
import { AS_FITTED } from '../rig/setup-resolve.ts';
import { buildShockSettings, buildSpring, buildStop, TAPED } from './build-parts.ts';
import type { Gaps } from './gaps.ts';
import { nearest } from './nearest.ts';
import type { ReadBeside } from './read-beside.ts';
import { axleRollInertia, spreadFromTrack, tyreRate, USUAL, unsprungFromWeight } from './usual-value.ts';

const RATIO = { dimension: 'ratio', tool: 'ratio-tolerance' } as const;
const KEPT = { dimension: 'length', tool: 'choice' } as const;
const GUESSED_RATE = { dimension: 'rate', tool: 'guess-tolerance' } as const;
const INERTIA = { dimension: 'inertia', tool: 'guess-tolerance' } as const;
/** Ids under which the derived contacts of the coil and the shock are listed. */
const RESERVED_CONTACTS = ['coil', 'shock'];

const GRAVITY = 9.80665;

/** One end of the rig: its typed readings, with every gap filled or asked for. */
export function buildEnd(
  gaps: Gaps,
  end: End,
  cornerMass: Readonly<Record<string, Reading>>,
  readBeside: ReadBeside | undefined,
): AxleEnd {
  const track = gaps.needed(`${end}.axle.track`, TAPED);
  const axleLoad = cornerMass[cornerAt(end, 'left')]!.value + cornerMass[cornerAt(end, 'right')]!.value;
  const unsprungMass = gaps.readingOr(
    `${end}.axle.unsprungMass`,
    { dimension: 'mass', tool: 'unsprung-tolerance' },
    unsprungFromWeight(axleLoad),
  );
  if (
    unsprungMass.origin !== 'assumed' &&
    unsprungMass.value >= axleLoad &&
    cornerMass[cornerAt(end, 'left')]!.text
  ) {
    gaps.problem(
      'rig-inconsistent',
      unsprungMass.key,
      unsprungMass.text,
      'less than the two tyres of this axle carry',
    );
  }
  const spread = spreadFromTrack(track.value);
  const contacts = buildContacts(gaps, end);
  const spring = buildSpring(gaps, `${end}.spring`, AS_FITTED);
  const springRatio = gaps.readingOr(`${end}.spring.ratio`, RATIO, USUAL.springRatio);
  const springRideLength = gaps.typedReading(`${end}.spring.rideLength`, TAPED);
  const sprungMass = Math.max(1, (axleLoad - unsprungMass.value) / 2);
  checkCoil(gaps, end, { spring, springRatio, springRideLength, sprungMass });
  const shockRatio = gaps.readingOr(`${end}.shock.ratio`, RATIO, USUAL.shockRatio);
  const corner = {
    sprungMass,
    rateAtAxle: spring.rate.value * springRatio.value ** 2,
    shockRatio: shockRatio.value,
  };
  const settings = buildShockSettings(gaps, `${end}.shock.settings`, corner, readBeside);
  const shock: Shock = {
    rideLength: gaps.typedReading(`${end}.shock.rideLength`, TAPED),
    collapsedLength: gaps.typedReading(`${end}.shock.collapsedLength`, TAPED),
    extendedLength: gaps.typedReading(`${end}.shock.extendedLength`, TAPED),
    ratio: shockRatio,
    spread: gaps.readingOr(`${end}.shock.spread`, TAPED, spread),
    settings,
    setting: chosenSetting(gaps, end, settings),
  };
  checkShock(gaps, end, shock);
  const derived = (springRideLength && spring.solidLength) || (shock.rideLength && shock.collapsedLength);
  if (contacts.length === 0 && !derived) gaps.ask(`${end}.contacts`, 'sump: { gap: 4 5/8 in }');
  return {
    end,
    track,
    unsprungMass,
    axleRollInertia: gaps.readingOr(
      `${end}.axle.rollInertia`,
      INERTIA,
      axleRollInertia(unsprungMass.value, track.value),
    ),
    spring,
    springRideLength,
    springRatio,
    springSpread: gaps.readingOr(`${end}.spring.spread`, TAPED, spread),
    coilReserve: gaps.readingOr(`${end}.spring.reserve`, KEPT, USUAL.coilReserve),
    shockReserve: gaps.readingOr(`${end}.shock.reserve`, KEPT, USUAL.shockReserve),
    shockDroopReserve: gaps.readingOr(`${end}.shock.droopReserve`, KEPT, USUAL.shockDroopReserve),
    shock,
    stop: buildStop(gaps, `${end}.stop`, AS_FITTED, readBeside),
    stopMount: {
      gap: gaps.neededSides(`${end}.stop.gap`, TAPED),
      ratio: gaps.readingOr(`${end}.stop.ratio`, RATIO, USUAL.stopRatio),
      spread: gaps.readingOr(`${end}.stop.spread`, TAPED, spread),
    },
    contacts,
    flex: gaps.readingOr(`${end}.flex`, { dimension: 'length', tool: 'guess-tolerance' }, USUAL.flex),
    strap: buildStrap(gaps, end),
    hose: buildHose(gaps, end),
    shaft: gaps.at(`${end}.shaft`) === undefined ? null : { droop: gaps.needed(`${end}.shaft.droop`, TAPED) },
    tyre: buildTyre(gaps, end),
    metalRate: gaps.readingOr(`${end}.metalRate`, GUESSED_RATE, USUAL.metalRate),
    witness: buildWitness(gaps, end),
  };
}

function buildContacts(gaps: Gaps, end: End): readonly Contact[] {
  return gaps.names(`${end}.contacts`).map((id): Contact => {
    const key = `${end}.contacts.${id}`;
    if (RESERVED_CONTACTS.includes(id)) {
      gaps.problem('rig-inconsistent', key, id, `another name: ${id} is worked out from its lengths`);
    }
    return {
      id,
      name: gaps.text(`${key}.name`) ?? id,
      kind: 'body',
      gap: gaps.neededSides(`${key}.gap`, TAPED),
      ratio: gaps.readingOr(`${key}.ratio`, RATIO, USUAL.contactRatio),
    };
  });
}

function chosenSetting(gaps: Gaps, end: End, settings: Shock['settings']): string {
  const names = Object.keys(settings);
  const key = `${end}.shock.setting`;
  const typed = gaps.text(key);
  if (typed === undefined) return names[0] ?? '';
  // A setting whose table is faulty has its own problem already.
  const known = gaps.names(`${end}.shock.settings`);
  if (!Object.hasOwn(settings, typed) && !known.includes(typed)) {
    const accepted = [nearest(typed, names), ...names].filter((name) => name !== null);
    gaps.problem('rig-unknown-name', key, typed, [...new Set(accepted)].join(', '));
  }
  return typed;
}

interface Coil {
  readonly spring: AxleEnd['spring'];
  readonly springRatio: Reading;
  readonly springRideLength: Reading | null;
  readonly sprungMass: number;
}

/** Lengths that contradict each other, and a coil that the weight would press solid. */
function checkCoil(gaps: Gaps, end: End, { spring, springRatio, springRideLength, sprungMass }: Coil): void {
  const { freeLength, solidLength, rate } = spring;
  const key = `${end}.spring.rideLength`;
  if (springRideLength && freeLength && springRideLength.value >= freeLength.value) {
    gaps.problem(
      'rig-inconsistent',
      key,
      springRideLength.text,
      `less than the free length, ${freeLength.text}`,
    );
  }
  if (springRideLength && solidLength && springRideLength.value <= solidLength.value) {
    gaps.problem(
      'rig-inconsistent',
      key,
      springRideLength.text,
      `more than the solid length, ${solidLength.text}`,
    );
  }
  if (!freeLength || !solidLength || rate.text === '' || gaps.problems.length > 0) return;
  const settled = (sprungMass * GRAVITY) / (rate.value * springRatio.value);
  if (freeLength.value - settled <= solidLength.value) {
    const needed = (sprungMass * GRAVITY) / (springRatio.value * (freeLength.value - solidLength.value));
    gaps.problem(
      'rig-cannot-settle',
      rate.key,
      rate.text,
      `more than ${Math.round(needed / 100) / 10} N/mm for this weight`,
    );
  }
}

function checkShock(gaps: Gaps, end: End, shock: Shock): void {
  const { rideLength, collapsedLength, extendedLength } = shock;
  const order = [
    [collapsedLength, rideLength, 'rideLength', 'the collapsed length'],
    [rideLength, extendedLength, 'extendedLength', 'the length at ride'],
    [collapsedLength, extendedLength, 'extendedLength', 'the collapsed length'],
  ] as const;
  for (const [shorter, longer, name, than] of order) {
    if (!shorter || !longer || longer.value > shorter.value) continue;
    gaps.problem(
      'rig-inconsistent',
      `${end}.shock.${name}`,
      longer.text,
      `more than ${than}, ${shorter.text}`,
    );
    return;
  }
}

function buildStrap(gaps: Gaps, end: End): Strap | null {
  const key = `${end}.strap`;
  if (gaps.at(key) === undefined) return null;
  return {
    length: gaps.needed(`${key}.length`, TAPED),
    stretch: gaps.readingOr(
      `${key}.stretch`,
      { dimension: 'ratio', tool: 'guess-tolerance' },
      USUAL.strapStretch,
    ),
    tightAtShock: gaps.needed(`${key}.tightAtShock`, TAPED),
    ratio: gaps.readingOr(`${key}.ratio`, RATIO, USUAL.strapRatio),
  };
}

function buildHose(gaps: Gaps, end: End): Hose | null {
  const key = `${end}.hose`;
  if (gaps.at(key) === undefined) return null;
  return {
    freeLength: gaps.needed(`${key}.freeLength`, TAPED),
    distanceAtDroop: gaps.needed(`${key}.distanceAtDroop`, TAPED),
  };
}

function buildTyre(gaps: Gaps, end: End): Tyre {
  const key = `${end}.tyre`;
  const pressure = gaps.typedReading(`${key}.pressure`, { dimension: 'pressure', tool: 'gauge-tolerance' });
  return {
    pressure,
    rate: gaps.readingOr(`${key}.rate`, GUESSED_RATE, tyreRate(pressure?.value ?? null)),
    damping: gaps.readingOr(
      `${key}.damping`,
      { dimension: 'damping', tool: 'guess-tolerance' },
      USUAL.tyreDamping,
    ),
    radius: gaps.readingOr(`${key}.radius`, TAPED, USUAL.tyreRadius),
  };
}

function buildWitness(gaps: Gaps, end: End): Witness | null {
  const key = `${end}.witness`;
  if (gaps.at(key) === undefined) return null;
  const passes = gaps.at(`${key}.passes`);
  const count = Array.isArray(passes) ? passes.length : 0;
  const marker = { dimension: 'length', tool: 'marker-tolerance' } as const;
  return {
    passes: Array.from({ length: count }, (_, i) => gaps.typedReading(`${key}.passes.${i}`, marker)).filter(
      (reading) => reading !== null,
    ),
    clay: gaps.typedReading(`${key}.clay`, { dimension: 'length', tool: 'clay-tolerance' }),
  };
}
