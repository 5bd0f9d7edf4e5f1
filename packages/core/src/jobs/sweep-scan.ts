import type { Place } from '../finding/place.ts';
import { CRITERIA } from './sweep-criteria.ts';

/** How a criterion stands at one speed; `unknown` where the run was given up before it could be told. */
export const STATES = ['held', 'broken', 'unknown', 'no-limit'] as const;
export type State = (typeof STATES)[number];
export const HELD = 0;
export const BROKEN = 1;
export const UNKNOWN = 2;
export const NO_LIMIT = 3;

export const PLACES: readonly Place[] = ['front', 'rear', 'rig'];

/** A crossing is pinned down to a sixteenth of the scan. */
const HALVINGS = 4;
export const REFINED = 2 ** -HALVINGS;

/** Speeds that are driven [m/s]. */
export interface Scan {
  readonly from: number;
  readonly to: number;
  /** Largest distance between two of them. */
  readonly step: number;
}

/** Where things stand in the row of one rig. */
export class SweepLayout {
  readonly speeds: Float64Array;
  readonly width: number;

  constructor({ from, to, step }: Scan) {
    const pieces = Math.max(1, Math.ceil((to - from) / step - 1e-9));
    this.speeds = Float64Array.from({ length: pieces + 1 }, (_, i) =>
      i === pieces ? to : from + (i * (to - from)) / pieces,
    );
    this.width = CRITERIA.length * (3 * this.speeds.length + 1);
  }

  value(criterion: number, speed: number): number {
    return criterion * this.speeds.length + speed;
  }
  state(criterion: number, speed: number): number {
    return (CRITERIA.length + criterion) * this.speeds.length + speed;
  }
  /** Speed at which the criterion changes between this speed of the scan and the next; NaN where it was not sought. */
  edge(criterion: number, speed: number): number {
    return (2 * CRITERIA.length + criterion) * this.speeds.length + speed;
  }
  /** Index in `PLACES` where it is first not held. */
  place(criterion: number): number {
    return 3 * CRITERIA.length * this.speeds.length + criterion;
  }
}

/** What all criteria say at one speed. */
export interface Sight {
  readonly values: readonly number[];
  readonly states: readonly number[];
  readonly places: readonly number[];
}
/** Drives a rig at a speed. */
export type Look = (speed: number) => Sight;

/**
 * Looks at a rig at every speed of the scan, because a response need not grow with speed: whoops can be worst at the
 * speed that shakes the rig at its own frequency. Then crossings are halved.
 *
 * @param all – every crossing; else the first one of each criterion
 * @param row – is filled as `SweepLayout` says
 */
export function scanRig(look: Look, layout: SweepLayout, all: boolean, row: Float64Array): void {
  const { speeds } = layout;
  const scan = Array.from(speeds, look);
  CRITERIA.forEach((_, k) => {
    scan.forEach(({ values, states }, i) => {
      row[layout.value(k, i)] = values[k];
      row[layout.state(k, i)] = states[k];
      row[layout.edge(k, i)] = Number.NaN;
    });
    const first = scan.findIndex(({ states }) => states[k] !== HELD);
    row[layout.place(k)] = first < 0 ? Number.NaN : scan[first].places[k];
    for (let i = 1; i < speeds.length; i += 1) {
      const [before, after] = [scan[i - 1].states[k], scan[i].states[k]];
      if ((before === HELD) === (after === HELD) || !(all || i === first)) continue;
      row[layout.edge(k, i - 1)] = crossing(look, k, speeds[i - 1], speeds[i], before === HELD);
    }
  });
}

/** Halves the way between a speed that holds and one that does not; the middle of what is left. */
function crossing(look: Look, criterion: number, below: number, above: number, heldBelow: boolean): number {
  let [low, high] = [below, above];
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (low + high) / 2;
    if ((look(middle).states[criterion] === HELD) === heldBelow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
