import type { ProblemCode } from './codes.ts';

/** Where a piece of input stands. All parts are optional: text typed into a field has no file or line. */
export interface Where {
  readonly file?: string;
  /** 1-based line. */
  readonly line?: number;
  /** Dotted key path, for example `front.stop.gap`. */
  readonly key?: string;
}

/**
 * Something is wrong with what the user gave us. Data, never a sentence: the phrase book in `words/`
 * makes the sentence, and nothing ever parses it.
 */
export interface Problem {
  readonly code: ProblemCode;
  readonly where: Where;
  /** What stands there, as typed (shortened when long). */
  readonly found: string;
  /** What would be accepted, as a short list of examples or units. */
  readonly accepted: string;
}

/** Outcome of reading input: the value, or every problem found in one pass. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const good = <T>(value: T): Result<T> => ({ ok: true, value });
export const bad = <T = never>(...problems: readonly Problem[]): Result<T> => ({ ok: false, problems });
