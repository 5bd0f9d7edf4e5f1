import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import type { LogColumn, LogSink, ReadingReport } from './channels.ts';
import { type ColumnFix, guessColumns } from './column-guess.ts';
import { fileKind } from './file-kind.ts';
import { GpxReader } from './gpx-reader.ts';
import { TableReader } from './table-reader.ts';
import { tableShape } from './table-shape.ts';
import { markLength, textOf } from './utf8.ts';

/** How a log is laid out and what its columns are taken for: data, to be shown and corrected. */
export type LogFormat =
  | { readonly kind: 'gpx' }
  | {
      readonly kind: 'table';
      readonly separator: string;
      readonly decimal: '.' | ',';
      /** Lines before the data. */
      readonly skip: number;
      readonly lineEnd: 10 | 13;
      readonly columns: readonly LogColumn[];
    };

export interface OpenAsked {
  /** Name for messages. */
  readonly file: string;
  readonly fixes?: readonly ColumnFix[];
}

/** A file that is being read. */
export interface LogReading {
  push(chunk: Uint8Array): void;
  finish(): Result<ReadingReport>;
  /** First time of the file [s]: since 1970 where `isDated`, else in its own count. */
  readonly zero: number | null;
  readonly isDated: boolean;
}

/** As much of a file as is looked at before it is read. */
export const HEAD_BYTES = 65_536;

/** What a log may be, for messages. */
const LOGS = 'a table of time and accelerations or positions as text (CSV), or GPX';

/**
 * Finds out how a log is laid out, from its first bytes.
 *
 * @param head – the first `HEAD_BYTES`, or all of a shorter file
 * @failure `log-not-a-log` for nothing, a photo, an archive, bytes; `log-no-columns` where no time, or nothing beside
 *   it, is found; `log-column-unknown` for a correction of a column that is not there
 */
export function openLog(head: Uint8Array, { file, fixes = [] }: OpenAsked): Result<LogFormat> {
  const kind = fileKind(head);
  const none = (found: string): Result<LogFormat> =>
    bad({ code: 'log-not-a-log', where: { file }, found, accepted: LOGS });
  if (kind.kind === 'empty') return none('an empty file');
  if (kind.kind === 'foreign') return none(kind.what);
  if (kind.kind === 'gpx') return good({ kind: 'gpx' });
  const lineEnd = head.includes(10) ? 10 : head.includes(13) ? 13 : 10;
  const text = textOf(head.subarray(markLength(head)));
  const lines = text.split(lineEnd === 10 ? /\r?\n/ : '\r');
  // The last line of a head may be torn.
  if (head.length >= HEAD_BYTES && lines.length > 1) lines.pop();
  const shape = tableShape(lines);
  if (shape === null) return none('text without a table of numbers');
  const missing = fixes.filter(
    ({ column }) => !shape.names.includes(column) && !(Number(column) >= 1 && Number(column) <= shape.width),
  );
  if (missing.length > 0)
    return bad(
      ...missing.map(
        ({ column }): Problem => ({
          code: 'log-column-unknown',
          where: { file },
          found: column,
          accepted: shape.names.map((name, k) => `${k + 1}${name === '' ? '' : ` (${name})`}`).join(', '),
        }),
      ),
    );
  const columns = guessColumns(shape, lines.slice(shape.firstData, shape.firstData + 500), fixes);
  const has = (test: (column: LogColumn) => boolean): boolean => columns.some(test);
  const shown = columns.map(({ number, name }) => `${number}${name === '' ? '' : ` ${name}`}`).join(', ');
  const need = (what: string): Result<LogFormat> =>
    bad({ code: 'log-no-columns', where: { file, line: shape.firstData + 1 }, found: shown, accepted: what });
  if (!has(({ role }) => role === 'time')) return need('a column of time: name it, for example time=1');
  if (!has(({ role }) => role !== 'time' && role !== 'ignored'))
    return need('columns of acceleration or position: name them, for example acceleration.x=2:g');
  const { separator, decimal, firstData: skip } = shape;
  return good({ kind: 'table', separator, decimal, skip, lineEnd, columns });
}

/** Begins to read: the same bytes again from the first one, in any pieces. */
export function logReading(format: LogFormat, sink: LogSink, file: string): LogReading {
  if (format.kind === 'gpx') {
    const gpx = new GpxReader(sink);
    return {
      push: (chunk) => gpx.push(chunk),
      finish: () => gpx.finish(file),
      get zero() {
        return gpx.zero;
      },
      isDated: true,
    };
  }
  const table = new TableReader(format, sink);
  let isFirst = true;
  return {
    push(chunk) {
      // The mark before UTF-8 stands in the header, which is skipped, or before the first number.
      const from = isFirst ? markLength(chunk) : 0;
      if (chunk.length > 0) isFirst = false;
      table.push(from > 0 ? chunk.subarray(from) : chunk);
    },
    finish: () => good(table.finish()),
    get zero() {
      return table.zero;
    },
    get isDated() {
      // A count of more than nine digits of seconds is one since 1970.
      return table.isDated || (table.zero !== null && table.zero > 3e8 && table.zero < 5e9);
    },
  };
}
