import ts from 'typescript';

/**
 * Takes the two sides of an axle at once: a loop over sides becomes straight code on pairs of numbers, left and right in the
 * two lanes of a register. Every operation is done on its own in each lane, so results are those of the loop to the last
 * bit. What such a loop may hold:
 *
 * - numbers and yes-or-noes, ifs and choices, reading and writing of memory at `place + s` or `place + corner`;
 * - what was declared before it is the same for both sides; adding to it is done once for each side, outside of ifs;
 * - calls: a function that only computes is turned into one on pairs, `given` ones have a pair of their own in the prelude
 *   (its name ends in `Pair`), others are called once for each side.
 */
export interface Lanes {
  /** What the loop over sides in a function became, with everything else of the function as it was. */
  readonly text: string;
  /** Functions on pairs that it calls, by name, in the order in which they have to stand. */
  readonly pairs: ReadonlyMap<string, string>;
}

/** How the functions that are called are found. */
export interface Surroundings {
  /** Those whose pair stands in the prelude. */
  readonly given: ReadonlySet<string>;
  find(name: string): ts.FunctionDeclaration | null;
}

const LOOP = /^for \(let s: i32 = 0; s < 2; s \+= 1\)/;
const SUMS: Readonly<Record<number, string>> = {
  [ts.SyntaxKind.PlusToken]: 'add',
  [ts.SyntaxKind.MinusToken]: 'sub',
  [ts.SyntaxKind.AsteriskToken]: 'mul',
  [ts.SyntaxKind.SlashToken]: 'div',
};
const COMPARISONS: Readonly<Record<number, string>> = {
  [ts.SyntaxKind.GreaterThanToken]: 'gt',
  [ts.SyntaxKind.LessThanToken]: 'lt',
  [ts.SyntaxKind.GreaterThanEqualsToken]: 'ge',
  [ts.SyntaxKind.LessThanEqualsToken]: 'le',
  [ts.SyntaxKind.EqualsEqualsEqualsToken]: 'eq',
  [ts.SyntaxKind.ExclamationEqualsEqualsToken]: 'ne',
};
const CHANGES: Readonly<Record<number, string>> = {
  [ts.SyntaxKind.AsteriskEqualsToken]: 'mul',
  [ts.SyntaxKind.PlusEqualsToken]: 'add',
  [ts.SyntaxKind.MinusEqualsToken]: 'sub',
};

/** The loop over sides of a function; null where it has none. */
export function inLanes(part: ts.Node, around: Surroundings): Lanes | null {
  let loop: ts.ForStatement | null = null;
  const seek = (node: ts.Node): void => {
    if (ts.isForStatement(node) && LOOP.test(node.getText())) loop = node;
    else ts.forEachChild(node, seek);
  };
  seek(part);
  if (loop === null) return null;
  const { statement } = loop as ts.ForStatement;
  const pairs = new Map<string, string>();
  const body = new Writer(around, pairs).block(statement, null);
  const start = (loop as ts.ForStatement).getStart() - part.getStart();
  const text = part.getText();
  const end = start + (loop as ts.ForStatement).getText().length;
  return { text: text.slice(0, start) + body + text.slice(end), pairs };
}

type Kind = 'number' | 'truth';

class Writer {
  /** What differs from side to side. */
  private readonly lanes = new Map<string, Kind>();
  /** Whole numbers that are one more on the right, with their text on the left. */
  private readonly places = new Map([['s', '0']]);
  private made = 0;
  private before: string[] = [];
  private readonly around: Surroundings;
  private readonly pairs: Map<string, string>;

  constructor(around: Surroundings, pairs: Map<string, string>) {
    this.around = around;
    this.pairs = pairs;
  }

  /** A function that only computes, on pairs. */
  pairOf(part: ts.FunctionDeclaration): string {
    const parameters = part.parameters.map((each) => {
      const name = each.name.getText();
      if (each.type?.getText() !== 'number') throw trouble(part, `parameter ${name} is no number`);
      this.lanes.set(name, 'number');
      return `${name}: v128`;
    });
    const body = part.body!.statements.map((each) => this.statement(each, null)).join('\n');
    return `@inline function ${part.name!.text}Pair(${parameters.join(', ')}): v128 {\n${body}\n}`;
  }

  /** @param mask – name of the sides that the statements are for; null for both */
  block(node: ts.Statement, mask: string | null): string {
    const statements = ts.isBlock(node) ? node.statements : [node];
    return `{\n${statements.map((each) => this.statement(each, mask)).join('\n')}\n}`;
  }

  private statement(node: ts.Statement, mask: string | null): string {
    this.before = [];
    const text = this.one(node, mask);
    return [...this.before, text].join('\n');
  }

  private one(node: ts.Statement, mask: string | null): string {
    if (ts.isVariableStatement(node)) {
      return node.declarationList.declarations.map((each) => this.declaration(each, node)).join('\n');
    }
    if (ts.isReturnStatement(node)) return `return ${this.pair(node.expression!)};`;
    if (ts.isIfStatement(node)) return this.choice(node, mask);
    if (!ts.isExpressionStatement(node)) throw trouble(node, 'a statement that lanes do not know');
    const { expression } = node;
    if (ts.isCallExpression(expression)) return `${this.call(expression)};`;
    if (ts.isBinaryExpression(expression)) return this.change(expression, mask);
    throw trouble(node, 'a statement that lanes do not know');
  }

  private declaration(node: ts.VariableDeclaration, statement: ts.VariableStatement): string {
    const name = node.name.getText();
    const value = node.initializer!;
    const word = statement.declarationList.flags & ts.NodeFlags.Const ? 'const' : 'let';
    if (this.isPlace(value)) {
      this.places.set(name, `(${this.onLeft(value)})`);
      return '';
    }
    if (word === 'const' && !this.differs(value)) return `const ${name} = ${value.getText()};`;
    const kind = this.kindOf(value);
    this.lanes.set(name, kind);
    return `${word} ${name} = ${kind === 'truth' ? this.mask(value) : this.pair(value)};`;
  }

  private choice(node: ts.IfStatement, mask: string | null): string {
    if (!this.differs(node.expression)) {
      const head = `if (${node.expression.getText()}) ${this.inner(node.thenStatement, mask)}`;
      return node.elseStatement ? `${head} else ${this.inner(node.elseStatement, mask)}` : head;
    }
    if (node.elseStatement) throw trouble(node, 'an else whose condition differs from side to side');
    const name = this.fresh('mask');
    const own = this.mask(node.expression);
    this.before.push(`const ${name} = ${mask === null ? own : `v128.and(${mask}, ${own})`};`);
    const body = this.inner(node.thenStatement, name);
    // Alone in an if of its own, that has asked already.
    const alone =
      ts.isBlock(node.parent) && ts.isIfStatement(node.parent.parent) && node.parent.statements.length === 1;
    return alone && !this.differs(node.parent.parent.expression)
      ? body
      : `if (v128.any_true(${name})) ${body}`;
  }

  private inner(node: ts.Statement, mask: string | null): string {
    const { before } = this;
    const text = this.block(node, mask);
    this.before = before;
    return text;
  }

  private change(node: ts.BinaryExpression, mask: string | null): string {
    const operator = node.operatorToken.kind;
    const { left, right } = node;
    const onlyThere = (value: string, old: string): string =>
      mask === null ? value : `v128.bitselect(${value}, ${old}, ${mask})`;
    if (ts.isElementAccessExpression(left)) {
      const place = this.onLeft(left.argumentExpression);
      const value = onlyThere(this.pair(right), `pairAt(m, ${place})`);
      return `setPair(m, ${place}, ${value});`;
    }
    const name = left.getText();
    const kind = this.lanes.get(name);
    if (kind === undefined) {
      if (mask !== null) throw trouble(node, 'a sum over both sides inside an if');
      if (operator === ts.SyntaxKind.BarEqualsToken)
        return `${name} |= ${this.call(right as ts.CallExpression)};`;
      const sum = this.fresh('sum');
      const sign = node.operatorToken.getText();
      this.before.push(`const ${sum} = ${this.pair(right)};`);
      return `${name} ${sign} leftOf(${sum}); ${name} ${sign} rightOf(${sum});`;
    }
    if (kind === 'truth') return `${name} = ${onlyThere(this.mask(right), name)};`;
    if (operator === ts.SyntaxKind.EqualsToken) return `${name} = ${onlyThere(this.pair(right), name)};`;
    return `${name} = ${onlyThere(`f64x2.${CHANGES[operator]}(${name}, ${this.pair(right)})`, name)};`;
  }

  /** A pair of numbers. */
  private pair(node: ts.Expression): string {
    if (ts.isParenthesizedExpression(node)) return this.pair(node.expression);
    if (!this.differs(node)) {
      if (ts.isElementAccessExpression(node)) return `bothAt(m, ${node.argumentExpression.getText()})`;
      return `f64x2.splat(${node.getText()})`;
    }
    if (ts.isIdentifier(node)) return node.text;
    if (ts.isBinaryExpression(node) && SUMS[node.operatorToken.kind])
      return `f64x2.${SUMS[node.operatorToken.kind]}(${this.pair(node.left)}, ${this.pair(node.right)})`;
    if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken)
      return `f64x2.neg(${this.pair(node.operand)})`;
    if (ts.isElementAccessExpression(node)) return `pairAt(m, ${this.onLeft(node.argumentExpression)})`;
    if (ts.isConditionalExpression(node)) {
      const [yes, no] = [this.pair(node.whenTrue), this.pair(node.whenFalse)];
      return `v128.bitselect(${yes}, ${no}, ${this.mask(node.condition)})`;
    }
    if (ts.isCallExpression(node)) return this.call(node);
    throw trouble(node, 'a number that lanes do not know');
  }

  /** All bits of a lane where it is so. */
  private mask(node: ts.Expression): string {
    if (ts.isParenthesizedExpression(node)) return this.mask(node.expression);
    if (!this.differs(node)) return `onBoth(${node.getText()})`;
    if (ts.isIdentifier(node)) return node.text;
    if (ts.isPrefixUnaryExpression(node)) return `v128.not(${this.mask(node.operand)})`;
    if (!ts.isBinaryExpression(node)) throw trouble(node, 'a condition that lanes do not know');
    const { kind } = node.operatorToken;
    if (COMPARISONS[kind])
      return `f64x2.${COMPARISONS[kind]}(${this.pair(node.left)}, ${this.pair(node.right)})`;
    const join = kind === ts.SyntaxKind.AmpersandAmpersandToken ? 'and' : 'or';
    return `v128.${join}(${this.mask(node.left)}, ${this.mask(node.right)})`;
  }

  private call(node: ts.CallExpression): string {
    const called = node.expression.getText();
    const builtIn = /^Math\.(max|min)$/.exec(called)?.[1];
    if (builtIn) return `f64x2.${builtIn}(${node.arguments.map((each) => this.pair(each)).join(', ')})`;
    const part = this.around.find(called);
    if (!part) throw trouble(node, `${called} is not known`);
    const types = part.parameters.map((each) => each.type?.getText());
    if (this.around.given.has(called) || types.every((type) => type === 'number')) {
      if (!this.around.given.has(called)) this.addPair(called, part);
      const values = node.arguments.map((each, k) => {
        if (types[k] === 'boolean') return this.mask(each);
        return types[k] === 'number' ? this.pair(each) : this.onLeft(each);
      });
      return `${called}Pair(${values.join(', ')})`;
    }
    const values = node.arguments.map((each, k) => {
      if (types[k] !== 'number') return [this.onLeft(each), this.onRight(each)];
      const name = this.fresh('value');
      this.before.push(`const ${name} = ${this.pair(each)};`);
      return [`leftOf(${name})`, `rightOf(${name})`];
    });
    const [left, right] = [0, 1].map((k) => `${called}(${values.map((each) => each[k]).join(', ')})`);
    return `pairOf(${left}, ${right})`;
  }

  private addPair(name: string, part: ts.FunctionDeclaration): void {
    if (this.pairs.has(name)) return;
    const text = new Writer(this.around, this.pairs).pairOf(part);
    // What it calls itself stands before it by now.
    this.pairs.set(name, text);
  }

  private kindOf(node: ts.Expression): Kind {
    if (ts.isParenthesizedExpression(node)) return this.kindOf(node.expression);
    if (ts.isIdentifier(node)) return this.lanes.get(node.text) ?? 'number';
    if (ts.isPrefixUnaryExpression(node))
      return node.operator === ts.SyntaxKind.ExclamationToken ? 'truth' : 'number';
    if (node.kind === ts.SyntaxKind.TrueKeyword || node.kind === ts.SyntaxKind.FalseKeyword) return 'truth';
    return ts.isBinaryExpression(node) && !SUMS[node.operatorToken.kind] ? 'truth' : 'number';
  }

  /** Whether something differs from side to side. */
  private differs(node: ts.Node): boolean {
    if (ts.isPropertyAccessExpression(node)) return false;
    if (ts.isIdentifier(node)) return this.lanes.has(node.text) || this.places.has(node.text);
    return ts.forEachChild(node, (child) => this.differs(child)) ?? false;
  }

  private isPlace(node: ts.Expression): boolean {
    let onlyPlaces = this.differs(node);
    const look = (each: ts.Node): void => {
      if (ts.isIdentifier(each) && this.lanes.has(each.text)) onlyPlaces = false;
      if (ts.isElementAccessExpression(each) || ts.isCallExpression(each)) onlyPlaces = false;
      ts.forEachChild(each, look);
    };
    look(node);
    return onlyPlaces;
  }

  /** A whole number as it is on the left. */
  private onLeft(node: ts.Expression): string {
    return node.getText().replace(/\b[a-z]\w*\b(?!\.)/g, (word) => this.places.get(word) ?? word);
  }

  private onRight(node: ts.Expression): string {
    return node
      .getText()
      .replace(/\b[a-z]\w*\b(?!\.)/g, (word) =>
        this.places.has(word) ? `(${this.places.get(word)} + 1)` : word,
      );
  }

  private fresh(what: string): string {
    this.made += 1;
    return `${what}${this.made}`;
  }
}

const trouble = (node: ts.Node, what: string): Error =>
  new Error(`kernel: in a loop over sides: ${what}: ${node.getText()}`);
