import { applyChange, changeBetween, revertChange, type TextChange } from './text-change.ts';

/** One step that undo takes back. */
export interface HistoryStep {
  readonly change: TextChange;
  /** What was done, for the undo button: `Front: stop gap`. */
  readonly label: string;
  /** Steps of one gesture run together: a reading typed letter by letter is one step. Null never merges. */
  readonly gesture: string | null;
}

/** A text and how it came to be. Rules H1 to H6 in README.md. */
export interface History {
  readonly text: string;
  readonly past: readonly HistoryStep[];
  readonly future: readonly HistoryStep[];
}

/** Steps kept. At about 50 bytes a step this costs nothing; it only keeps a very long day bounded. */
const STEPS_KEPT = 2000;

export const startHistory = (text: string): History => ({ text, past: [], future: [] });

/** H1: a change that changes nothing leaves no step. H2: steps of one gesture merge. H3: what was undone is dropped. */
export function record(
  history: History,
  text: string,
  step: { readonly label: string; readonly gesture: string | null },
): History {
  if (text === history.text) return history;
  const last = history.past.at(-1);
  if (last !== undefined && step.gesture !== null && last.gesture === step.gesture) {
    const before = revertChange(history.text, last.change);
    const past = history.past.slice(0, -1);
    if (before === text) return { text, past, future: [] };
    return { text, past: [...past, { ...last, change: changeBetween(before, text) }], future: [] };
  }
  const past = [...history.past, { ...step, change: changeBetween(history.text, text) }];
  return { text, past: past.slice(-STEPS_KEPT), future: [] };
}

/** H4: the next change starts a step of its own, even at the same place. Called when a field is left. */
export function endGesture(history: History): History {
  const last = history.past.at(-1);
  if (last === undefined || last.gesture === null) return history;
  return { ...history, past: [...history.past.slice(0, -1), { ...last, gesture: null }] };
}

/** H5: undo gives back exactly the text that stood there before. */
export function undo(history: History): History {
  const last = history.past.at(-1);
  if (last === undefined) return history;
  return {
    text: revertChange(history.text, last.change),
    past: history.past.slice(0, -1),
    future: [{ ...last, gesture: null }, ...history.future],
  };
}

/** H6: redo after undo gives back exactly the text that stood there after. */
export function redo(history: History): History {
  const next = history.future[0];
  if (next === undefined) return history;
  return {
    text: applyChange(history.text, next.change),
    past: [...history.past, next],
    future: history.future.slice(1),
  };
}
