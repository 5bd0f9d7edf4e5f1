import { bad, good, type Problem, type Result } from '@lastinch/core';
import {
  COLUMN_ROLES,
  type ColumnFix,
  HEAD_BYTES,
  type LogAnswer,
  type LogLook,
  lookAtLog,
} from '@lastinch/core/trail';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { readPieces } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { logJson } from '../json/log-json.ts';
import { logPage } from '../terminal/log-page.ts';
import { paperFor } from '../terminal/paper.ts';

export interface LogOptions {
  readonly columns?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** `lastinch log FILE…`: each log by itself, from its bytes to what may be said from it. */
export async function logs(files: readonly string[], options: LogOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const fixes = fixesAsked(options.columns);
  if (!fixes.ok) return refuse(fixes.problems);
  const answers: LogAnswer[] = [];
  const problems: Problem[] = [];
  for (const file of files) {
    const answer = await readLog(file, fixes.value);
    if (answer.ok) answers.push(answer.value);
    else problems.push(...answer.problems);
  }
  if (problems.length > 0) return refuse(problems);
  const system = units.value ?? 'metric';
  if (options.json) writeJson(logJson(answers, system));
  else writeLines(logPage(answers, paperFor(process.stdout, process.env, system)));
  return 0;
}

async function readLog(file: string, fixes: readonly ColumnFix[]): Promise<Result<LogAnswer>> {
  const name = file === '-' ? 'standard input' : file;
  const progress = progressLine(process.stderr);
  const head: Uint8Array[] = [];
  let length = 0;
  let look: Result<LogLook> | null = null;
  const begin = (): void => {
    const whole = Buffer.concat(head);
    look = lookAtLog(whole.subarray(0, HEAD_BYTES), { file: name, fixes });
    if (look.ok) look.value.push(whole);
  };
  const read = await readPieces(file, (piece, share) => {
    if (look?.ok) look.value.push(piece);
    else if (look === null) {
      head.push(Uint8Array.from(piece));
      length += piece.length;
      if (length >= HEAD_BYTES) begin();
    }
    if (Number.isFinite(share)) progress.show(`reading ${name}`, share);
  });
  progress.clear();
  if (!read.ok) return read;
  if (look === null) begin();
  const opened = look as Result<LogLook> | null;
  if (opened === null) throw new Error('the log was not opened');
  return opened.ok ? opened.value.finish() : opened;
}

/** `time=1:ms, acceleration.x=ax:g`: the role, the column by number or name, its unit. */
function fixesAsked(text: string | undefined): Result<readonly ColumnFix[]> {
  if (text === undefined) return good([]);
  const fixes: ColumnFix[] = [];
  for (const part of text.split(',')) {
    const [, word = '', column = '', unit = ''] =
      /^\s*([^=]+?)\s*=\s*([^:]+?)\s*(?::\s*(.*?)\s*)?$/.exec(part) ?? [];
    const role = COLUMN_ROLES.find((one) => one === (/^[xyz]$/.test(word) ? `acceleration.${word}` : word));
    if (role === undefined || column === '')
      return bad({
        code: 'ask-option',
        where: { key: '--columns' },
        found: part.trim(),
        accepted: `ROLE=COLUMN or ROLE=COLUMN:UNIT with a role of ${COLUMN_ROLES.join(', ')}`,
      });
    fixes.push({ role, column, unit });
  }
  return good(fixes);
}
