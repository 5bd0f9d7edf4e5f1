import type { Result } from '../finding/problem.ts';

/** Reads a text file that the rig file names, relative to it. Whoever calls decides what may be read. */
export type ReadBeside = (path: string) => Result<string>;
