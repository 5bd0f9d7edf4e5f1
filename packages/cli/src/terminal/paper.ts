import type { UnitSystem } from '@lastinch/core';
import { type Ink, inkFor } from './ink.ts';

/** What a page is written on: how wide, in which units, with which signs, with or without colour. */
export interface Paper {
  /** Cells of the terminal. */
  readonly width: number;
  readonly system: UnitSystem;
  /** False keeps to ASCII. */
  readonly unicode: boolean;
  readonly ink: Ink;
}

type Env = Readonly<Record<string, string | undefined>>;

const NARROWEST = 40;
const WIDEST = 110;
/** What a page gets when nobody says how wide it is: a file, a pipe. */
const UNKNOWN = 80;

/** The paper that standard output is. `COLUMNS` counts where the stream does not know its width. */
export function paperFor(
  stream: { readonly isTTY?: boolean; readonly columns?: number },
  env: Env,
  system: UnitSystem,
): Paper {
  const columns = stream.columns ?? Number(env.COLUMNS ?? Number.NaN);
  return {
    width: Math.min(WIDEST, Math.max(NARROWEST, columns > 0 ? columns : UNKNOWN)),
    system,
    unicode: speaksUnicode(env),
    ink: inkFor(stream.isTTY === true, env),
  };
}

/** Unicode unless the locale names another character set. A locale that says nothing is no reason for question marks. */
function speaksUnicode({ LC_ALL, LC_CTYPE, LANG }: Env): boolean {
  const locale = LC_ALL || LC_CTYPE || LANG || '';
  if (locale === 'C' || locale === 'POSIX') return false;
  const charset = /\.([^@]+)/.exec(locale)?.[1];
  return charset === undefined || /^utf-?8$/i.test(charset);
}
