import { isNothing, numberOf } from './cells.ts';
import {
  type LogColumn,
  type LogSink,
  type ReadingReport,
  STREAM_KINDS,
  type StreamKind,
} from './channels.ts';
import { PlaceCount } from './places.ts';
import { type StreamSource, sourcesOf } from './stream-buffer.ts';
import { readTime } from './time-text.ts';
import { textOf } from './utf8.ts';

/** How the bytes of a table are to be read. */
export interface TableFormat {
  readonly separator: string;
  readonly decimal: '.' | ',';
  /** Lines before the first line of data. */
  readonly skip: number;
  /** Byte that ends a line: 10, or 13 where nothing else does. */
  readonly lineEnd: 10 | 13;
  readonly columns: readonly LogColumn[];
}

const SPACE = 32;
const QUOTE = 34;
const PLUS = 43;
const MINUS = 45;
const ZERO = 48;
const RETURN = 13;
/** With so many digits, and powers of ten up to 22, quotient and product of two doubles are the nearest double. */
const EXACT_DIGITS = 15;
const EXACT_POWER = 22;
const POWERS = Float64Array.from({ length: EXACT_POWER + 1 }, (_, k) => Number(`1e${k}`));

/**
 * Reads a table of numbers from bytes as they come: a scanner for plain numbers, and for a cell that is none of these
 * its text. Holds one line and one block of rows a stream, whatever the length of the file.
 *
 * @invariant a number is the double nearest to its digits; every line is either read, empty, or counted
 */
export class TableReader {
  /** What the clock of the file said first [s], in its own count; null before the first row. */
  zero: number | null = null;
  /** A calendar is behind the times, not only a clock. */
  isDated = false;
  readonly #format: TableFormat;
  readonly #sources: readonly StreamSource[];
  readonly #wanted: Uint8Array;
  readonly #row: Float64Array;
  readonly #time: number;
  readonly #timeScale: number;
  readonly #separator: number;
  readonly #decimal: number;
  /** Cells up to the last one that is wanted. */
  readonly #width: number;
  readonly #texts = new PlaceCount();
  readonly #torn = new PlaceCount();
  readonly #timeless = new PlaceCount();
  #rest: Uint8Array = new Uint8Array(0);
  #line = 0;
  #bytes = 0;
  /** Raw time of the first row: kept apart, so that large counts lose no digits. */
  #first = Number.NaN;

  constructor(format: TableFormat, sink: LogSink) {
    this.#format = format;
    const { columns } = format;
    this.#sources = sourcesOf(columns, sink);
    this.#wanted = Uint8Array.from(columns, ({ role }) => (role === 'ignored' ? 0 : 1));
    this.#row = new Float64Array(columns.length);
    this.#time = columns.findIndex(({ role }) => role === 'time');
    this.#timeScale = columns[this.#time]?.scale ?? 1;
    this.#separator = format.separator.charCodeAt(0);
    this.#decimal = format.decimal.charCodeAt(0);
    this.#width = this.#wanted.lastIndexOf(1) + 1;
  }

  push(chunk: Uint8Array): void {
    this.#bytes += chunk.length;
    let bytes = chunk;
    if (this.#rest.length > 0) {
      bytes = new Uint8Array(this.#rest.length + chunk.length);
      bytes.set(this.#rest);
      bytes.set(chunk, this.#rest.length);
    }
    let from = 0;
    for (
      let end = bytes.indexOf(this.#format.lineEnd);
      end >= 0;
      end = bytes.indexOf(this.#format.lineEnd, from)
    ) {
      this.#takeLine(bytes, from, end);
      from = end + 1;
    }
    // Copied: whoever reads the file may write over its buffer.
    this.#rest = bytes.slice(from);
  }

  finish(): ReadingReport {
    if (this.#rest.length > 0) this.#takeLine(this.#rest, 0, this.#rest.length);
    this.#rest = new Uint8Array(0);
    for (const { buffer } of this.#sources) buffer.flush();
    const rows = Object.fromEntries(
      STREAM_KINDS.map((kind) => [
        kind,
        this.#sources.find(({ buffer }) => buffer.stream === kind)?.buffer.rows ?? 0,
      ]),
    ) as Record<StreamKind, number>;
    return {
      lines: this.#line,
      bytes: this.#bytes,
      texts: this.#texts.counted,
      torn: this.#torn.counted,
      timeless: this.#timeless.counted,
      rows,
    };
  }

  #takeLine(bytes: Uint8Array, from: number, lineEnd: number): void {
    this.#line += 1;
    if (this.#line <= this.#format.skip) return;
    const end = lineEnd > from && bytes[lineEnd - 1] === RETURN ? lineEnd - 1 : lineEnd;
    let blank = from;
    while (blank < end && (bytes[blank] <= SPACE || bytes[blank] === this.#separator)) blank += 1;
    if (blank === end) return;
    const cells = this.#readCells(bytes, this.#separator === SPACE ? blank : from, end);
    if (cells < this.#width) {
      this.#torn.add(this.#line, 0, textOf(bytes, from, Math.min(end, from + 60)));
      return;
    }
    this.#giveRow();
  }

  /** @returns how many cells there were, up to the last that is wanted */
  #readCells(bytes: Uint8Array, from: number, end: number): number {
    const separator = this.#separator;
    const row = this.#row;
    let at = from;
    for (let column = 0; column < this.#width; column += 1) {
      if (at > end) return column;
      if (this.#wanted[column] === 0) {
        at = this.#cellEnd(bytes, at, end) + 1;
      } else {
        const after = this.#plainNumber(bytes, at, end, column);
        if (after >= 0) at = after + 1;
        else {
          const stop = this.#cellEnd(bytes, at, end);
          row[column] = this.#textCell(textOf(bytes, at, stop), column);
          at = stop + 1;
        }
      }
      if (separator === SPACE) while (at < end && bytes[at] === SPACE) at += 1;
    }
    return this.#width;
  }

  /** @returns place of the separator or end of line behind a plain number, which is then in the row; −1 for anything else */
  #plainNumber(bytes: Uint8Array, from: number, end: number, column: number): number {
    const decimal = this.#decimal;
    const separator = this.#separator;
    let at = from;
    while (at < end && bytes[at] === SPACE) at += 1;
    const sign = bytes[at];
    if (sign === MINUS || sign === PLUS) at += 1;
    let mantissa = 0;
    let digits = 0;
    let power = 0;
    let read = 0;
    for (; at < end; at += 1) {
      const digit = bytes[at] - ZERO;
      if (digit < 0 || digit > 9) break;
      mantissa = 10 * mantissa + digit;
      if (mantissa > 0) digits += 1;
      read += 1;
    }
    if (at < end && bytes[at] === decimal) {
      for (at += 1; at < end; at += 1) {
        const digit = bytes[at] - ZERO;
        if (digit < 0 || digit > 9) break;
        mantissa = 10 * mantissa + digit;
        if (mantissa > 0) digits += 1;
        power += 1;
        read += 1;
      }
    }
    if (read === 0 || digits > EXACT_DIGITS || power > EXACT_POWER) return -1;
    while (at < end && bytes[at] === SPACE && separator !== SPACE) at += 1;
    if (at < end && bytes[at] !== separator) return -1;
    const value = mantissa / POWERS[power];
    this.#row[column] = sign === MINUS ? -value : value;
    return at;
  }

  #cellEnd(bytes: Uint8Array, from: number, end: number): number {
    let isQuoted = false;
    for (let at = from; at < end; at += 1) {
      if (bytes[at] === QUOTE) isQuoted = !isQuoted;
      else if (bytes[at] === this.#separator && !isQuoted) return at;
    }
    return end;
  }

  #textCell(raw: string, column: number): number {
    const cell = raw
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim();
    const number = numberOf(cell, this.#format.decimal);
    if (number !== null) return number;
    if (isNothing(cell)) return Number.NaN;
    const time = column === this.#time ? readTime(cell) : null;
    if (time !== null) {
      this.isDated ||= time.isDate;
      return time.seconds / this.#timeScale;
    }
    this.#texts.add(this.#line, column + 1, cell);
    return Number.NaN;
  }

  #giveRow(): void {
    const row = this.#row;
    const raw = row[this.#time];
    if (!Number.isFinite(raw)) {
      this.#timeless.add(this.#line, this.#time + 1, '');
      return;
    }
    if (this.zero === null) {
      this.#first = raw;
      this.zero = raw * this.#timeScale;
    }
    const time = (raw - this.#first) * this.#timeScale;
    for (const { buffer, from, scale, needed } of this.#sources) {
      let isThere = true;
      for (let k = 0; k < needed.length; k += 1) if (!Number.isFinite(row[needed[k]])) isThere = false;
      if (!isThere) continue;
      buffer.add(time, this.#line);
      for (let k = 0; k < from.length; k += 1)
        buffer.put(k, from[k] < 0 ? Number.NaN : row[from[k]] * scale[k]);
    }
  }
}
