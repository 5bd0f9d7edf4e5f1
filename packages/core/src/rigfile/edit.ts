import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { openDocument, type RigDocument, whereOf } from './document.ts';
import { versionProblem } from './migrate/version.ts';
import {
  afterColon,
  contentEnd,
  indentOf,
  isNothing,
  lineEnd,
  lineStart,
  pairEnd,
  scalarText,
  startOf,
} from './splice.ts';

/** What stands at a key becomes this text; null takes the key away. */
export interface RigFileEdit {
  readonly path: readonly string[];
  readonly text: string | null;
}

/**
 * Puts typed texts into a rig file by splicing its text: every other character stays, comments and blank lines
 * included. Missing keys above are made. An item of a list is named by its number.
 *
 * @invariant an edit that says what stands there already changes nothing
 * @failure `rig-wrong-shape` when the way leads through a plain value; problems of the file as it stands, because
 * what cannot be read must not be rewritten
 */
export function editRig(text: string, edits: readonly RigFileEdit[]): Result<string> {
  let edited = text;
  for (const edit of edits) {
    const { document, problems } = openDocument(edited);
    if (!document || problems.length > 0) return bad(...problems);
    const version = versionProblem(document);
    if (version) return bad(version);
    const outcome = editOne(document, edit);
    if (!outcome.ok) return outcome;
    edited = outcome.value;
  }
  return good(edited);
}

function editOne(document: RigDocument, { path, text: typed }: RigFileEdit): Result<string> {
  const { text, tree } = document;
  if (typed !== null && document.typed.get(path.join('.')) === typed.trim()) return good(text);
  let holder: Node = tree.contents as Node;
  let owner: Pair | null = null;
  for (let depth = 0; depth < path.length; depth++) {
    const step = path[depth]!;
    const rest = path.slice(depth + 1);
    const child = childOf(holder, step);
    if (child === null) {
      if (typed === null) return good(text);
      const added = addTo(text, holder, step, rest, typed.trim());
      return added === null ? bad(wrongWay(document, path, depth)) : good(added);
    }
    const nothing = isNothing(child.value);
    if (typed === null && nothing) return good(text);
    if (rest.length === 0) {
      return good(
        typed === null
          ? removed(text, holder as YAMLMap | YAMLSeq, child, owner)
          : replaced(text, child, typed.trim(), isFlow(holder)),
      );
    }
    if (typed !== null && nothing) {
      return child.pair
        ? good(filled(text, child.pair, rest, typed.trim(), indentOf(text, child.pair.key), isFlow(holder)))
        : bad(wrongWay(document, path, depth));
    }
    owner = child.pair;
    holder = child.value as Node;
  }
  return bad(wrongWay(document, path, 0));
}

/** A pair of a map or an item of a list. */
interface Child {
  readonly pair: Pair | null;
  readonly value: unknown;
}

function childOf(holder: Node, step: string): Child | null {
  if (isMap(holder)) {
    const pair = holder.items.find(({ key }) => isScalar(key) && String(key.source ?? key.value) === step);
    return pair ? { pair, value: pair.value } : null;
  }
  if (isSeq(holder) && /^\d+$/.test(step) && Number(step) < holder.items.length) {
    return { pair: null, value: holder.items[Number(step)] };
  }
  return null;
}

const isFlow = (node: Node): boolean => (isMap(node) || isSeq(node)) && node.flow === true;

const splice = (text: string, from: number, to: number, by: string): string =>
  text.slice(0, from) + by + text.slice(to);

const newlineOf = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

function replaced(text: string, child: Child, typed: string, inFlow: boolean): string {
  const scalar = scalarText(typed, inFlow);
  const { pair, value } = child;
  if (pair && isNothing(value) && startOf(value) === contentEnd(text, value as Node)) {
    const colon = afterColon(text, pair);
    return splice(text, colon, colon, ` ${scalar}`);
  }
  return splice(text, startOf(value), contentEnd(text, value as Node), scalar);
}

/** Gives a key without value what belongs below it. */
function filled(
  text: string,
  pair: Pair,
  rest: readonly string[],
  typed: string,
  indent: string,
  inFlow: boolean,
): string {
  const colon = afterColon(text, pair);
  const bare = splice(text, colon, pairEnd(text, pair), '');
  if (inFlow) return splice(bare, colon, colon, ` ${flowText(rest, typed)}`);
  const end = lineEnd(bare, colon);
  return splice(bare, end, end, newlineOf(text) + blockText(rest, typed, `${indent}  `, newlineOf(text)));
}

/** Adds a key to a map or an item to the end of a list; null when the holder is neither. */
function addTo(
  text: string,
  holder: Node,
  step: string,
  rest: readonly string[],
  typed: string,
): string | null {
  if (isFlow(holder)) return addToFlow(text, holder as YAMLMap | YAMLSeq, step, rest, typed);
  const newline = newlineOf(text);
  if (isMap(holder)) {
    const end = lineEnd(text, contentEnd(text, holder));
    const first = holder.items[0];
    const indent = first ? indentOf(text, first.key) : '';
    return splice(text, end, end, newline + blockText([step, ...rest], typed, indent, newline));
  }
  if (!isSeq(holder) || step !== String(holder.items.length)) return null;
  const end = lineEnd(text, contentEnd(text, holder));
  const dash = indentOf(text, holder);
  const item = rest.length === 0 ? scalarText(typed, false) : flowText(rest, typed);
  return splice(text, end, end, `${newline}${dash}- ${item}`);
}

function addToFlow(
  text: string,
  holder: YAMLMap | YAMLSeq,
  step: string,
  rest: readonly string[],
  typed: string,
): string | null {
  if (isSeq(holder) && step !== String(holder.items.length)) return null;
  const value = rest.length === 0 ? scalarText(typed, true) : flowText(rest, typed);
  const entry = isMap(holder) ? `${scalarText(step, true)}: ${value}` : value;
  const close = contentEnd(text, holder) - 1;
  const last = holder.items.at(-1);
  if (!last) return splice(text, startOf(holder), close + 1, isMap(holder) ? `{ ${entry} }` : `[${entry}]`);
  const end = isMap(holder) ? pairEnd(text, last as Pair) : contentEnd(text, last as Node);
  return splice(text, end, end, `, ${entry}`);
}

/** `a: { b: typed }` for what is left of the way. A number opens a list. */
function flowText(path: readonly string[], typed: string): string {
  const [step, ...rest] = path;
  if (step === undefined) return scalarText(typed, true);
  return step === '0'
    ? `[${flowText(rest, typed)}]`
    : `{ ${scalarText(step, true)}: ${flowText(rest, typed)} }`;
}

/** The same in lines of their own. */
function blockText(path: readonly string[], typed: string, indent: string, newline: string): string {
  const [step, ...rest] = path as [string, ...string[]];
  if (step === '0') return `${indent}- ${flowText(rest, typed)}`;
  const key = `${indent}${scalarText(step, false)}:`;
  if (rest.length === 0) return `${key} ${scalarText(typed, false)}`;
  return key + newline + blockText(rest, typed, `${indent}  `, newline);
}

/** Takes a pair or an item away with its own line; a map that becomes empty stays as `{}`. */
function removed(text: string, holder: YAMLMap | YAMLSeq, child: Child, owner: Pair | null): string {
  const index = holder.items.findIndex((item) => item === child.pair || item === child.value);
  if (holder.items.length === 1 && owner) {
    const empty = isMap(holder) ? '{}' : '[]';
    const colon = afterColon(text, owner);
    if (isFlow(holder)) return splice(text, startOf(holder), contentEnd(text, holder), empty);
    const [from, to] = ownLines(text, holder, index);
    const without = splice(text, from, to, '');
    return splice(without, colon, colon, ` ${empty}`);
  }
  if (isFlow(holder)) {
    const [from, to] = spanOf(text, holder, index);
    if (index > 0) return splice(text, spanOf(text, holder, index - 1)[1], to, '');
    const next = holder.items.length > 1 ? spanOf(text, holder, 1)[0] : to;
    return splice(text, from, next, '');
  }
  const [from, to] = ownLines(text, holder, index);
  return splice(text, from, to, '');
}

function spanOf(text: string, holder: YAMLMap | YAMLSeq, index: number): [number, number] {
  const item = holder.items[index] as Pair | Node;
  if (!isMap(holder)) return [startOf(item), contentEnd(text, item as Node)];
  return [startOf((item as Pair).key), pairEnd(text, item as Pair)];
}

/** From the start of the line of a pair or item of a block to the start of the line after it. */
function ownLines(text: string, holder: YAMLMap | YAMLSeq, index: number): [number, number] {
  const [start, end] = spanOf(text, holder, index);
  const newline = text.indexOf('\n', end);
  const from = lineStart(text, start);
  const to = newline < 0 ? text.length : newline + 1;
  const before = text.slice(from, start);
  // The first key of a list item stands behind its dash: the dash stays, and the next key moves up to it.
  if (!/\S/.test(before) || !isMap(holder)) return [from, to];
  const next = holder.items[index + 1];
  return next ? [start, startOf(next.key)] : [start, end];
}

const wrongWay = (document: RigDocument, path: readonly string[], depth: number): Problem => {
  const key = path.slice(0, Math.max(1, depth)).join('.');
  return {
    code: 'rig-wrong-shape',
    where: whereOf(document, key),
    found: document.typed.get(key) ?? '',
    accepted: 'keys with values below it',
  };
};
