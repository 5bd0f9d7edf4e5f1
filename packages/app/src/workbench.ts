import type { Rig } from '@lastinch/core';
import { type Answers, answersFor, comparedSetups, NO_ANSWER, QUICK_TRIALS } from './answers.ts';
import {
  editDocument,
  leaveField,
  openDocument,
  type RigDocument,
  type RigEdit,
  redoDocument,
  replaceText,
  undoDocument,
  wouldLose,
} from './document/rig-document.ts';
import {
  type Home,
  type OpenedFile,
  openFile,
  openServed,
  type SaveOutcome,
  saveCopy,
  saveFile,
} from './keep/files.ts';
import { remember, type Session, startSession } from './session.ts';
import { createStore, type Store } from './store.ts';

/** Where the document lives, and what came of the last opening or saving. Scope: session. */
export interface Filing {
  readonly home: Home;
  readonly busy: boolean;
  readonly notice: { readonly kind: 'done' | 'trouble' | 'changed-on-disk'; readonly text: string } | null;
}

/** Everything that the workbench knows and can do. Views get values and these commands, nothing else. */
export interface Workbench {
  readonly document: Store<RigDocument>;
  readonly session: Store<Session>;
  readonly answers: Store<Answers>;
  readonly filing: Store<Filing>;
  edit(edits: readonly RigEdit[], step: { readonly label: string; readonly gesture: string | null }): void;
  editText(text: string): void;
  leaveField(): void;
  undo(): void;
  redo(): void;
  choose(change: Partial<Session>): void;
  open(): Promise<void>;
  save(): Promise<void>;
  saveElsewhere(): Promise<void>;
  takeFromDisk(): Promise<void>;
  dismissNotice(): void;
}

/** Pause in typing after which the figures are computed with all trials. */
const SETTLE_MS = 300;

export function createWorkbench(start: OpenedFile): Workbench {
  const document = createStore(documentOf(start));
  const session = createStore(startSession());
  const answers = createStore<Answers>({ now: NO_ANSWER, proposed: NO_ANSWER });
  const filing = createStore<Filing>({ home: start.home, busy: false, notice: null });

  let settling: ReturnType<typeof setTimeout> | undefined;
  let asked: { rig: Rig; now: string; proposed: string } | null = null;

  /** Answers both setups at once with few trials, and with all of them when typing has paused. */
  const answer = (): void => {
    const rig = document.get().rig;
    if (rig === null) return;
    const pair = comparedSetups(rig, session.get());
    if (asked?.rig === rig && asked.now === pair.now && asked.proposed === pair.proposed) return;
    asked = { rig, ...pair };
    answers.set(() => answersFor(rig, pair, QUICK_TRIALS));
    clearTimeout(settling);
    settling = setTimeout(() => answers.set(() => answersFor(rig, pair)), SETTLE_MS);
  };
  document.subscribe(answer);
  session.subscribe(answer);
  session.subscribe(() => remember(session.get()));
  answer();

  const opened = (file: OpenedFile, notice: Filing['notice']): void => {
    document.set(() => documentOf(file));
    session.set((state) => ({
      ...state,
      now: null,
      proposed: null,
      course: null,
      speedText: null,
      corner: null,
    }));
    filing.set(() => ({ home: file.home, busy: false, notice }));
  };

  const afterSaving = (text: string, outcome: SaveOutcome): void => {
    if (outcome.kind === 'saved')
      document.set((state) => ({ ...state, fileName: outcome.name, savedText: text }));
    filing.set((state) => ({
      home: outcome.kind === 'saved' ? outcome.home : state.home,
      busy: false,
      notice: noticeOf(outcome),
    }));
  };

  const saveBy = async (write: (text: string, state: RigDocument) => Promise<SaveOutcome>): Promise<void> => {
    if (filing.get().busy) return;
    document.set(leaveField);
    const state = document.get();
    filing.set((now) => ({ ...now, busy: true, notice: null }));
    afterSaving(state.history.text, await write(state.history.text, state));
  };

  return {
    document,
    session,
    answers,
    filing,
    edit: (edits, step) => document.set((state) => editDocument(state, edits, step)),
    editText: (text) =>
      document.set((state) => replaceText(state, text, { label: 'the rig file as text', gesture: 'text' })),
    leaveField: () => document.set(leaveField),
    undo: () => document.set(undoDocument),
    redo: () => document.set(redoDocument),
    choose: (change) => session.set((state) => ({ ...state, ...change })),
    async open() {
      if (
        wouldLose(document.get()) &&
        !window.confirm('Open another rig? What was changed here is not saved.')
      )
        return;
      const file = await openFile();
      if (file === null) return;
      if ('refused' in file)
        filing.set((state) => ({ ...state, notice: { kind: 'trouble', text: file.refused } }));
      else opened(file, null);
    },
    save: () => saveBy((text, state) => saveFile(text, state.fileName, filing.get().home)),
    saveElsewhere: () => saveBy((text, state) => saveCopy(text, state.fileName, null)),
    /** Takes the text that is on disk now; undo brings back what was typed here. */
    async takeFromDisk() {
      const file = await openServed();
      if (file === null) return;
      document.set((state) => ({
        ...replaceText(state, file.text, { label: 'the file on disk', gesture: null }),
        savedText: file.text,
      }));
      filing.set(() => ({ home: file.home, busy: false, notice: null }));
    },
    dismissNotice: () => filing.set((state) => ({ ...state, notice: null })),
  };
}

const documentOf = (file: OpenedFile): RigDocument =>
  openDocument(file.text, file.name, file.home.kind === 'nowhere' ? null : file.text);

function noticeOf(outcome: SaveOutcome): Filing['notice'] {
  switch (outcome.kind) {
    case 'saved':
      return { kind: 'done', text: `Saved ${outcome.name}` };
    case 'given-up':
      return null;
    case 'changed-on-disk':
      return {
        kind: 'changed-on-disk',
        text: 'The file on disk was changed since it was opened here. Nothing was overwritten.',
      };
    case 'failed':
      return { kind: 'trouble', text: `Not saved. ${outcome.because}` };
  }
}
