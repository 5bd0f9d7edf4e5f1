import { starterRig } from '@lastinch/core/rigfile';
import { type ExitCode, refuse } from '../asked.ts';
import { commandLine } from '../command-line.ts';
import { writeNewFile } from '../hosts/files.ts';
import { writeLines } from '../hosts/output.ts';

/** `lastinch new [FILE]`: the commented starter file, to standard output for `-`. Never overwrites. */
export async function newRig(file: string): Promise<ExitCode> {
  if (file === '-') {
    process.stdout.write(starterRig());
    return 0;
  }
  const written = writeNewFile(file, starterRig());
  if (!written.ok) return refuse(written.problems);
  writeLines([`Written: ${file}. Fill in what you measured, then:`, `  ${commandLine('check', file)}`]);
  return 0;
}
