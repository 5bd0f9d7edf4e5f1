import type { LogColumn, StreamKind } from '../../src/traillog/channels.ts';
import type { ColumnFix } from '../../src/traillog/column-guess.ts';
import { type LogFormat, logReading, openLog } from '../../src/traillog/open-log.ts';
import { must } from '../rigfile/smallest-rig.ts';

export const bytesOf = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'utf8'));

export interface ReadStream {
  readonly time: number[];
  readonly columns: number[][];
  readonly lines: number[];
}

/** A whole log read in pieces of some size. */
export function readAll(bytes: Uint8Array | string, fixes: readonly ColumnFix[] = [], piece = 7919) {
  const all = typeof bytes === 'string' ? bytesOf(bytes) : bytes;
  const format: LogFormat = must(openLog(all.subarray(0, 65_536), { file: 'log', fixes }));
  const streams = new Map<StreamKind, ReadStream>();
  const reading = logReading(
    format,
    {
      take({ stream, rows, time, columns, lines }) {
        const into = streams.get(stream) ?? { time: [], columns: columns.map(() => []), lines: [] };
        streams.set(stream, into);
        for (let k = 0; k < rows; k += 1) {
          into.time.push(time[k]);
          into.lines.push(lines[k]);
          for (const [c, column] of columns.entries()) into.columns[c].push(column[k]);
        }
      },
    },
    'log',
  );
  for (let at = 0; at < all.length; at += piece) reading.push(all.slice(at, at + piece));
  const report = must(reading.finish());
  return { format, streams, report, zero: reading.zero, isDated: reading.isDated };
}

export function rolesOf(format: LogFormat): string[] {
  if (format.kind !== 'table') throw new Error('no table');
  return format.columns.map(({ role, unit }: LogColumn) => (unit === '' ? role : `${role} ${unit}`));
}
