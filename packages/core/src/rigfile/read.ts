import type { Problem, Result } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { type BuiltRig, buildRig } from './build.ts';
import { openDocument, type RigDocument } from './document.ts';
import { versionProblem } from './migrate/version.ts';
import type { ReadBeside } from './read-beside.ts';
import { shapeProblems } from './shape-check.ts';
import { type TypedQuantities, typedQuantities } from './typed.ts';

export interface ReadRigOptions {
  /** Name of the file for messages. */
  readonly file?: string;
  /** How a table file named in the rig is read; without it such a name is a problem. */
  readonly readBeside?: ReadBeside;
}

/** Everything that can be known of a file, even of one with problems. */
export interface RigReadout {
  readonly document: RigDocument | null;
  readonly typed: TypedQuantities | null;
  readonly built: BuiltRig | null;
  /** By line, then in the order found. */
  readonly problems: readonly Problem[];
}

/**
 * Reads a rig file: text → YAML → shape → quantities → rig. Every problem of all four is reported in one pass;
 * gaps with a sound estimate are filled and marked in `rig.assumptions`.
 *
 * @param text – the whole file
 * @returns The frozen rig, or all problems in the order of the file.
 * @failure problems of files, quantities and rig files (`finding/codes.ts`)
 */
export function readRig(text: string, options: ReadRigOptions = {}): Result<Rig> {
  const { built, problems } = readout(text, options);
  return built && problems.length === 0 ? { ok: true, value: built.rig } : { ok: false, problems };
}

/** The same, with everything that was found on the way: what the Measure step shows. */
export function readout(text: string, { file, readBeside }: ReadRigOptions = {}): RigReadout {
  const { document, problems: fileProblems } = openDocument(text, file);
  if (!document) return { document, typed: null, built: null, problems: fileProblems };
  const version = versionProblem(document);
  // A file of another version has other keys: every further message would mislead.
  if (version) return { document, typed: null, built: null, problems: [...fileProblems, version] };
  const typed = typedQuantities(document);
  const built = buildRig(document, typed, readBeside);
  const problems = [
    ...fileProblems,
    ...shapeProblems(document, typed.paths),
    ...typed.problems,
    ...built.problems,
  ];
  return { document, typed, built, problems: inFileOrder(problems) };
}

function inFileOrder(problems: readonly Problem[]): readonly Problem[] {
  const last = Number.MAX_SAFE_INTEGER;
  return [...problems].sort((a, b) => (a.where.line ?? last) - (b.where.line ?? last));
}
