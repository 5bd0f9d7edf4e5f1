/** What rows of a log can tell, each with its columns in order. Axes are those of the device: nobody knows yet how it hung. */
export const STREAM_COLUMNS = {
  acceleration: ['x', 'y', 'z'],
  'linear-acceleration': ['x', 'y', 'z'],
  gravity: ['x', 'y', 'z'],
  'turn-rate': ['x', 'y', 'z'],
  position: ['latitude', 'longitude', 'altitude', 'speed', 'heading', 'accuracy'],
} as const;

export type StreamKind = keyof typeof STREAM_COLUMNS;
export const STREAM_KINDS = Object.keys(STREAM_COLUMNS) as StreamKind[];

/** What a column of a file is taken for. */
export type ColumnRole =
  | 'time'
  | 'ignored'
  | { [K in StreamKind]: `${K}.${(typeof STREAM_COLUMNS)[K][number]}` }[StreamKind];

export const COLUMN_ROLES: readonly ColumnRole[] = [
  'time',
  'ignored',
  ...STREAM_KINDS.flatMap((kind) => STREAM_COLUMNS[kind].map((column) => `${kind}.${column}` as ColumnRole)),
];

/** How sure a guess is: told by whoever asked, by the name, by the values, or taken for want of better. */
export type GuessedBy = 'asked' | 'name' | 'values' | 'custom';

/** A column of a file and what it is taken for: data, to be shown and corrected before a number is believed. */
export interface LogColumn {
  /** 1-based, as a person counts. */
  readonly number: number;
  /** As it stands in the header; empty without one. */
  readonly name: string;
  readonly role: ColumnRole;
  /** As read or guessed; empty where there is none. */
  readonly unit: string;
  /** SI value = number in the file × scale. */
  readonly scale: number;
  readonly roleBy: GuessedBy;
  readonly unitBy: GuessedBy;
}

/** Rows of one stream, in the order of the file. Buffers are written over after `take`: copy what is to be kept. */
export interface LogBlock {
  readonly stream: StreamKind;
  readonly rows: number;
  /** Seconds from the zero of the log. */
  readonly time: Float64Array;
  /** In the order of `STREAM_COLUMNS`, SI; not a number where a cell was empty or a column is not there. */
  readonly columns: readonly Float64Array[];
  /** Line of the file, 1-based. */
  readonly lines: Uint32Array;
}

/** Whoever takes what a reader reads, block by block. */
export interface LogSink {
  take(block: LogBlock): void;
}

/** A place in a file that something was wrong at, with what stood there. */
export interface LogPlace {
  readonly line: number;
  /** 1-based; 0 for the whole line. */
  readonly column: number;
  readonly found: string;
}

/** How often, and the first few places. */
export interface Counted {
  readonly count: number;
  readonly first: readonly LogPlace[];
}

/** What a reader met on its way: nothing of it is mended, rows that cannot be read are counted here. */
export interface ReadingReport {
  readonly lines: number;
  readonly bytes: number;
  /** Cells that are neither number nor empty where a number belongs. */
  readonly texts: Counted;
  /** Lines with too few cells, the torn last line of a file among them. */
  readonly torn: Counted;
  /** Rows without a time. */
  readonly timeless: Counted;
  /** Rows given to each stream. */
  readonly rows: Readonly<Record<StreamKind, number>>;
}
