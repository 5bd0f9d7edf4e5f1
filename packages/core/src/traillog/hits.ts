/** A knock in a log, told from the size of the acceleration alone: so it does not matter how the device hung. */
export interface LogHit {
  readonly line: number;
  /** Of the largest sample [s]. */
  readonly time: number;
  /** Largest size of the acceleration, gravity in it [m/s²]: at least that much where it is clipped. */
  readonly size: number;
  /** The three axes at that sample [m/s²]. */
  readonly at: readonly [number, number, number];
  /** How long the rig had been falling before [s]; 0 for not at all. */
  readonly flight: number;
}

const GRAVITY = 9.80665;
/** From that size on a knock is a hit, gravity in it: one g above rest. common practice, no source */
export const HIT = 2 * GRAVITY;
/** Nearer to each other they are one hit [s]. */
const APART = 0.25;
/** Below that the rig is falling, for as long at least [m/s², s]. */
const FALLING = 0.4 * GRAVITY;
const LEAST_FLIGHT = 0.08;
/** A fall that ended longer ago has nothing to do with a hit [s]. */
const LANDED = 0.15;
const MOST = 100_000;

/** Finds hits in a stream as it comes. A hole ends whatever was going on. */
export class Hits {
  readonly list: LogHit[] = [];
  /** Hits beyond those that are kept. */
  more = 0;
  #hit: LogHit | null = null;
  #over = 0;
  #last = Number.NaN;
  #fallsSince: number | null = null;
  #fall = { from: 0, to: Number.NEGATIVE_INFINITY };

  add(time: number, line: number, x: number, y: number, z: number): void {
    if (!(time - this.#last < APART && time >= this.#last)) {
      this.end();
      this.#fallsSince = null;
      this.#fall = { from: 0, to: Number.NEGATIVE_INFINITY };
    }
    this.#last = time;
    const size = Math.sqrt(x * x + y * y + z * z);
    if (size < FALLING) this.#fallsSince ??= time;
    else if (this.#fallsSince !== null) {
      this.#fall = { from: this.#fallsSince, to: time };
      this.#fallsSince = null;
    }
    if (this.#hit !== null && time - this.#over > APART) this.end();
    if (size < HIT) return;
    this.#over = time;
    if (this.#hit !== null && size <= this.#hit.size) return;
    const fell = this.#fall.to - this.#fall.from;
    const flight = time - this.#fall.to < LANDED && fell >= LEAST_FLIGHT ? fell : (this.#hit?.flight ?? 0);
    this.#hit = { line, time, size, at: [x, y, z], flight };
  }

  end(): void {
    if (this.#hit === null) return;
    if (this.list.length < MOST) this.list.push(this.#hit);
    else this.more += 1;
    this.#hit = null;
  }
}
