/** What a file is, by its first bytes. */
export type FileKind =
  | { readonly kind: 'text' }
  | { readonly kind: 'gpx' }
  | { readonly kind: 'empty' }
  | { readonly kind: 'foreign'; readonly what: string };

const SIGNATURES: readonly (readonly [what: string, at: number, bytes: readonly number[]])[] = [
  ['a JPEG photo', 0, [0xff, 0xd8, 0xff]],
  ['a PNG picture', 0, [0x89, 0x50, 0x4e, 0x47]],
  ['a GIF picture', 0, [0x47, 0x49, 0x46, 0x38]],
  ['a PDF document', 0, [0x25, 0x50, 0x44, 0x46]],
  ['a ZIP archive: unpack it first', 0, [0x50, 0x4b, 0x03, 0x04]],
  ['a gzip archive: unpack it first', 0, [0x1f, 0x8b]],
  ['a film or a photo', 4, [0x66, 0x74, 0x79, 0x70]],
  ['text in UTF-16: save it as UTF-8 first', 0, [0xff, 0xfe]],
  ['text in UTF-16: save it as UTF-8 first', 0, [0xfe, 0xff]],
  ['a database', 0, [0x53, 0x51, 0x4c, 0x69, 0x74, 0x65]],
];

/** Tells a log from what is none: a photo, an archive, bytes that are no text, nothing at all. */
export function fileKind(head: Uint8Array): FileKind {
  for (const [what, at, bytes] of SIGNATURES)
    if (bytes.every((byte, k) => head[at + k] === byte)) return { kind: 'foreign', what };
  if (head.includes(0)) return { kind: 'foreign', what: 'bytes of value zero, no text' };
  let at = 0;
  while (at < head.length && (head[at] <= 32 || [0xef, 0xbb, 0xbf].includes(head[at]))) at += 1;
  if (at === head.length) return { kind: 'empty' };
  if (head[at] !== '<'.charCodeAt(0)) return { kind: 'text' };
  let start = '';
  for (let k = at; k < Math.min(head.length, at + 4096); k += 1) start += String.fromCharCode(head[k]);
  return /<gpx[\s>]/i.test(start) ? { kind: 'gpx' } : { kind: 'foreign', what: 'markup that is not GPX' };
}
