/** A reversible change of a text: at one place, some characters give way to others. */
export interface TextChange {
  readonly at: number;
  readonly removed: string;
  readonly inserted: string;
}

/** The smallest single splice that makes `after` out of `before`. Never cuts a surrogate pair in two. */
export function changeBetween(before: string, after: string): TextChange {
  const shorter = Math.min(before.length, after.length);
  let at = 0;
  while (at < shorter && before.charCodeAt(at) === after.charCodeAt(at)) at += 1;
  if (at > 0 && isHighSurrogate(before.charCodeAt(at - 1))) at -= 1;
  let tail = 0;
  while (
    tail < shorter - at &&
    before.charCodeAt(before.length - 1 - tail) === after.charCodeAt(after.length - 1 - tail)
  )
    tail += 1;
  if (tail > 0 && isLowSurrogate(before.charCodeAt(before.length - tail))) tail -= 1;
  return {
    at,
    removed: before.slice(at, before.length - tail),
    inserted: after.slice(at, after.length - tail),
  };
}

export function applyChange(text: string, change: TextChange): string {
  return text.slice(0, change.at) + change.inserted + text.slice(change.at + change.removed.length);
}

export function revertChange(text: string, change: TextChange): string {
  return text.slice(0, change.at) + change.removed + text.slice(change.at + change.inserted.length);
}

const isHighSurrogate = (unit: number): boolean => unit >= 0xd800 && unit <= 0xdbff;
const isLowSurrogate = (unit: number): boolean => unit >= 0xdc00 && unit <= 0xdfff;
