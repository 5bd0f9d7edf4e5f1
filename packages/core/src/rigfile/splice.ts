import { isCollection, isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml';

/** What a splice of the text needs to know of a pair or an item: where it begins and ends, comments left out. */

type Ranged = { readonly range?: readonly [number, number, number] | null };

const rangeOf = (node: unknown): readonly [number, number, number] => (node as Ranged).range ?? [0, 0, 0];

export const startOf = (node: unknown): number => rangeOf(node)[0];

/** Scalar that stands for nothing: `gap:` or `gap: null`. */
export const isNothing = (node: unknown): boolean =>
  node === null || node === undefined || (isScalar(node) && node.value === null);

/** Offset just after the colon of a pair. */
export function afterColon(text: string, pair: Pair): number {
  return text.indexOf(':', rangeOf(pair.key)[1]) + 1;
}

/** Offset just after the last character of a value that is not space, line end or comment. */
export function contentEnd(text: string, node: Node): number {
  if (isCollection(node) && !node.flow && node.items.length > 0) {
    const last = node.items.at(-1) as Pair | Node;
    return isMap(node) ? pairEnd(text, last as Pair) : contentEnd(text, last as Node);
  }
  const [start, end] = rangeOf(node);
  // A block scalar ends with its line.
  return start + text.slice(start, end).trimEnd().length;
}

export function pairEnd(text: string, pair: Pair): number {
  const nothing = pair.value === null || rangeOf(pair.value)[0] === rangeOf(pair.value)[1];
  return nothing ? afterColon(text, pair) : contentEnd(text, pair.value as Node);
}

/** Offset of the end of the line that holds an offset, its line break left out. */
export function lineEnd(text: string, offset: number): number {
  const newline = text.indexOf('\n', offset);
  const end = newline < 0 ? text.length : newline;
  return text[end - 1] === '\r' && end > offset ? end - 1 : end;
}

export const lineStart = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;

/** Spaces before the keys of a block map, which may stand behind the dash of a list. */
export const indentOf = (text: string, node: unknown): string =>
  ' '.repeat(startOf(node) - lineStart(text, startOf(node)));

/** A scalar as it must be written to be read back the same: plain where that works, else in double quotes. */
export function scalarText(typed: string, inFlow: boolean): string {
  const source = inFlow ? `{ k: [${typed}] }` : `k: ${typed}`;
  const quoted = JSON.stringify(typed);
  if (typed === '' || /[\r\n]|^[>|&*!%@`]/.test(typed)) return quoted;
  const tree = parseDocument(source, { version: '1.2', logLevel: 'silent' });
  if (tree.errors.length > 0 || tree.comment || !isMap(tree.contents)) return quoted;
  let node: unknown = tree.get('k', true);
  if (inFlow && isSeq(node)) node = node.items.length === 1 ? node.items[0] : null;
  if (!isScalar(node) || node.type !== 'PLAIN' || node.comment) return quoted;
  const kept = node.source === typed && (typeof node.value === 'string' || typeof node.value === 'number');
  return kept ? typed : quoted;
}
