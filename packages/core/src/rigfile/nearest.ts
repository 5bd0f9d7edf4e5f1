/**
 * The known word nearest to a misspelt one, or null when none is near: at most a third of its letters wrong
 * (Levenshtein distance, capitals ignored).
 */
export function nearest(word: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let bestDistance = Math.max(1, Math.floor(Math.min(word.length, 30) / 3)) + 1;
  for (const candidate of known) {
    const distance = editDistance(word.slice(0, 30).toLowerCase(), candidate.toLowerCase());
    if (distance < bestDistance) [best, bestDistance] = [candidate, distance];
  }
  return best;
}

/** Known words in a list for a message, the nearest first. */
export function knownFor(word: string, known: readonly string[]): string {
  const first = nearest(word, known);
  return first === null ? known.join(', ') : [first, ...known.filter((name) => name !== first)].join(', ');
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(swap, previous[j]! + 1, row[j - 1]! + 1));
    }
    previous = row;
  }
  return previous[b.length]!;
}
