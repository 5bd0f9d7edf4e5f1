import { type LogColumn, type LogSink, STREAM_COLUMNS, type StreamKind } from './channels.ts';

/** Rows that are gathered before they are handed on: some milliseconds of work, some hundred kilobytes. */
const ROWS = 4096;

/** Gathers the rows of one stream and hands them on block by block. */
export class StreamBuffer {
  rows = 0;
  readonly #time = new Float64Array(ROWS);
  readonly #columns: readonly Float64Array[];
  readonly #lines = new Uint32Array(ROWS);
  #held = 0;

  constructor(
    readonly stream: StreamKind,
    readonly sink: LogSink,
  ) {
    this.#columns = STREAM_COLUMNS[stream].map(() => new Float64Array(ROWS));
  }

  /** Begins a row; its columns are then set with `put`. */
  add(time: number, line: number): void {
    if (this.#held === ROWS) this.flush();
    this.#time[this.#held] = time;
    this.#lines[this.#held] = line;
    this.#held += 1;
    this.rows += 1;
  }

  put(column: number, value: number): void {
    this.#columns[column][this.#held - 1] = value;
  }

  flush(): void {
    if (this.#held === 0) return;
    this.sink.take({
      stream: this.stream,
      rows: this.#held,
      time: this.#time,
      columns: this.#columns,
      lines: this.#lines,
    });
    this.#held = 0;
  }
}

/** Where the columns of one stream come from in a row of a file. */
export interface StreamSource {
  readonly buffer: StreamBuffer;
  /** For each column of the stream: index in the row, −1 where the file has none. */
  readonly from: readonly number[];
  readonly scale: readonly number[];
  /** Indices in the row without which there is no row of this stream. */
  readonly needed: readonly number[];
}

/** The streams that a file has, by its columns. */
export function sourcesOf(columns: readonly LogColumn[], sink: LogSink): readonly StreamSource[] {
  return (Object.keys(STREAM_COLUMNS) as StreamKind[]).flatMap((stream) => {
    const from = STREAM_COLUMNS[stream].map((column) =>
      columns.findIndex(({ role }) => role === `${stream}.${column}`),
    );
    const there = from.filter((k) => k >= 0);
    if (there.length === 0) return [];
    const [latitude, longitude, , speed] = from;
    // A position is a place; without places its speed. What comes with it may be missing.
    const isPlaced = stream === 'position' && latitude >= 0 && longitude >= 0;
    const needed =
      stream !== 'position' ? there : isPlaced ? [latitude, longitude] : speed >= 0 ? [speed] : there;
    return [
      {
        buffer: new StreamBuffer(stream, sink),
        from,
        scale: from.map((k) => (k >= 0 ? columns[k].scale : 1)),
        needed,
      },
    ];
  });
}
