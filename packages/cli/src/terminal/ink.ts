import type { Severity } from '@lastinch/core';

/** How text is set off. Without colour everything still reads: the same words stand there, only plain. */
export interface Ink {
  readonly heading: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly severity: (severity: Severity, text: string) => string;
}

const CODES: Readonly<Record<Severity, string>> = { over: '1;31', unproven: '1;33', note: '36', fine: '32' };

const plain = (text: string): string => text;
const set = (code: string) => (text: string) => (text === '' ? text : `\u001b[${code}m${text}\u001b[0m`);

const PLAIN: Ink = { heading: plain, faint: plain, severity: (_, text) => text };
const COLOURED: Ink = {
  heading: set('1'),
  faint: set('2'),
  severity: (severity, text) => set(CODES[severity])(text),
};

/** Colour only on a terminal that wants it: https://no-color.org, and not on a dumb one. */
export function inkFor(isTerminal: boolean, env: Readonly<Record<string, string | undefined>>): Ink {
  const refused = (env.NO_COLOR ?? '') !== '' || env.TERM === 'dumb';
  return isTerminal && !refused ? COLOURED : PLAIN;
}
