import { FRACTION_PATTERN } from './fraction.ts';

export type TokenKind = 'fraction' | 'number' | 'unit' | 'mark';

export interface Token {
  readonly kind: TokenKind;
  /** In plain characters: `"` for every inch mark, `-` for every minus. */
  readonly text: string;
  /** Whether blank space stands before it. */
  readonly spaced: boolean;
}

/** Characters that phones and word processors put in place of the plain one. */
const LOOKALIKES: Readonly<Record<string, string>> = {
  '-': '−–—‐‑‒﹣－',
  "'": '′’‘`´ʹ',
  '"': '″“”ʺ',
  '/': '⁄∕',
  '·': '⋅∙•×',
  '°': 'º˚',
  '~': '∼≈',
};
const PLAIN = new Map(
  Object.entries(LOOKALIKES).flatMap(([plain, others]) =>
    [...others].map((other) => [other, plain] as const),
  ),
);

/** The text in plain characters, single blanks, and `±` for `+/-`. */
const inPlainCharacters = (text: string): string =>
  Array.from(text, (character) => PLAIN.get(character) ?? character)
    .join('')
    .replace(/[\s\u200b]+/g, ' ')
    .replaceAll("''", '"')
    .replace(/\+ ?\/ ?-|\+-/g, '±');

// A unit is a row of letter groups, each perhaps squared or cubed (or the 1.75 of a vibration dose), joined by a dot,
// a blank, a dash or a slash; `1/m` begins with its slash. A 2 or 3 is an exponent only when nothing but the end of the unit follows: `m/s2`, not `1ft2in`.
const LETTERS = String.raw`\(?[a-z°]+(?:[²³]|\^[23]|\^1\.75|[23](?![\d/.,a-z'"]))?\)?`;
const UNIT = String.raw`(?:1? ?/ ?)?${LETTERS}(?:(?: ?[·*./-] ?| )${LETTERS})*\.?|[%'"]`;
const NUMBER = String.raw`(?:\d[\d.,]*|[.,]\d[\d.,]*)(?:e[+-]?\d+)?`;

/**
 * Every alternative begins with another character or stops at the first that does not fit, and nothing follows
 * that could force it to try again: one pass, linear in the length of the text.
 */
const TOKEN = new RegExp(
  `( ?)(?:(?<unit>${UNIT})|(?<fraction>${FRACTION_PATTERN})|(?<number>${NUMBER})|(?<mark>[~±+/-]))`,
  'iuy',
);

/** The text cut into tokens, or null when a character has no place in a quantity. */
export function tokensOf(text: string): readonly Token[] | null {
  const plain = inPlainCharacters(text);
  const tokens: Token[] = [];
  for (let at = 0; at < plain.length; at = TOKEN.lastIndex) {
    TOKEN.lastIndex = at;
    const found = TOKEN.exec(plain);
    if (!found) return null;
    const [kind, token] = Object.entries(found.groups!).find(([, each]) => each !== undefined)!;
    tokens.push({ kind: kind as TokenKind, text: token!, spaced: found[1] !== '' });
  }
  return tokens;
}
