import type { Problem } from '@lastinch/core';
import { createStore, type Store } from './store.ts';

/** What comes back from a worker that answers one question at a time. */
export type FromWorker<Answer> =
  | { readonly kind: 'progress'; readonly id: number; readonly share: number }
  | { readonly kind: 'done'; readonly id: number; readonly answer: Answer }
  | { readonly kind: 'refused'; readonly id: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'broken'; readonly id: number; readonly message: string };

/** What is needed of a worker: the browser's own, or a stand-in in tests. */
export interface DeskWorker<Asked, Answer> {
  postMessage(message: Asked): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromWorker<Answer> }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
}

/** How one question stands. Scope: session; an answer is never saved, it follows from what was asked. */
export interface WorkState<Question, Answer> {
  readonly status: 'none' | 'working' | 'done' | 'cancelled' | 'refused' | 'broken';
  /** Share of what runs, 0…1, never falling. */
  readonly share: number;
  /** The last answer that came back, and what it answers. Stays in view while a newer one is worked out. */
  readonly answer: Answer | null;
  readonly answers: Question | null;
  /** What runs, or ran last. */
  readonly asked: Question | null;
  /** Why what was asked last has no answer. */
  readonly problems: readonly Problem[];
  readonly message: string;
}

export interface WorkDesk<Question, Answer> {
  readonly state: Store<WorkState<Question, Answer>>;
  /** The latest question wins; one that is being answered, or by itself was already, is not asked again. */
  ask(question: Question, how?: { readonly byHand: boolean }): void;
  /** Stops what runs; what has come back stays. */
  cancel(): void;
}

/** Asks a worker of its own, away from the page, and keeps what comes back. */
export function createWorkDesk<Question extends object, Answer, Asked>(
  spawn: () => DeskWorker<Asked, Answer>,
  messageOf: (id: number, question: Question) => Asked,
): WorkDesk<Question, Answer> {
  const state = createStore<WorkState<Question, Answer>>({
    status: 'none',
    share: 0,
    answer: null,
    answers: null,
    asked: null,
    problems: [],
    message: '',
  });
  let worker: DeskWorker<Asked, Answer> | null = null;
  let id = 0;
  const put = (change: Partial<WorkState<Question, Answer>>): void =>
    state.set((now) => ({ ...now, ...change }));

  const discard = (): void => {
    if (worker === null) return;
    worker.onmessage = null;
    worker.onerror = null;
    worker.terminate();
    worker = null;
  };
  const broken = (message: string): void => {
    discard();
    put({ status: 'broken', message });
  };

  return {
    state,
    ask(question, { byHand } = { byHand: false }) {
      const { status, asked } = state.get();
      const isKnown = status === 'working' || (!byHand && (status === 'done' || status === 'refused'));
      if (isKnown && asked !== null && sameQuestion(asked, question)) return;
      // What runs cannot be interrupted from outside: it goes, and a fresh one takes over.
      if (status === 'working') discard();
      id += 1;
      const here = id;
      worker ??= spawn();
      worker.onmessage = ({ data }) => {
        if (data.id !== here) return;
        if (data.kind === 'progress') put({ share: Math.max(state.get().share, data.share) });
        else if (data.kind === 'refused') put({ status: 'refused', problems: data.problems });
        else if (data.kind === 'broken') broken(data.message);
        else put({ status: 'done', share: 1, answer: data.answer, answers: question });
      };
      worker.onerror = (event) => {
        event.preventDefault?.();
        broken(event.message ?? 'The worker stopped without saying why.');
      };
      put({ status: 'working', share: 0, asked: question, problems: [], message: '' });
      worker.postMessage(messageOf(here, question));
    },
    cancel() {
      if (state.get().status !== 'working') return;
      discard();
      put({ status: 'cancelled' });
    },
  };
}

/** A rig is an immutable value and is compared as one object; all else by what it says. */
export function sameQuestion(a: object, b: object | null): boolean {
  if (b === null) return false;
  const [one, other] = [a, b] as [Readonly<Record<string, unknown>>, Readonly<Record<string, unknown>>];
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].every((key) =>
    key === 'rig' ? one[key] === other[key] : JSON.stringify(one[key]) === JSON.stringify(other[key]),
  );
}
