import type { Values } from './check-file.ts';

/** Answers the inputs of a check with our own code, through the public surface of core. */
export type Evaluator = (inputs: Readonly<Record<string, unknown>>) => Values;

/** The evaluators of one topic by name. */
export type Runner = Readonly<Record<string, Evaluator>>;
