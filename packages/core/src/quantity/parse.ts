import type { Dimension } from '../finding/figure.ts';
import { bad, good, type Result, type Where } from '../finding/problem.ts';
import { EXAMPLES } from './dimension.ts';
import { type Written, writtenQuantity } from './grammar.ts';
import { meantBy } from './measure.ts';
import type { Quantity } from './quantity.ts';
import { halfWidths, unitInCommon } from './tolerance.ts';
import { isTrouble, type Trouble } from './trouble.ts';

/** Longest text that is read at all. The longest honest one in the tests has 41 characters. */
export const LONGEST_TEXT = 200;

const SHOWN_OF_BAD_TEXT = 60;

/**
 * What somebody typed → SI value with half-widths. The grammar is in `grammar.ts`, the units in `dimension.ts`.
 *
 * @param text – as typed: `4 1/8 in ± 1/16`, `2' 7 1/4"`, `~ 385 N/mm ± 5 %`, `110 +3/-1 mm`
 * @param dimension – the kind of quantity that belongs here; it decides whether `lb` is a mass or a force
 * @param where – goes into the problem unchanged
 * @returns a quantity whose numbers are all finite and whose `text` is the text without blanks at its ends
 * @failure exactly one problem, whichever is met first: quantity-empty, -too-long, -not-understood, -unit-missing,
 * -unit-unknown, -unit-wrong-kind, -tolerance-crossed, -out-of-range; `accepted` is never empty
 */
export function parseQuantity(text: string, dimension: Dimension, where: Where = {}): Result<Quantity> {
  const typed = text.trim();
  const understood = understand(typed, dimension);
  if (!isTrouble(understood)) return good(understood);
  const { trouble: code, accepted = EXAMPLES[dimension] } = understood;
  return bad({ code, where, found: shortened(typed), accepted });
}

function understand(text: string, dimension: Dimension): Quantity | Trouble {
  if (text === '') return { trouble: 'quantity-empty' };
  if (text.length > LONGEST_TEXT) {
    return { trouble: 'quantity-too-long', accepted: `at most ${LONGEST_TEXT} characters` };
  }
  const written = writtenQuantity(text);
  if (isTrouble(written)) return written;
  const inSi = convert(written, dimension);
  if (isTrouble(inSi)) return inSi;
  const numbers = [inSi.value, inSi.plus ?? 0, inSi.minus ?? 0];
  return numbers.every(Number.isFinite)
    ? { dimension, ...inSi, assumed: written.assumed, text }
    : { trouble: 'quantity-out-of-range', accepted: 'numbers below about 1e300' };
}

type Numbers = Pick<Quantity, 'value' | 'plus' | 'minus'>;

function convert({ value, tolerance }: Written, dimension: Dimension): Numbers | Trouble {
  const lent = tolerance && unitInCommon(tolerance);
  const meant = meantBy(value, dimension, lent === '%' ? null : lent);
  if (isTrouble(meant)) return meant;
  if (!tolerance) return { value: meant.value, plus: null, minus: null };
  const halves = halfWidths(tolerance, meant, dimension);
  return isTrouble(halves) ? halves : { value: meant.value, ...halves };
}

/** Long or many-lined text as one short line of whole characters, so that a problem stays one line. */
function shortened(text: string): string {
  const characters = Array.from(text.slice(0, 2 * SHOWN_OF_BAD_TEXT + 2));
  const line = characters
    .slice(0, SHOWN_OF_BAD_TEXT)
    .join('')
    .replace(/[\s\p{Cc}\p{Cs}]+/gu, ' ');
  return characters.length > SHOWN_OF_BAD_TEXT ? `${line}…` : line;
}
