import type { ProblemCode } from '../finding/codes.ts';

/**
 * What a step of reading a quantity could not take. The step knows the reason; `parse.ts` knows text, place and
 * dimension and makes the `Problem` of it.
 */
export interface Trouble {
  readonly trouble: Extract<ProblemCode, `quantity-${string}`>;
  /** What would be accepted; left out where an example of the dimension says it best. */
  readonly accepted?: string;
}

export const isTrouble = (outcome: object): outcome is Trouble => 'trouble' in outcome;

export const NOT_UNDERSTOOD: Trouble = { trouble: 'quantity-not-understood' };
