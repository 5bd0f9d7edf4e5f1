import type { Dimension } from '../../src/finding/figure.ts';
import type { Problem } from '../../src/finding/problem.ts';
import { parseQuantity } from '../../src/quantity/parse.ts';
import type { Quantity } from '../../src/quantity/quantity.ts';

/** The quantity that a text must be read as; fails with the problem when it is not. */
export function must(text: string, dimension: Dimension): Quantity {
  const result = parseQuantity(text, dimension);
  if (!result.ok) throw new Error(`'${text}' was refused: ${JSON.stringify(result.problems)}`);
  return result.value;
}

/** The one problem that a text must give; fails when it is read, or when there are several. */
export function mustFail(text: string, dimension: Dimension): Problem {
  const result = parseQuantity(text, dimension);
  if (result.ok) throw new Error(`'${text}' was read as ${JSON.stringify(result.value)}`);
  if (result.problems.length !== 1) throw new Error(`'${text}' gave ${result.problems.length} problems`);
  return result.problems[0]!;
}

/** Reads the value in a unit whose size in SI is given. */
export const valueIn = (size: number, text: string, dimension: Dimension): number =>
  must(text, dimension).value / size;
