/** Places behind the point of a coordinate in millimetres. */
const PLACES = 5;
const ZERO = 48;

/** Long text of plain numbers and marks, written as bytes at once: strings of such a length would take many times the room. */
export class ByteText {
  private room = new Uint8Array(1 << 20);
  private length = 0;
  private readonly encoder = new Map<string, Uint8Array>();

  /** @param text – short; the same few come again and again */
  put(text: string): void {
    let bytes = this.encoder.get(text);
    if (bytes === undefined) {
      bytes = utf8(text);
      if (this.encoder.size < 64) this.encoder.set(text, bytes);
    }
    this.makeRoom(bytes.length);
    for (let i = 0; i < bytes.length; i += 1) this.room[this.length + i] = bytes[i];
    this.length += bytes.length;
  }

  /** @param value – 0 or more */
  putWhole(value: number): void {
    this.makeRoom(16);
    let [digits, rest] = [1, value];
    while (rest >= 10) {
      rest = Math.floor(rest / 10);
      digits += 1;
    }
    this.digits(value, digits);
  }

  /** @param length – [m] */
  putMillimetres(length: number): void {
    this.makeRoom(24);
    let whole = Math.round(length * 1000 * 10 ** PLACES);
    if (whole < 0) {
      this.room[this.length] = 45;
      this.length += 1;
      whole = -whole;
    }
    const behind = whole % 10 ** PLACES;
    this.putWhole((whole - behind) / 10 ** PLACES);
    if (behind === 0) return;
    this.room[this.length] = 46;
    this.length += 1;
    this.digits(behind, PLACES);
  }

  bytes(): Uint8Array {
    return this.room.subarray(0, this.length);
  }

  private digits(value: number, count: number): void {
    let rest = value;
    for (let i = count - 1; i >= 0; i -= 1) {
      const digit = rest % 10;
      this.room[this.length + i] = ZERO + digit;
      rest = (rest - digit) / 10;
    }
    this.length += count;
  }

  private makeRoom(more: number): void {
    if (this.length + more <= this.room.length) return;
    const wider = new Uint8Array(Math.max(2 * this.room.length, this.length + more));
    wider.set(this.room.subarray(0, this.length));
    this.room = wider;
  }
}

/** No encoder of the platform in a package that names neither browser nor Node. */
function utf8(text: string): Uint8Array {
  const escaped = encodeURIComponent(text);
  const bytes: number[] = [];
  for (let i = 0; i < escaped.length; i += 1) {
    if (escaped[i] === '%') {
      bytes.push(Number.parseInt(escaped.slice(i + 1, i + 3), 16));
      i += 2;
    } else bytes.push(escaped.charCodeAt(i));
  }
  return Uint8Array.from(bytes);
}
