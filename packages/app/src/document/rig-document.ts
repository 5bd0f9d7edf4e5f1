import type { AssumptionRule, Problem, Rig } from '@lastinch/core';
import { editRig, type FieldState, fieldsOf, readRig } from '@lastinch/core/rigfile';
import { endGesture, type History, record, redo, startHistory, undo } from './history.ts';

/** One change of the rig file: what stands at a key becomes this text; null takes the key away. */
export interface RigEdit {
  readonly path: readonly string[];
  readonly text: string | null;
}

/**
 * The document: the text of the rig file, and what was understood of it. Rules R1 to R5 in README.md.
 * Everything but `history`, `fileName` and `savedText` follows from the text.
 */
export interface RigDocument {
  readonly fileName: string;
  /** Text as it stands on disk; null when it is on no disk of the owner (the demo). */
  readonly savedText: string | null;
  readonly history: History;
  /** Every reading that the file can hold, with what is typed there. */
  readonly fields: readonly FieldState[];
  /** By which rule the program filled a value or a tolerance, by key of the reading. */
  readonly rules: ReadonlyMap<string, AssumptionRule>;
  /** What is wrong with the text as it stands; empty when all of it was understood. */
  readonly problems: readonly Problem[];
  /** The last rig that was understood whole: it stays in view while the text has problems. */
  readonly rig: Rig | null;
  /** True when `rig` is what the text says. */
  readonly rigIsCurrent: boolean;
  /** Why the last edit could not be put into the text, for example because the text is not YAML just now. */
  readonly refused: readonly Problem[];
}

export function openDocument(text: string, fileName: string, savedText: string | null): RigDocument {
  return understood({
    fileName,
    savedText,
    history: startHistory(text),
    fields: [],
    rules: new Map(),
    problems: [],
    rig: null,
    rigIsCurrent: false,
    refused: [],
  });
}

/** R1, R2: puts typed texts into the file; comments and everything else stay as they are. */
export function editDocument(
  document: RigDocument,
  edits: readonly RigEdit[],
  step: { readonly label: string; readonly gesture: string | null },
): RigDocument {
  const edited = editRig(document.history.text, edits);
  if (!edited.ok) return { ...document, refused: edited.problems };
  return replaceText(document, edited.value, step);
}

/** The whole text at once: the rig file typed by hand, or taken again from disk. */
export function replaceText(
  document: RigDocument,
  text: string,
  step: { readonly label: string; readonly gesture: string | null },
): RigDocument {
  return withHistory(document, record(document.history, text, step));
}

export const leaveField = (document: RigDocument): RigDocument => {
  const history = endGesture(document.history);
  return history === document.history ? document : { ...document, history };
};
export const undoDocument = (document: RigDocument): RigDocument =>
  withHistory(document, undo(document.history));
export const redoDocument = (document: RigDocument): RigDocument =>
  withHistory(document, redo(document.history));

/** R5: saved means that the text on disk is the text on screen, whichever way it came about. */
export const isSaved = (document: RigDocument): boolean => document.history.text === document.savedText;

/** True when closing the page would lose something: the untouched demo is nobody's loss. */
export const wouldLose = (document: RigDocument): boolean =>
  !isSaved(document) && (document.savedText !== null || document.history.past.length > 0);

function withHistory(document: RigDocument, history: History): RigDocument {
  if (history.text === document.history.text) return { ...document, history, refused: [] };
  return understood({ ...document, history });
}

/** R3, R4: reads the text; the last good rig stays when it cannot be read whole. */
function understood(document: RigDocument): RigDocument {
  const text = document.history.text;
  const read = readRig(text, { file: document.fileName });
  const fields = keepUnchanged(document.fields, fieldsOf(text));
  if (read.ok) {
    const rig = read.value;
    const rules = new Map(rig.assumptions.map(({ key, rule }) => [key, rule]));
    return { ...document, fields, rules, problems: [], rig, rigIsCurrent: true, refused: [] };
  }
  return { ...document, fields, problems: read.problems, rigIsCurrent: false, refused: [] };
}

/** Fields that say the same stay the same object, so that their rows need not be drawn again. */
function keepUnchanged(before: readonly FieldState[], after: readonly FieldState[]): readonly FieldState[] {
  const known = new Map(before.map((field) => [field.path.join('.'), field]));
  return after.map((field) => {
    const old = known.get(field.path.join('.'));
    return old !== undefined && JSON.stringify(old) === JSON.stringify(field) ? old : field;
  });
}
