/** Public surface `@lastinch/core/trail`: logs of a drive, from bytes to what can be concluded. */

// --- A log read ---

export type {
  ColumnRole,
  Counted,
  GuessedBy,
  LogBlock,
  LogColumn,
  LogPlace,
  LogSink,
  ReadingReport,
  StreamKind,
} from './traillog/channels.ts';
export { COLUMN_ROLES, STREAM_COLUMNS, STREAM_KINDS } from './traillog/channels.ts';
export type { ColumnFix } from './traillog/column-guess.ts';
export type { LogFormat, LogReading, OpenAsked } from './traillog/open-log.ts';
export { HEAD_BYTES, logReading, openLog } from './traillog/open-log.ts';
