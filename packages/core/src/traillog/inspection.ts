import { type LogBlock, type LogSink, STREAM_KINDS, type StreamKind } from './channels.ts';
import { clippedHits, type FlatTop, FlatTops } from './flat-tops.ts';
import { Hits, type LogHit } from './hits.ts';
import { alongSquare, type Rest, restOf, type Window, Windows } from './rest.ts';
import { Timing, type TimingReport } from './timing.ts';

/** What three axes of acceleration tell about themselves. */
export interface AccelerationReport {
  readonly rest: Rest | null;
  /** Hits that took an axis to the end of its range. */
  readonly clipped: readonly FlatTop[];
  /** The range that it ended at [m/s²]; null where nothing is clipped. */
  readonly range: number | null;
  readonly hits: readonly LogHit[];
  /** Seconds in windows without clipping and holes, and the vertical r.m.s. there [m/s²]; null without a rest or a window. */
  readonly cleanSeconds: number;
  readonly verticalRms: number | null;
}

/** What the places of a log tell. */
export interface PositionReport {
  /** Sum of the ways from place to place [m], as far as the accuracy lets it be told; 0 without places. */
  readonly distance: number;
  /** Largest speed that was written [m/s]; null without. */
  readonly topSpeed: number | null;
  /** Median of what the log says of its accuracy [m]; null where it does not. */
  readonly accuracy: number | null;
}

export interface LogInspection {
  readonly timing: Readonly<Partial<Record<StreamKind, TimingReport>>>;
  readonly acceleration: AccelerationReport | null;
  /** Of a channel that the device has filtered and freed of gravity. */
  readonly linear: AccelerationReport | null;
  readonly position: PositionReport | null;
}

/** Looks at a log as it is read, and keeps none of its rows. */
export class Inspector implements LogSink {
  readonly #timings = new Map<StreamKind, Timing>();
  readonly #axes = new Map<StreamKind, AxesLook>();
  #places: PlacesLook | null = null;

  take({ stream, rows, time, columns, lines }: LogBlock): void {
    const timing = this.#timings.get(stream) ?? new Timing();
    this.#timings.set(stream, timing);
    for (let k = 0; k < rows; k += 1) timing.add(time[k], lines[k]);
    if (stream === 'acceleration' || stream === 'linear-acceleration') {
      const look = this.#axes.get(stream) ?? new AxesLook();
      this.#axes.set(stream, look);
      // An axis that was not logged is not there: what the others say is then a lower bound.
      const [x, y, z] = columns;
      for (let k = 0; k < rows; k += 1) look.add(time[k], lines[k], x[k] || 0, y[k] || 0, z[k] || 0);
    }
    if (stream === 'position') {
      this.#places ??= new PlacesLook();
      for (let k = 0; k < rows; k += 1)
        this.#places.add(columns[0][k], columns[1][k], columns[3][k], columns[5][k]);
    }
  }

  finish(): LogInspection {
    const timing: Partial<Record<StreamKind, TimingReport>> = {};
    for (const kind of STREAM_KINDS) {
      const found = this.#timings.get(kind)?.finish();
      if (found) timing[kind] = found;
    }
    return {
      timing,
      acceleration: this.#axes.get('acceleration')?.finish() ?? null,
      linear: this.#axes.get('linear-acceleration')?.finish() ?? null,
      position: this.#places?.finish() ?? null,
    };
  }
}

/** A clipped hit spoils the window it is in and the one it runs into [s]. */
const SPOILT = 0.5;

class AxesLook {
  readonly #windows = new Windows();
  readonly #tops = [0, 1, 2].map((axis) => new FlatTops(axis));
  readonly #hits = new Hits();

  add(time: number, line: number, x: number, y: number, z: number): void {
    this.#windows.add(time, x, y, z);
    this.#tops[0].add(x, time, line);
    this.#tops[1].add(y, time, line);
    this.#tops[2].add(z, time, line);
    this.#hits.add(time, line, x, y, z);
  }

  finish(): AccelerationReport {
    this.#windows.end();
    this.#hits.end();
    const rest = restOf(this.#windows.list);
    const clipped = clippedHits(this.#tops.flatMap((axis) => axis.finish()));
    const clean = unspoilt(this.#windows.list, clipped);
    const samples = clean.reduce((sum, window) => sum + window.samples, 0);
    const up = rest?.vector.map((part) => part / rest.size);
    const square =
      up && rest
        ? clean.reduce((sum, window) => sum + window.samples * alongSquare(window, up, rest.size), 0) /
          samples
        : Number.NaN;
    return {
      rest,
      clipped,
      range: clipped.length > 0 ? Math.max(...clipped.map(({ at }) => Math.abs(at))) : null,
      hits: this.#hits.list,
      cleanSeconds: clean.reduce((sum, { from, to }) => sum + to - from, 0),
      verticalRms: Number.isFinite(square) ? Math.sqrt(square) : null,
    };
  }
}

/** Windows without a clipped hit in or near them; both lists rise in time as long as the clock does. */
function unspoilt(windows: readonly Window[], clipped: readonly FlatTop[]): readonly Window[] {
  let next = 0;
  return windows.filter(({ from, to }) => {
    while (next < clipped.length && clipped[next].time < from - SPOILT) next += 1;
    return next >= clipped.length || clipped[next].time > to + SPOILT;
  });
}

const EARTH = 6_371_000;
/** Farther apart than that in one step is a jump of the receiver, not a way [m]. */
const LEAP = 500;
const MOST_ACCURACIES = 100_000;

class PlacesLook {
  #latitude = Number.NaN;
  #longitude = Number.NaN;
  #distance = 0;
  #top = Number.NEGATIVE_INFINITY;
  readonly #accuracies: number[] = [];

  add(latitude: number, longitude: number, speed: number, accuracy: number): void {
    const step = between(this.#latitude, this.#longitude, latitude, longitude);
    if (step < LEAP) this.#distance += step;
    if (Number.isFinite(latitude) && Number.isFinite(longitude)) {
      this.#latitude = latitude;
      this.#longitude = longitude;
    }
    if (speed > this.#top) this.#top = speed;
    if (accuracy > 0 && this.#accuracies.length < MOST_ACCURACIES) this.#accuracies.push(accuracy);
  }

  finish(): PositionReport {
    const sorted = this.#accuracies.sort((a, b) => a - b);
    return {
      distance: this.#distance,
      topSpeed: Number.isFinite(this.#top) ? this.#top : null,
      accuracy: sorted[sorted.length >> 1] ?? null,
    };
  }
}

/** Way between two places on a ball, by the haversine [m]. */
function between(lat1: number, lon1: number, lat2: number, lon2: number): number {
  const rad = Math.PI / 180;
  const [a, b] = [Math.sin(((lat2 - lat1) * rad) / 2), Math.sin(((lon2 - lon1) * rad) / 2)];
  return 2 * EARTH * Math.asin(Math.sqrt(a * a + Math.cos(lat1 * rad) * Math.cos(lat2 * rad) * b * b));
}
