import type { KnownTo, ShockSetting } from '../rig/parts.ts';

/**
 * Speed–force table of a shock, out of what its owner has: a bench curve, a push by hand, or only shares of critical
 * damping. It always says up to which speed it rests on a reading; beyond that it is extrapolated and has to be called so.
 */
export interface ShockTable {
  /** Shaft speed [m/s], rising through zero, compression positive. */
  readonly speed: readonly number[];
  /** Damping force [N], not falling, zero at rest. */
  readonly force: readonly number[];
  readonly knownTo: KnownTo;
}

/** Up to which speed a setting rests on readings: as it says itself, else as far as its table goes. */
export const knownTo = ({ speed, knownTo: said }: Pick<ShockSetting, 'speed' | 'knownTo'>): KnownTo =>
  said ?? tableEnds(speed);

const tableEnds = (speed: readonly number[]): KnownTo => ({
  compression: Math.max(0, speed[speed.length - 1]),
  rebound: Math.max(0, -speed[0]),
});

/** A measured table. At rest a shock gives no damping force, whether or not the table has that row. */
export function measuredTable(speed: readonly number[], force: readonly number[]): ShockTable {
  const knownTo = tableEnds(speed);
  if (speed.includes(0)) return { speed, force, knownTo };
  const after = speed.findIndex((value) => value > 0);
  const at = after < 0 ? speed.length : after;
  return { speed: speed.toSpliced(at, 0, 0), force: force.toSpliced(at, 0, 0), knownTo };
}

/** Shaft speed from which the usual digressive shock rises at half its first slope: 10 in/s. */
const KNEE = 0.254;
/** Where an estimated table ends [m/s]. */
const FASTEST = 3;

/** Force of the usual shape: `slope` up to the knee, half of it beyond. */
const usualShape = (slope: number, speed: number, knee: number): number =>
  slope * (Math.min(speed, knee) + 0.5 * Math.max(0, speed - knee));

/** What critical damping of a corner is reckoned from. */
export interface DampedCorner {
  /** Sprung mass on this corner, mean of both sides [kg]. */
  readonly sprungMass: number;
  /** Coil rate seen at the axle [N/m]. */
  readonly rateAtAxle: number;
  /** Shock travel ÷ axle travel. */
  readonly shockRatio: number;
}

/**
 * Table out of shares of critical damping. At the axle c = 2ζ√(km); at the shaft, force and speed both scale with the
 * travel ratio r, so that F = c/r²·v, and beyond 10 in/s half that slope.
 *
 * @validity an estimate through and through: it rests on no reading of the shock
 * @source definition of the damping ratio; the shape beyond the knee is common practice, no source
 */
export function dampingRatioTable(
  ratio: { readonly compression: number; readonly rebound: number },
  corner: DampedCorner,
): ShockTable {
  const critical = 2 * Math.sqrt(corner.rateAtAxle * corner.sprungMass);
  const at = (speed: number, share: number) =>
    usualShape((share * critical) / corner.shockRatio ** 2, speed, KNEE);
  return {
    speed: [-FASTEST, -KNEE, 0, KNEE, FASTEST],
    force: [
      -at(FASTEST, ratio.rebound),
      -at(KNEE, ratio.rebound),
      0,
      at(KNEE, ratio.compression),
      at(FASTEST, ratio.compression),
    ],
    knownTo: { compression: 0, rebound: 0 },
  };
}

/** A shaft moved by hand at one setting. */
export interface HandPush {
  /** Shaft speed while pushing and pulling [m/s], > 0. */
  readonly speed: number;
  /** Force on the scale while pushing in [N]. */
  readonly push: number;
  /** Force while pulling out [N], null where it was not taken. */
  readonly pull: number | null;
}

/** Faster than this nobody pushes by hand [m/s]: such a reading belongs in a table. */
export const FASTEST_BY_HAND = 0.5;
/** Rebound ÷ compression where only compression was pushed: middle of 1.5 to 3, common practice, no source. */
const USUAL_REBOUND = 2.1;

/**
 * Damping forces of a hand push [N]: the scale also carried the gas, which pushes out, and the seals, which hold back.
 *
 *     compression = push − gas − friction,   rebound = pull + gas − friction
 *
 * @param gas – force of the gas on the rod where it was pushed [N], ≥ 0
 * @param friction – of the seals [N], ≥ 0
 * @returns zero or less where the reading is not above what gas and seals need: it says nothing about damping then
 */
export function dampingOfPush({ push, pull }: HandPush, gas: number, friction: number) {
  return { compression: push - gas - friction, rebound: pull === null ? null : pull + gas - friction };
}

/**
 * Low-speed estimate out of one push: through the reading, on with that slope to 10 in/s, half of it beyond.
 *
 * @param damping – as `dampingOfPush` gives it, both > 0
 * @validity known only to the speed of the push, 0.02 to 0.3 m/s in practice. What the shock does at the speeds of a hit,
 *   ten times as fast, no hand can feel: it is extrapolated by the usual shape and marked.
 * @source the usual shape is common practice, no source
 */
export function handPushTable(
  speed: number,
  damping: { readonly compression: number; readonly rebound: number | null },
): ShockTable {
  const knee = Math.max(KNEE, speed);
  const { compression } = damping;
  const rebound = damping.rebound ?? USUAL_REBOUND * compression;
  const at = (v: number, force: number) => usualShape(force / speed, v, knee);
  const speeds = speed < KNEE ? [speed, KNEE, FASTEST] : [speed, FASTEST];
  return {
    speed: [...speeds.map((v) => -v).reverse(), 0, ...speeds],
    force: [...speeds.map((v) => -at(v, rebound)).reverse(), 0, ...speeds.map((v) => at(v, compression))],
    knownTo: { compression: speed, rebound: damping.rebound === null ? 0 : speed },
  };
}

/** Speed over which seal friction turns round [m/s]: a numerical device; true stiction has no width. */
export const SEAL_SPEED = 0.01;

/**
 * The same table with the friction of seals and guides: ±friction, as a straight rise from −`SEAL_SPEED` to +`SEAL_SPEED`.
 *
 * @param friction – [N] ≥ 0; 20 to 60 N is usual (common practice, no source)
 * @invariant still zero at rest and never falling, so it only ever takes energy out
 * @validity no stiction: a rig that stands still in its friction creeps at less than `SEAL_SPEED` instead
 * @source Coulomb friction, regularised
 */
export function withSealFriction(table: ShockTable, friction: number): ShockTable {
  if (friction === 0) return table;
  const knots = new Set([...table.speed, -SEAL_SPEED, SEAL_SPEED]);
  const speed = [...knots].sort((a, b) => a - b);
  const step = (v: number) => friction * Math.max(-1, Math.min(1, v / SEAL_SPEED));
  return { ...table, speed, force: speed.map((v) => between(table, v) + step(v)) };
}

/** Straight lines between the points, end slopes carried on. */
function between({ speed, force }: ShockTable, v: number): number {
  const last = speed.length - 2;
  const after = speed.findIndex((knot) => knot > v);
  const i = after < 0 ? last : Math.min(last, Math.max(0, after - 1));
  return force[i] + ((force[i + 1] - force[i]) * (v - speed[i])) / (speed[i + 1] - speed[i]);
}
