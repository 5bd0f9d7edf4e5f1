/** Objectives of a candidate as they are compared, smaller is better. */
export type Point = readonly number[];

/** Nowhere worse and somewhere better. */
export function beats(a: Point, b: Point): boolean {
  let isBetter = false;
  for (let k = 0; k < a.length; k += 1) {
    if (a[k] > b[k]) return false;
    if (a[k] < b[k]) isBetter = true;
  }
  return isBetter;
}

/** Nowhere worse, perhaps alike. */
export function isNowhereWorse(a: Point, b: Point): boolean {
  for (let k = 0; k < a.length; k += 1) if (a[k] > b[k]) return false;
  return true;
}

export function isAlike(a: Point, b: Point): boolean {
  for (let k = 0; k < a.length; k += 1) if (a[k] !== b[k]) return false;
  return true;
}
