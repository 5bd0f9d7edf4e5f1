/**
 * Text of bytes: UTF-8, and where a byte does not fit that, the letter that it is in Latin-1. Spreadsheets still write
 * `m/s²` in one byte.
 */
export function textOf(bytes: Uint8Array, from = 0, to = bytes.length): string {
  let text = '';
  for (let i = from; i < to; ) {
    const lead = bytes[i];
    const more = lead < 0x80 ? 0 : lead >= 0xf0 ? 3 : lead >= 0xe0 ? 2 : lead >= 0xc2 ? 1 : -1;
    let code = more <= 0 ? lead : lead & (0x3f >> more);
    let fits = more >= 0 && i + more < to;
    for (let k = 1; fits && k <= more; k += 1) {
      fits = (bytes[i + k] & 0xc0) === 0x80;
      code = (code << 6) | (bytes[i + k] & 0x3f);
    }
    text += String.fromCodePoint(fits && code <= 0x10ffff ? code : lead);
    i += fits ? 1 + more : 1;
  }
  return text;
}

/** Bytes of a mark that some programs put before UTF-8. */
export const markLength = (bytes: Uint8Array): number =>
  bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
