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

// --- What is wrong with it, and what may be said from it ---

export { type LogAnswer, type LogLook, lookAtLog } from './jobs/log.ts';
export { harmonicsKnown, type LogDoubt, type LogUse } from './traillog/conclusions.ts';
export type { FlatTop } from './traillog/flat-tops.ts';
export type { LogHit } from './traillog/hits.ts';
export type { AccelerationReport, LogInspection, PositionReport } from './traillog/inspection.ts';
export type { Rest } from './traillog/rest.ts';
export type { TimePlace, TimePlaces, TimingReport } from './traillog/timing.ts';
export { inG, lengthOfTime, logUseLines, wayText } from './words/log-answers.ts';
export { logDoubtText } from './words/log-doubts.ts';
