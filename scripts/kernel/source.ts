import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import ts from 'typescript';
import { inLanes } from './lanes.ts';

/**
 * One AssemblyScript source out of the TypeScript of the ride kernel: the functions and numbers that an entry reaches,
 * word for word, from whatever files they stand in. Nothing else of those files has to be AssemblyScript. Types are left
 * out: the prelude says what `Memory`, `whole` and `i32` are there.
 */
export function kernelSource(
  entry: string,
  name: string,
  given: ReadonlySet<string>,
  givenPairs: ReadonlySet<string>,
  prelude: string,
): string {
  const reached = new Map<string, { readonly text: string; readonly space: string | null }>();
  const underWay = new Set<ts.Node>();
  const reach = (file: FileParts, wanted: string, space: string | null): void => {
    if (given.has(wanted)) return;
    const part = file.parts.get(wanted);
    if (!part) throw new Error(`kernel: ${wanted} is not a function or a number of ${file.path}`);
    const before = reached.get(wanted);
    const lanes = inLanes(part, { given: givenPairs, find: (called) => functionSeenFrom(file, called) });
    for (const [pair, text] of lanes?.pairs ?? []) reached.set(`${pair}Pair`, { text, space: null });
    const plain = atOnce(writtenOut((lanes?.text ?? part.getText(file.source)).replace(/^export /, '')));
    const text = isInlined(part) ? `@inline ${plain}` : plain;
    if (before) {
      if (before.text !== text)
        throw new Error(`kernel: two things are called ${wanted}; one is in ${file.path}`);
      return;
    }
    if (underWay.has(part)) return;
    underWay.add(part);
    const visit = (node: ts.Node): void => {
      if (ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)) {
        const from = file.spaces.get(node.expression.text);
        if (from) {
          reach(partsOf(from), node.name.text, node.expression.text);
          return;
        }
      }
      if (ts.isTypeNode(node)) return;
      if (ts.isIdentifier(node) && node.text !== wanted) {
        const from = file.names.get(node.text);
        if (from) reach(partsOf(from), node.text, null);
        else if (file.parts.has(node.text)) reach(file, node.text, space);
      }
      ts.forEachChild(node, visit);
    };
    visit(part);
    // What it leans on stands before it.
    reached.set(wanted, { text, space });
  };
  reach(partsOf(entry), name, null);
  // Places that only the prelude knows.
  const places = partsOf(entry).spaces.get('at');
  for (const [, place] of prelude.matchAll(/\bat\.([A-Z_]+)/g))
    if (places && place) reach(partsOf(places), place, 'at');
  const plain = [...reached.values()].filter(({ space }) => space === null).map(({ text }) => text);
  const spaces = new Set([...reached.values()].flatMap(({ space }) => (space === null ? [] : [space])));
  const inSpace = (of: string): string => {
    const parts = [...reached.values()].filter(({ space }) => space === of).map(({ text }) => text);
    return `namespace ${of} {\n${parts.map((text) => `export ${text}`).join('\n')}\n}`;
  };
  return [...[...spaces].map(inSpace), ...plain].join('\n');
}

/** A function by the name under which a file knows it. */
function functionSeenFrom(file: FileParts, name: string): ts.FunctionDeclaration | null {
  const from = file.names.get(name);
  const part = (from ? partsOf(from) : file).parts.get(name);
  return part && ts.isFunctionDeclaration(part) ? part : null;
}

const isInlined = (part: ts.Node): boolean =>
  ts.getJSDocTags(part).some(({ tagName }) => tagName.text === 'inline');

/** Loops over the two ends, as they begin. */
const OVER_TWO = /for \(let (\w+): i32 = 0; \1 < 2; \1 \+= 1\) \{/;

/** Writes loops over two out, so that places in the memory become constants; what they do stays the same. */
function writtenOut(text: string): string {
  const head = OVER_TWO.exec(text);
  if (!head) return text;
  const begin = head.index + head[0].length;
  let end = begin;
  for (let depth = 1; depth > 0; end += 1) depth += { '{': 1, '}': -1 }[text[end]] ?? 0;
  const body = text.slice(begin, end - 1);
  const once = (k: number): string => `{\n    const ${head[1]}: i32 = ${k};${body}}\n`;
  return writtenOut(text.slice(0, head.index) + once(0) + once(1) + text.slice(end));
}

/** Places that are a constant beyond another: the constant goes into the load or the store itself. */
function atOnce(text: string): string {
  return text
    .replace(/\bm\[(\w+) \+ (at\.[A-Z_]+)\] = ([^;]+);/g, 'store<f64>(addressOf(m, $1), $3, $2 << 3);')
    .replace(/\bm\[(\w+) \+ (at\.[A-Z_]+)\](?! [+-]?=[^=])/g, 'load<f64>(addressOf(m, $1), $2 << 3)');
}

interface FileParts {
  readonly path: string;
  readonly source: ts.SourceFile;
  /** Functions and constants at the top of the file. */
  readonly parts: ReadonlyMap<string, ts.Node>;
  /** Imported names, and imported name spaces, with the file they come from. */
  readonly names: ReadonlyMap<string, string>;
  readonly spaces: ReadonlyMap<string, string>;
}

const read = new Map<string, FileParts>();

function partsOf(path: string): FileParts {
  const before = read.get(path);
  if (before) return before;
  const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2023, true);
  const parts = new Map<string, ts.Node>();
  const names = new Map<string, string>();
  const spaces = new Map<string, string>();
  for (const statement of source.statements) {
    if (ts.isFunctionDeclaration(statement) && statement.name) parts.set(statement.name.text, statement);
    if (ts.isVariableStatement(statement)) {
      for (const { name } of statement.declarationList.declarations) {
        if (ts.isIdentifier(name)) parts.set(name.text, statement);
      }
    }
    if (ts.isImportDeclaration(statement) && ts.isStringLiteral(statement.moduleSpecifier)) {
      const from = join(dirname(path), statement.moduleSpecifier.text);
      const bindings = statement.importClause?.namedBindings;
      if (bindings && ts.isNamespaceImport(bindings)) spaces.set(bindings.name.text, from);
      if (bindings && ts.isNamedImports(bindings)) {
        for (const { name, isTypeOnly } of bindings.elements) if (!isTypeOnly) names.set(name.text, from);
      }
    }
  }
  const all = { path, source, parts, names, spaces };
  read.set(path, all);
  return all;
}
