import type { Problem, Result } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { type BuiltRig, buildRig } from './build.ts';
import { openDocument, type RigDocument } from './document.ts';
import { versionProblem } from './migrate/version.ts';
import type { ReadBeside } from './read-beside.ts';
import { shapeProblems } from './shape-check.ts';
import { typedQuantities } from './typed.ts';

export interface ReadRigOptions {
  /** Name of the file for messages. */
  readonly file?: string;
  /** How a table file named in the rig is read; without it such a name is a problem. */
  readonly readBeside?: ReadBeside;
}

/** Everything that can be known of a file, even of one with problems. */
export interface RigReadout {
  readonly document: RigDocument | null;
  readonly built: BuiltRig | null;
  /** In the order of the file. */
  readonly problems: readonly Problem[];
}

/** Nobody reads more messages than this at once. */
const MOST_PROBLEMS = 60;

/**
 * Reads a rig file: text → YAML → shape → quantities → rig. Every problem of all four is reported in one pass;
 * gaps with a sound estimate are filled and marked in `rig.assumptions`.
 *
 * @param text – the whole file
 * @returns The frozen rig, or all problems in the order of the file.
 * @failure problems of files, quantities and rig files (`finding/codes.ts`)
 */
export function readRig(text: string, options: ReadRigOptions = {}): Result<Rig> {
  const { built, problems } = readout(text, options.readBeside);
  if (built && problems.length === 0) return { ok: true, value: built.rig };
  const { file } = options;
  if (file === undefined) return { ok: false, problems };
  return {
    ok: false,
    problems: problems.map((problem) => ({ ...problem, where: { file, ...problem.where } })),
  };
}

let last: { text: string; readBeside: ReadBeside | undefined; readout: RigReadout } | null = null;

/**
 * The same with everything found on the way, for the Measure step. The answer for the last text is kept, because
 * page and rig ask for the same text one after the other at every keystroke; a table file beside may change
 * meanwhile, so a rig that can read one is always read again.
 */
export function readout(text: string, readBeside?: ReadBeside): RigReadout {
  if (last && last.text === text && !last.readBeside && !readBeside) return last.readout;
  last = { text, readBeside, readout: readAfresh(text, readBeside) };
  return last.readout;
}

function readAfresh(text: string, readBeside?: ReadBeside): RigReadout {
  const { document, problems: fileProblems } = openDocument(text);
  if (!document) return { document, built: null, problems: fileProblems };
  const version = versionProblem(document);
  // A file of another version has other keys: every further message would mislead.
  if (version) return { document, built: null, problems: few([...fileProblems, version]) };
  const typed = typedQuantities(document);
  const built = buildRig(document, typed, readBeside);
  const problems = [
    ...fileProblems,
    ...shapeProblems(document, typed.paths),
    ...typed.problems,
    ...built.problems,
  ];
  return { document, built, problems: few(inFileOrder(problems)) };
}

function inFileOrder(problems: readonly Problem[]): readonly Problem[] {
  const end = Number.MAX_SAFE_INTEGER;
  return [...problems].sort((a, b) => (a.where.line ?? end) - (b.where.line ?? end));
}

function few(problems: readonly Problem[]): readonly Problem[] {
  if (problems.length <= MOST_PROBLEMS) return problems;
  const rest = `${problems.length - MOST_PROBLEMS} more`;
  return [
    ...problems.slice(0, MOST_PROBLEMS),
    { code: 'file-more-problems', where: {}, found: rest, accepted: 'those above first' },
  ];
}
