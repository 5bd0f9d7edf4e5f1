import { bad, good, type Result } from '../finding/problem.ts';
import { type LogSink, type ReadingReport, STREAM_KINDS, type StreamKind } from './channels.ts';
import { PlaceCount } from './places.ts';
import { StreamBuffer } from './stream-buffer.ts';
import { readTime } from './time-text.ts';
import { textOf } from './utf8.ts';

/** Longest piece between two `<`: beyond it this is no track of points. */
const LONGEST = 1_000_000;

/**
 * Reads the points of the tracks of a GPX file from bytes as they come: place, height, time, and a speed where an
 * extension has one. Routes, waypoints and everything else are left alone.
 *
 * @failure `log-broken` where an element is not closed or the bytes end within one
 * @source GPX 1.1 schema (topografix.com/GPX/1/1, from memory): `trkpt` with `lat` and `lon` in degrees, `ele` in metres,
 *   `time` as ISO 8601 in UTC. No library: those that stream have been left for years, the others hold the whole file.
 */
export class GpxReader {
  zero: number | null = null;
  readonly isDated = true;
  readonly #buffer: StreamBuffer;
  readonly #texts = new PlaceCount();
  readonly #timeless = new PlaceCount();
  /** Names of the elements that are open. */
  readonly #open: string[] = [];
  #rest: Uint8Array = new Uint8Array(0);
  #line = 1;
  #bytes = 0;
  #point: { latitude: number; longitude: number; line: number; fields: Map<string, string> } | null = null;
  #text = '';
  #broken: string | null = null;
  #isWhole = false;

  constructor(sink: LogSink) {
    this.#buffer = new StreamBuffer('position', sink);
  }

  push(chunk: Uint8Array): void {
    this.#bytes += chunk.length;
    const bytes = new Uint8Array(this.#rest.length + chunk.length);
    bytes.set(this.#rest);
    bytes.set(chunk, this.#rest.length);
    // Up to the last `>`: so neither a tag nor a letter is cut.
    const end = bytes.lastIndexOf(62) + 1;
    if (bytes.length - end > LONGEST) this.#broken ??= 'a stretch of a million bytes without an element';
    this.#rest = bytes.slice(this.#broken === null ? end : bytes.length);
    if (this.#broken === null) this.#rest = this.#takeAll(textOf(bytes, 0, end), this.#rest);
  }

  finish(file: string): Result<ReadingReport> {
    this.#buffer.flush();
    if (this.#broken === null && !this.#isWhole)
      this.#broken = `the file ends inside <${this.#open[this.#open.length - 1] ?? 'gpx'}>`;
    if (this.#broken !== null && this.#buffer.rows === 0)
      return bad({
        code: 'log-broken',
        where: { file, line: this.#line },
        found: this.#broken,
        accepted: 'GPX with closed elements',
      });
    const torn = new PlaceCount();
    if (this.#broken !== null) torn.add(this.#line, 0, this.#broken);
    const rows = Object.fromEntries(
      STREAM_KINDS.map((kind) => [kind, kind === 'position' ? this.#buffer.rows : 0]),
    );
    return good({
      lines: this.#line,
      bytes: this.#bytes,
      texts: this.#texts.counted,
      torn: torn.counted,
      timeless: this.#timeless.counted,
      rows: rows as Record<StreamKind, number>,
    });
  }

  /** Goes through whole pieces; what begins and does not end (a comment with `>` in it) goes back before the rest. */
  #takeAll(text: string, rest: Uint8Array): Uint8Array {
    let at = 0;
    while (at < text.length && this.#broken === null) {
      const open = text.indexOf('<', at);
      if (open < 0) break;
      this.#text += text.slice(at, open);
      const [start, stop] = text.startsWith('<!--', open)
        ? ['<!--', '-->']
        : text.startsWith('<![CDATA[', open)
          ? ['<![CDATA[', ']]>']
          : ['<', '>'];
      const close = text.indexOf(stop, open + start.length);
      this.#countLines(text, at, open);
      if (close < 0) {
        return joined(text.slice(open), rest);
      }
      if (start === '<') this.#tag(text.slice(open + 1, close));
      else if (start === '<![CDATA[') this.#text += text.slice(open + start.length, close);
      this.#countLines(text, open, close);
      at = close + stop.length;
    }
    return rest;
  }

  #countLines(text: string, from: number, to: number): void {
    for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1))
      this.#line += 1;
  }

  #tag(inside: string): void {
    if (inside.startsWith('?') || inside.startsWith('!')) return;
    const isEnd = inside.startsWith('/');
    const isWhole = inside.endsWith('/');
    const name = /^\/?\s*([^\s/>]+)/.exec(inside)?.[1] ?? '';
    const local = name.slice(name.indexOf(':') + 1);
    if (isEnd) {
      const open = this.#open.pop();
      if (open !== name) this.#broken = `</${name}> where </${open ?? '…'}> belongs`;
      else this.#close(local);
      if (this.#open.length === 0) this.#isWhole = true;
      return;
    }
    if (local === 'trkpt')
      this.#point = {
        latitude: attribute(inside, 'lat'),
        longitude: attribute(inside, 'lon'),
        line: this.#line,
        fields: new Map(),
      };
    this.#text = '';
    if (isWhole) this.#close(local);
    else this.#open.push(name);
  }

  #close(local: string): void {
    const point = this.#point;
    if (point === null) return;
    if (local !== 'trkpt') {
      if (!point.fields.has(local)) point.fields.set(local, this.#text.trim());
      return;
    }
    this.#point = null;
    const { latitude, longitude, line, fields } = point;
    const time = readTime(fields.get('time') ?? '');
    if (time === null || !time.isDate) {
      this.#timeless.add(line, 0, fields.get('time') ?? '');
      return;
    }
    if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
      this.#texts.add(line, 0, `lat ${latitude}, lon ${longitude}`);
      return;
    }
    this.zero ??= time.seconds;
    this.#buffer.add(time.seconds - this.zero, line);
    const number = (field: string) => (fields.get(field) ? Number(fields.get(field)) : Number.NaN);
    const values = [
      latitude,
      longitude,
      number('ele'),
      number('speed'),
      (number('course') * Math.PI) / 180,
      Number.NaN,
    ];
    for (const [column, value] of values.entries()) this.#buffer.put(column, value);
  }
}

const attribute = (tag: string, name: string): number => {
  const found = new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(tag)?.[1];
  return found === undefined || found.trim() === '' ? Number.NaN : Number(found);
};

/** Text back to bytes before others: only what stood in the same piece, and only its low letters matter there. */
function joined(text: string, rest: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(text.length + rest.length);
  for (let k = 0; k < text.length; k += 1) bytes[k] = text.charCodeAt(k) < 128 ? text.charCodeAt(k) : 63;
  bytes.set(rest, text.length);
  return bytes;
}
