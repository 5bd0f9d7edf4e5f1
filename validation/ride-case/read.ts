import type { AxleModel, CourseShape, RideModel, Wave } from '@lastinch/core';

/**
 * Reader of `ride-case/1`: reference problems for the ride, solved by independent programs (docs/theory/ride.md).
 * General in what a case may leave out or say per axle: an element stands either once for the vehicle or at an axle.
 */
export interface RideCase {
  readonly name: string;
  readonly model: RideModel;
  readonly course: CourseShape;
  readonly speed: number;
  readonly duration: number;
  readonly initialLift: number;
  readonly expected: Readonly<Record<string, number | readonly number[]>>;
  readonly tolerance: Readonly<Record<string, Allowed>>;
}

/** How far ours may be from theirs. */
export interface Allowed {
  readonly kind: 'relative' | 'absolute';
  readonly value: number;
}

/** Thrown with a message for people: file, key, what is wrong. The runner prints it and goes on to the next case. */
export class CaseProblem extends Error {}

type Json = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads keys of one object and names the whole path when one is missing or of the wrong kind. */
function reader(value: unknown, path: string) {
  if (!isObject(value))
    throw new CaseProblem(`${path}: expected an object, found ${JSON.stringify(value) ?? 'nothing'}`);
  const complain = (key: string, what: string): never => {
    throw new CaseProblem(
      `${path}.${key}: expected ${what}, found ${JSON.stringify(value[key]) ?? 'nothing'}`,
    );
  };
  return {
    number(key: string, otherwise?: number): number {
      const found = value[key] ?? otherwise;
      return typeof found === 'number' && Number.isFinite(found) ? found : complain(key, 'a number');
    },
    numbers(key: string): readonly number[] {
      const found = value[key];
      return Array.isArray(found) && found.every((x) => typeof x === 'number' && Number.isFinite(x))
        ? (found as number[])
        : complain(key, 'an array of numbers');
    },
    text(key: string): string {
      const found = value[key];
      return typeof found === 'string' ? found : complain(key, 'text');
    },
    object(key: string): Json {
      const found = value[key];
      return isObject(found) ? found : complain(key, 'an object');
    },
    has: (key: string): boolean => value[key] !== undefined,
    raw: value,
  };
}

/**
 * @param text – the file
 * @throws CaseProblem that names key and fault
 */
export function readRideCase(text: string): RideCase {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    throw new CaseProblem(`not JSON: ${(error as Error).message}`);
  }
  const root = reader(json, 'case');
  if (root.raw.format !== 'ride-case/1') {
    throw new CaseProblem(
      `case.format: expected "ride-case/1", found ${JSON.stringify(root.raw.format) ?? 'nothing'}`,
    );
  }
  const duration = root.number('duration');
  const speed = root.number('speed');
  return {
    name: root.text('name'),
    model: readModel(root.object('vehicle')),
    course: readTerrain(root.object('terrain'), speed * duration),
    speed,
    duration,
    initialLift: root.number('initialLift', 0),
    expected: root.object('expected') as RideCase['expected'],
    tolerance: readTolerances(root.has('tolerance') ? root.object('tolerance') : {}),
  };
}

function readModel(vehicle: Json): RideModel {
  const at = reader(vehicle, 'vehicle');
  const sprung = reader(at.object('sprung'), 'vehicle.sprung');
  return {
    sprung: {
      mass: sprung.number('mass'),
      rollInertia: sprung.number('rollInertia'),
      pitchInertia: sprung.number('pitchInertia'),
      toFrontAxle: sprung.number('toFrontAxle'),
      toRearAxle: sprung.number('toRearAxle'),
    },
    axles: { front: readAxle(vehicle, 'front'), rear: readAxle(vehicle, 'rear') },
    gravity: at.number('gravity', 9.80665),
  };
}

function readAxle(vehicle: Json, end: 'front' | 'rear'): AxleModel {
  const path = `vehicle.${end}`;
  const at = reader(reader(vehicle, 'vehicle').object(end), path);
  const axle = reader(at.object('axle'), `${path}.axle`);
  const spring = reader(at.object('spring'), `${path}.spring`);
  const shockMount = reader(at.object('shock'), `${path}.shock`);
  const stopMount = reader(at.object('stop'), `${path}.stop`);

  /** An element that may stand at the axle (alone or merged into the mount of that name) or once for the vehicle. */
  const element = (name: string, mount: Json | null, telling: string) => {
    if (mount !== null && mount[telling] !== undefined) return reader(mount, `${path}.${name}`);
    const own = at.raw[name];
    if (isObject(own) && own[telling] !== undefined) return reader(own, `${path}.${name}`);
    return reader(vehicle[name], `vehicle.${name}`);
  };
  const damper = element('damper', shockMount.raw, 'speed');
  const stop = element('stop', stopMount.raw, 'crush');
  const metal = element('metal', null, 'rate');
  const tyre = element('tyre', null, 'rate');
  const hasDroopLimit = isObject(at.raw.droopLimit) || isObject(vehicle.droopLimit);
  const droop = hasDroopLimit ? element('droopLimit', null, 'at') : null;
  const gap = stopMount.number('gap');
  const metalAt = metal.number('atCrush');
  return {
    mass: axle.number('mass'),
    rollInertia: axle.number('rollInertia'),
    halfTrack: at.number('halfTrack'),
    spring: { halfStation: spring.number('halfStation'), rate: spring.number('rate'), ratio: 1 },
    shock: {
      halfStation: shockMount.number('halfStation'),
      ratio: 1,
      speed: damper.numbers('speed'),
      force: damper.numbers('force'),
    },
    stop: {
      halfStation: stopMount.number('halfStation'),
      ratio: 1,
      gap: { left: gap, right: gap },
      crush: stop.numbers('crush'),
      force: stop.numbers('force'),
      rateFactor: stop.number('rateFactor', 0),
    },
    metal: { atCrush: { left: metalAt, right: metalAt }, rate: metal.number('rate') },
    droopLimit: droop
      ? { at: droop.number('at'), rate: droop.number('rate'), rateFactor: droop.number('rateFactor', 0) }
      : { at: Infinity, rate: 0, rateFactor: 0 },
    tyre: { rate: tyre.number('rate'), damping: tyre.number('damping', 0) },
  };
}

function readTerrain(terrain: Json, length: number): CourseShape {
  const at = reader(terrain, 'terrain');
  const kind = at.text('kind');
  switch (kind) {
    case 'flat':
      return { kind, length };
    case 'whoops':
      return {
        kind,
        height: at.number('height'),
        spacing: at.number('spacing'),
        count: at.number('count'),
        start: at.number('start', 0),
        rightPhase: at.number('rightPhase', 0),
      };
    case 'ledge': {
      const side = terrain.side ?? 'both';
      if (side !== 'left' && side !== 'right' && side !== 'both') {
        throw new CaseProblem(
          `terrain.side: expected "left", "right" or "both", found ${JSON.stringify(side)}`,
        );
      }
      return {
        kind,
        side,
        height: at.number('height'),
        length: at.number('length'),
        start: at.number('start', 0),
      };
    }
    case 'waves':
      return { kind, waves: readWaves(terrain), fadeIn: at.number('fadeIn', 0), length };
    default:
      throw new CaseProblem(
        `terrain.kind: expected flat, whoops, ledge or waves, found ${JSON.stringify(kind)}`,
      );
  }
}

const WAVE_KEYS = ['n', 'common', 'commonPhase', 'own', 'leftPhase', 'rightPhase'] as const;

/** Waves stand as a list of objects under any key, or as one array a quantity. */
function readWaves(terrain: Json): readonly Wave[] {
  const list = Object.entries(terrain).find(
    ([, value]) => Array.isArray(value) && value.length > 0 && value.every(isObject),
  );
  if (list) {
    return (list[1] as Json[]).map((one, i) => {
      const at = reader(one, `terrain.${list[0]}[${i}]`);
      return Object.fromEntries(
        WAVE_KEYS.map((key) => [key, at.number(key, key === 'n' ? undefined : 0)]),
      ) as unknown as Wave;
    });
  }
  const holder = reader(
    Object.values(terrain).find((value) => isObject(value) && Array.isArray(value.n)) ?? terrain,
    'terrain',
  );
  const n = holder.numbers('n');
  const columns = Object.fromEntries(
    WAVE_KEYS.map((key) => [key, holder.has(key) ? holder.numbers(key) : n.map(() => 0)]),
  ) as Record<(typeof WAVE_KEYS)[number], readonly number[]>;
  return n.map(
    (_, i) => Object.fromEntries(WAVE_KEYS.map((key) => [key, columns[key][i] ?? 0])) as unknown as Wave,
  );
}

/** Numbers are relative; texts such as "1e-4 m absolute" or "0.1 %" say what they are. */
function readTolerances(tolerance: Json): Record<string, Allowed> {
  const allowed: Record<string, Allowed> = {};
  for (const [key, value] of Object.entries(tolerance)) {
    if (key === 'note') continue;
    if (typeof value === 'number') allowed[key] = { kind: 'relative', value };
    else if (typeof value === 'string') {
      const size = Number.parseFloat(value);
      if (!Number.isFinite(size))
        throw new CaseProblem(`tolerance.${key}: no number in ${JSON.stringify(value)}`);
      allowed[key] = /absolute/i.test(value)
        ? { kind: 'absolute', value: size }
        : { kind: 'relative', value: value.includes('%') ? size / 100 : size };
    }
  }
  return allowed;
}
