import { shockGasOf } from '../elements/shock-gas.ts';
import { cornerAt, type End } from '../finding/place.ts';
import type { AntiRollBar } from '../rig/parts.ts';
import { nominal, type Reading } from '../rig/reading.ts';
import type { AxleEnd, AxleKind, Contact, Hose, Strap, Witness } from '../rig/rig.ts';
import { AS_FITTED } from '../rig/setup-resolve.ts';
import { buildBrackets } from './build-bracket.ts';
import { buildPoints, hasDriveline, hasHoseEnds } from './build-points.ts';
import { buildShock } from './build-shock.ts';
import { buildSpring, TAPED } from './build-spring.ts';
import { buildStop } from './build-stop.ts';
import { buildTyre } from './build-tyre.ts';
import type { Gaps } from './gaps.ts';
import type { ReadBeside } from './read-beside.ts';
import {
  axleRollInertia,
  independentRollInertia,
  spreadFromTrack,
  USUAL,
  unsprungFromWeight,
  unsprungOfWheels,
} from './usual-value.ts';

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
  const kind: AxleKind = gaps.text(`${end}.axle.kind`) === 'independent' ? 'independent' : 'solid';
  const track = gaps.needed(`${end}.axle.track`, TAPED);
  const axleLoad = cornerMass[cornerAt(end, 'left')]!.value + cornerMass[cornerAt(end, 'right')]!.value;
  const unsprungMass = gaps.readingOr(
    `${end}.axle.unsprungMass`,
    { dimension: 'mass', tool: 'unsprung-tolerance' },
    kind === 'solid' ? unsprungFromWeight(axleLoad) : unsprungOfWheels(axleLoad),
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
  const spread = (part: string): Reading => spreadOf(gaps, `${end}.${part}.spread`, kind, track);
  const contacts = buildContacts(gaps, end);
  const spring = buildSpring(gaps, `${end}.spring`, AS_FITTED);
  const springRatio = gaps.readingOr(`${end}.spring.ratio`, RATIO, USUAL.springRatio);
  const springRideLength = gaps.typedReading(`${end}.spring.rideLength`, TAPED);
  const sprungMass = Math.max(1, (axleLoad - unsprungMass.value) / 2);
  const shockRatio = gaps.readingOr(`${end}.shock.ratio`, RATIO, USUAL.shockRatio);
  const corner = {
    sprungMass,
    rateAtAxle: spring.rate.value * springRatio.value ** 2,
    shockRatio: shockRatio.value,
  };
  const shock = buildShock(gaps, end, corner, { ratio: shockRatio, spread: spread('shock') }, readBeside);
  const onGas = (shockGasOf(shock, nominal)?.force ?? 0) * shockRatio.value;
  checkCoil(gaps, end, { spring, springRatio, springRideLength, load: sprungMass * GRAVITY - onGas });
  const derived = (springRideLength && spring.solidLength) || (shock.rideLength && shock.collapsedLength);
  const spreads = { spring: spread('spring'), shock: shock.spread, stop: spread('stop') };
  const tyre = buildTyre(gaps, end, (axleLoad / 2) * GRAVITY, readBeside);
  if (contacts.length === 0 && !derived) gaps.ask(`${end}.contacts`, 'sump: { gap: 4 5/8 in }');
  return {
    end,
    kind,
    track,
    unsprungMass,
    axleRollInertia: rollInertiaOf(gaps, end, kind, unsprungMass.value, track.value),
    spring,
    springRideLength,
    springRatio,
    springSpread: spreads.spring,
    coilReserve: gaps.readingOr(`${end}.spring.reserve`, KEPT, USUAL.coilReserve),
    shockReserve: gaps.readingOr(`${end}.shock.reserve`, KEPT, USUAL.shockReserve),
    shockDroopReserve: gaps.readingOr(`${end}.shock.droopReserve`, KEPT, USUAL.shockDroopReserve),
    shock,
    stop: buildStop(gaps, `${end}.stop`, AS_FITTED, readBeside),
    stopMount: {
      gap: gaps.neededSides(`${end}.stop.gap`, TAPED),
      ratio: gaps.readingOr(`${end}.stop.ratio`, RATIO, USUAL.stopRatio),
      spread: spreads.stop,
    },
    antiRollBar: buildBar(gaps, end, kind, track),
    contacts,
    flex: gaps.readingOr(`${end}.flex`, { dimension: 'length', tool: 'guess-tolerance' }, USUAL.flex),
    strap: buildStrap(gaps, end),
    hose: buildHose(gaps, end),
    shaft: buildShaft(gaps, end),
    points: buildPoints(gaps, { end, kind }, tyre.radius, spreads),
    tyre,
    metalRate: gaps.readingOr(`${end}.metalRate`, GUESSED_RATE, USUAL.metalRate),
    witness: buildWitness(gaps, end),
    brackets: buildBrackets(gaps, end),
  };
}

/** On independent wheels everything moves with its wheel: left to right counts as the track, and nothing else may be typed. */
function spreadOf(gaps: Gaps, key: string, kind: AxleKind, track: Reading): Reading {
  if (kind === 'solid') return gaps.readingOr(key, TAPED, spreadFromTrack(track.value));
  notIndependent(gaps, key, 'nothing here: ratios are travel of the part ÷ wheel travel');
  return track;
}

function rollInertiaOf(gaps: Gaps, end: End, kind: AxleKind, mass: number, track: number): Reading {
  const key = `${end}.axle.rollInertia`;
  if (kind === 'solid') return gaps.readingOr(key, INERTIA, axleRollInertia(mass, track));
  notIndependent(gaps, key, 'nothing here: two wheels apart have mass·(track/2)²');
  return gaps.readingOr(key, INERTIA, independentRollInertia(mass, track));
}

function notIndependent(gaps: Gaps, key: string, accepted: string): void {
  if (gaps.at(key) !== undefined)
    gaps.problem('rig-inconsistent', key, gaps.text(key) ?? '', `${accepted} on independent wheels`);
}

/** An anti-roll bar by its rate at the axle, or by a bench reading at its links. */
function buildBar(gaps: Gaps, end: End, kind: AxleKind, track: Reading): AntiRollBar | null {
  const key = `${end}.antiRollBar`;
  if (gaps.at(key) === undefined) return null;
  const rate = gaps.typedReading(`${key}.rate`, { dimension: 'rollRate', tool: 'guess-tolerance' });
  const linkRate = gaps.typedReading(`${key}.linkRate`, {
    dimension: 'rate',
    tool: 'press-rate-tolerance',
  });
  if (rate && linkRate) {
    gaps.problem('rig-inconsistent', linkRate.key, linkRate.text, `either this or ${key}.rate`);
    return null;
  }
  if (rate) return { rate, link: null };
  if (!linkRate) {
    gaps.ask(`${key}.rate`, '300 N·m/deg; or linkRate and linkSpread');
    return null;
  }
  const spread =
    kind === 'solid'
      ? gaps.needed(`${key}.linkSpread`, TAPED)
      : spreadOf(gaps, `${key}.linkSpread`, kind, track);
  const ratio = gaps.readingOr(`${key}.linkRatio`, RATIO, USUAL.barRatio);
  return { rate: null, link: { rate: linkRate, spread, ratio } };
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
      spread: gaps.typedReading(`${key}.spread`, TAPED),
    };
  });
}

interface Coil {
  readonly spring: AxleEnd['spring'];
  readonly springRatio: Reading;
  readonly springRideLength: Reading | null;
  /** What it carries at ride height, seen at the axle [N]. */
  readonly load: number;
}

/** Lengths that contradict each other, and a coil that the weight would press solid. */
function checkCoil(gaps: Gaps, end: End, { spring, springRatio, springRideLength, load }: Coil): void {
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
  const settled = load / (rate.value * springRatio.value);
  if (freeLength.value - settled <= solidLength.value) {
    const needed = load / (springRatio.value * (freeLength.value - solidLength.value));
    gaps.problem(
      'rig-cannot-settle',
      rate.key,
      rate.text,
      `more than ${Math.round(needed / 100) / 10} N/mm for this weight`,
    );
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
    rate: gaps.typedReading(`${key}.rate`, GUESSED_RATE),
  };
}

function buildHose(gaps: Gaps, end: End): Hose | null {
  const key = `${end}.hose`;
  if (gaps.at(key) === undefined) return null;
  // With its ends in place, the distance follows from the links.
  if (hasHoseEnds(gaps, end) && gaps.at(`${key}.distanceAtDroop`) === undefined) return null;
  return {
    freeLength: gaps.needed(`${key}.freeLength`, TAPED),
    distanceAtDroop: gaps.needed(`${key}.distanceAtDroop`, TAPED),
  };
}

function buildShaft(gaps: Gaps, end: End): AxleEnd['shaft'] {
  const key = `${end}.shaft`;
  if (gaps.at(key) === undefined) return null;
  if (hasDriveline(gaps, end) && gaps.at(`${key}.droop`) === undefined) return null;
  return { droop: gaps.needed(`${key}.droop`, TAPED) };
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
