import { bad, good, type Result } from '../finding/problem.ts';
import type { ReadingReport } from '../traillog/channels.ts';
import { type LogDoubt, type LogUse, logDoubts, logUse } from '../traillog/conclusions.ts';
import { Inspector, type LogInspection } from '../traillog/inspection.ts';
import { type LogFormat, logReading, type OpenAsked, openLog } from '../traillog/open-log.ts';

/** A log, looked at. */
export interface LogAnswer {
  readonly file: string;
  readonly format: LogFormat;
  /** When it began, as seconds since 1970; null where its clock begins anywhere. */
  readonly began: number | null;
  readonly report: ReadingReport;
  readonly inspection: LogInspection;
  readonly use: LogUse;
  readonly doubts: readonly LogDoubt[];
}

/** A log that is being looked at, piece by piece. */
export interface LogLook {
  readonly format: LogFormat;
  push(chunk: Uint8Array): void;
  finish(): Result<LogAnswer>;
}

/**
 * Looks at a log without keeping it: push all its bytes, from the first one, in pieces of any size.
 *
 * @param head – its first `HEAD_BYTES`, or all of a shorter one
 * @failure as `openLog`; `log-not-a-log` at the end where no row of it could be read
 */
export function lookAtLog(head: Uint8Array, asked: OpenAsked): Result<LogLook> {
  const opened = openLog(head, asked);
  if (!opened.ok) return opened;
  const format = opened.value;
  const inspector = new Inspector();
  const reading = logReading(format, inspector, asked.file);
  return good({
    format,
    push: (chunk) => reading.push(chunk),
    finish(): Result<LogAnswer> {
      const read = reading.finish();
      if (!read.ok) return read;
      const report = read.value;
      if (Object.values(report.rows).every((rows) => rows === 0))
        return bad({
          code: 'log-not-a-log',
          where: { file: asked.file },
          found: `${report.lines} lines without one whole row`,
          accepted: 'rows with a time and all axes of a sensor, or a place',
        });
      const inspection = inspector.finish();
      return good({
        file: asked.file,
        format,
        began: reading.isDated ? reading.zero : null,
        report,
        inspection,
        use: logUse(inspection),
        doubts: logDoubts(format, report, inspection),
      });
    },
  });
}
