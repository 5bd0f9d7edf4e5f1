import { type Dimension, parseQuantity } from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { text, texts } from './inputs.ts';

/** Typed text to SI. */
export const quantities: Runner = {
  'si-values': ({ dimension, texts: typed }) =>
    Object.fromEntries(
      texts(typed).map((each) => {
        const parsed = parseQuantity(each, text(dimension) as Dimension);
        return [each, parsed.ok ? parsed.value.value : Number.NaN];
      }),
    ),
};
