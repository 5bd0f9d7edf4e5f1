import { type Document, isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { Problem, Where } from '../finding/problem.ts';

/** A rig file is some hundred lines; anything much longer was never written by a person with a tape. */
export const MAX_RIG_CHARACTERS = 400_000;
const MAX_DEPTH = 16;

/** What YAML can say after aliases, anchors, tags and duplicate keys were refused; empty values are left out. */
export type Plain = string | number | boolean | readonly Plain[] | { readonly [key: string]: Plain };

/** The file as text, as tree with comments, and as plain values that know where they stand. */
export interface RigDocument {
  readonly text: string;
  readonly tree: Document.Parsed;
  readonly plain: Plain;
  /** Scalar text exactly as typed, by dotted path. */
  readonly typed: ReadonlyMap<string, string>;
  /** 1-based line of each key, by dotted path. */
  readonly lines: ReadonlyMap<string, number>;
  /** Paths whose value was not read at all, because an alias stands there. */
  readonly refused: ReadonlySet<string>;
}

export interface OpenedDocument {
  readonly document: RigDocument | null;
  readonly problems: readonly Problem[];
}

/**
 * Opens YAML 1.2 text. Comments stay in the tree.
 *
 * @failure `file-too-large`, `file-not-text`, `file-not-yaml` (also for an empty file), `file-alias-refused`,
 * `file-duplicate-key`, `rig-wrong-shape`. The document is null only when nothing can be made of the text.
 */
export function openDocument(text: string): OpenedDocument {
  const refuse = (code: Problem['code'], found: string, accepted: string, line?: number): OpenedDocument => ({
    document: null,
    problems: [{ code, where: line ? { line } : {}, found, accepted }],
  });
  if (text.length > MAX_RIG_CHARACTERS) {
    return refuse('file-too-large', `${text.length} characters`, `at most ${MAX_RIG_CHARACTERS} characters`);
  }
  if (/[\0\uFFFD]/.test(text)) return refuse('file-not-text', 'bytes that are not UTF-8 text', 'UTF-8 text');
  const lineCounter = new LineCounter();
  let tree: Document.Parsed;
  try {
    tree = parseDocument(text, {
      version: '1.2',
      lineCounter,
      uniqueKeys: false,
      prettyErrors: false,
      logLevel: 'error',
    });
  } catch {
    // The parser recurses: thousands of nested brackets end its stack.
    return refuse('file-not-yaml', 'brackets nested too deep', `${MAX_DEPTH} levels`);
  }
  const syntax = tree.errors[0];
  if (syntax) {
    const { line } = lineCounter.linePos(syntax.pos[0]);
    const deep = /call stack|depth/i.test(syntax.message);
    if (deep) return refuse('file-not-yaml', 'brackets nested too deep', `${MAX_DEPTH} levels`, line);
    return refuse('file-not-yaml', lineAt(text, line), firstSentence(syntax.message), line);
  }
  if (tree.contents === null)
    return refuse('file-not-yaml', 'an empty file', 'a rig file, beginning with schema: 1');
  if (!isMap(tree.contents)) {
    return refuse('file-not-yaml', lineAt(text, 1), 'keys with values, beginning with schema: 1', 1);
  }
  const reader = new TreeReader(text, lineCounter);
  const plain = reader.read(tree.contents, [], 0) ?? {};
  const { typed, lines, refused, problems } = reader;
  return { document: { text, tree, plain, typed, lines, refused }, problems };
}

/** Place of a dotted path: its own line, or that of the nearest key above it which exists. */
export function whereOf(document: RigDocument, key: string): Where {
  const line = lineOf(document, key);
  return line ? { line, key } : { key };
}

function lineOf(document: RigDocument, key: string): number | undefined {
  for (let path = key; path !== ''; path = path.slice(0, Math.max(0, path.lastIndexOf('.')))) {
    const line = document.lines.get(path);
    if (line !== undefined) return line;
  }
  return undefined;
}

/** One walk over the tree; collects what stands where and what is refused. */
class TreeReader {
  readonly typed = new Map<string, string>();
  readonly lines = new Map<string, number>();
  readonly refused = new Set<string>();
  readonly problems: Problem[] = [];
  private aliasSeen = false;

  constructor(
    private readonly text: string,
    private readonly lineCounter: LineCounter,
  ) {}

  read(node: unknown, path: readonly string[], depth: number): Plain | undefined {
    const key = path.join('.');
    if (isAlias(node) || (isMap(node) || isSeq(node) || isScalar(node) ? node.anchor : undefined)) {
      this.refuseAlias(node as { range?: readonly number[] | null }, key);
      return undefined;
    }
    if (depth > MAX_DEPTH) {
      this.problem(
        'rig-wrong-shape',
        this.lines.get(key),
        key,
        'keys nested too deep',
        `${MAX_DEPTH} levels`,
      );
      return undefined;
    }
    if (isMap(node)) return this.readMap(node.items, path, depth);
    if (isSeq(node)) return this.readSeq(node.items, path, depth);
    if (!isScalar(node) || node.value === null || node.value === undefined) return undefined;
    this.typed.set(key, String(node.source ?? node.value).trim());
    const { value } = node;
    return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
      ? value
      : String(node.source);
  }

  private readMap(
    items: readonly { key: unknown; value: unknown }[],
    path: readonly string[],
    depth: number,
  ): Plain {
    const entries: [string, Plain][] = [];
    const seen = new Map<string, number>();
    const twice = new Set<string>();
    for (const pair of items) {
      if (!isScalar(pair.key)) {
        if (isAlias(pair.key)) this.refuseAlias(pair.key, path.join('.'));
        continue;
      }
      const name = String(pair.key.source ?? pair.key.value);
      const here = [...path, name];
      const key = here.join('.');
      const line = this.lineOfNode(pair.key);
      const first = seen.get(name);
      if (first !== undefined) {
        if (twice.has(name)) continue;
        twice.add(name);
        this.problem(
          'file-duplicate-key',
          line,
          key,
          `${name} again`,
          `once: it stands already in line ${first}`,
        );
        continue;
      }
      seen.set(name, line);
      this.lines.set(key, line);
      const value = this.read(pair.value, here, depth + 1);
      if (value !== undefined) entries.push([name, value]);
    }
    return Object.fromEntries(entries);
  }

  private readSeq(items: readonly unknown[], path: readonly string[], depth: number): Plain {
    return items.map((item, index) => {
      const here = [...path, String(index)];
      this.lines.set(here.join('.'), this.lineOfNode(item));
      return this.read(item, here, depth + 1) ?? '';
    });
  }

  private refuseAlias(node: { range?: readonly number[] | null }, key: string): void {
    this.refused.add(key);
    // One is enough: a file full of them has one fault, not thousands.
    if (this.aliasSeen) return;
    this.aliasSeen = true;
    const line = this.lineOfNode(node);
    this.problem('file-alias-refused', line, key, lineAt(this.text, line), 'every value written out');
  }

  private lineOfNode(node: unknown): number {
    const range = (node as { range?: readonly number[] | null } | null)?.range;
    return this.lineCounter.linePos(range?.[0] ?? 0).line;
  }

  private problem(
    code: Problem['code'],
    line: number | undefined,
    key: string,
    found: string,
    accepted: string,
  ) {
    const where = line ? { line, key } : { key };
    this.problems.push({ code, where, found: shorten(found), accepted });
  }
}

/** A line of the text, short enough to be quoted in a message. */
const lineAt = (text: string, line: number): string =>
  shorten((text.split('\n', line)[line - 1] ?? '').trim());

export const shorten = (found: string): string => (found.length > 60 ? `${found.slice(0, 57)}…` : found);

const firstSentence = (message: string): string => message.split('\n')[0] ?? message;
