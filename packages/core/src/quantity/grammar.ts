import { fractionTyped } from './fraction.ts';
import { isWhole, numberTyped } from './number.ts';
import { type Token, type TokenKind, tokensOf } from './token.ts';
import { isTrouble, NOT_UNDERSTOOD, type Trouble } from './trouble.ts';

/** A number and the unit behind it, if one was typed. */
export interface Part {
  readonly amount: number;
  readonly unit: string | null;
}

/** One part, or two as in `1 ft 6 in`; the sign is that of the whole. */
export interface Measure {
  readonly negative: boolean;
  readonly parts: readonly [Part] | readonly [Part, Part];
}

/** Half-widths as typed, neither negative; `±` gives the same measure twice. */
export interface Halves {
  readonly plus: Measure;
  readonly minus: Measure;
}

/** A quantity as it stands on the paper: units are still names, and nothing has been converted. */
export interface Written {
  readonly assumed: boolean;
  readonly value: Measure;
  readonly tolerance: Halves | null;
}

const CROSSED: Trouble = {
  trouble: 'quantity-tolerance-crossed',
  accepted: 'half-widths without a sign of their own, plus before minus: ± 1/16 or +3/-1',
};

/**
 * Reads the typed text by this grammar:
 *
 *     quantity  = [ "~" ] measure [ tolerance ]
 *     tolerance = "±" measure | "+" measure [ "/" ] "-" measure
 *     measure   = [ "-" | "+" ] part [ [ "-" ] part ]          1 ft 6 in, 1'-6"
 *     part      = amount [ unit ]
 *     amount    = number | fraction | whole [ "-" ] fraction   4.125, 5/8, 4 1/8, 4-1/8
 *
 * A dash joins only when it touches both neighbours; otherwise it is a sign.
 */
export function writtenQuantity(text: string): Written | Trouble {
  const tokens = tokensOf(text);
  return tokens ? new Reader(tokens).quantity() : NOT_UNDERSTOOD;
}

class Reader {
  private at = 0;

  constructor(private readonly tokens: readonly Token[]) {}

  quantity(): Written | Trouble {
    const assumed = this.mark('~') !== null;
    const value = this.measure();
    if (isTrouble(value)) return value;
    const tolerance = this.tolerance();
    if (tolerance && isTrouble(tolerance)) return tolerance;
    return this.at === this.tokens.length ? { assumed, value, tolerance } : NOT_UNDERSTOOD;
  }

  private tolerance(): Halves | Trouble | null {
    if (this.mark('±')) {
      const half = this.half();
      return isTrouble(half) ? half : { plus: half, minus: half };
    }
    const firstSign = this.mark('+', '-');
    if (!firstSign) return null;
    const first = this.half();
    if (isTrouble(first)) return first;
    this.mark('/');
    const secondSign = this.mark('+', '-');
    if (!secondSign) return NOT_UNDERSTOOD;
    const second = this.half();
    if (isTrouble(second)) return second;
    return firstSign === '+' && secondSign === '-' ? { plus: first, minus: second } : CROSSED;
  }

  private half(): Measure | Trouble {
    const half = this.measure();
    return !isTrouble(half) && half.negative ? CROSSED : half;
  }

  private measure(): Measure | Trouble {
    const negative = this.mark('-', '+') === '-';
    const first = this.part();
    if (isTrouble(first)) return first;
    const dash = this.joiningDash();
    if (first.unit === null || !this.startsAmount(dash)) return { negative, parts: [first] };
    this.at += dash;
    const second = this.part();
    return isTrouble(second) ? second : { negative, parts: [first, second] };
  }

  private part(): Part | Trouble {
    const amount = this.amount();
    if (typeof amount !== 'number') return amount;
    return { amount, unit: this.take('unit')?.text ?? null };
  }

  private amount(): number | Trouble {
    const number = this.take('number');
    if (!number) {
      const fraction = this.take('fraction');
      return fraction ? fractionTyped(fraction.text) : NOT_UNDERSTOOD;
    }
    const whole = numberTyped(number.text);
    if (typeof whole !== 'number' || !isWhole(number.text)) return whole;
    const dash = this.joiningDash();
    if (this.tokens[this.at + dash]?.kind === 'fraction') this.at += dash;
    const fraction = this.take('fraction');
    if (!fraction) return whole;
    const rest = fractionTyped(fraction.text);
    if (typeof rest !== 'number') return rest;
    return rest < 1
      ? whole + rest
      : { trouble: 'quantity-out-of-range', accepted: 'a fraction below 1 after a whole number' };
  }

  /** Whether a part begins so many tokens ahead. */
  private startsAmount(ahead: number): boolean {
    const kind = this.tokens[this.at + ahead]?.kind;
    return kind === 'number' || kind === 'fraction';
  }

  /** 1 when a dash comes next that touches what stands before and behind it, otherwise 0. */
  private joiningDash(): 0 | 1 {
    const dash = this.tokens[this.at];
    const next = this.tokens[this.at + 1];
    return dash?.text === '-' && !dash.spaced && next?.spaced === false ? 1 : 0;
  }

  private take(kind: TokenKind): Token | null {
    const token = this.tokens[this.at];
    if (token?.kind !== kind) return null;
    this.at += 1;
    return token;
  }

  private mark(...wanted: readonly string[]): string | null {
    const token = this.tokens[this.at];
    if (token?.kind !== 'mark' || !wanted.includes(token.text)) return null;
    this.at += 1;
    return token.text;
  }
}
