import { basename, relative } from 'node:path';

/** A command line of this program that can be copied: called the way it was called this time. */
export function commandLine(...words: readonly string[]): string {
  const called = process.argv[1] ?? 'lastinch';
  const installed = basename(called) === 'lastinch';
  const program = installed ? ['lastinch'] : ['node', relative(process.cwd(), called)];
  return [...program, ...words].map(quoted).join(' ');
}

const quoted = (word: string): string =>
  /^[\w@%+=:,./\\-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
