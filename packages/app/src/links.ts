import type { LinksAnswer, Rig } from '@lastinch/core';
import { type Lane, SEED } from './answers.ts';
import { createStore, type Store } from './store.ts';

/** Two setups whose links are compared. A rig is an immutable value, so the same object is the same question. */
export interface LinksQuestion {
  readonly rig: Rig;
  readonly now: string;
  readonly proposed: string;
}

export interface ToLinksWorker {
  readonly id: number;
  readonly question: LinksQuestion;
  readonly seed: number;
}

export type FromLinksWorker =
  | { readonly kind: 'answer'; readonly id: number; readonly lane: Lane; readonly answer: LinksAnswer }
  | { readonly kind: 'done'; readonly id: number }
  | { readonly kind: 'broken'; readonly id: number; readonly message: string };

/** What is needed of a worker: the browser's own, or a stand-in in tests. */
export interface LinksWorker {
  postMessage(message: ToLinksWorker): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromLinksWorker }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
}

/** How the knock-on list stands. Scope: session; it is never saved, it follows from the rig file. */
export interface LinksState {
  readonly status: 'none' | 'working' | 'done' | 'broken';
  /** What came back last, and what it answers. Stays in view while a newer one is worked out. */
  readonly answers: Readonly<Record<Lane, LinksAnswer | null>>;
  readonly answered: LinksQuestion | null;
  readonly message: string;
}

export interface LinksDesk {
  readonly state: Store<LinksState>;
  /** The latest question wins; one that is already answered or being answered is not asked again. */
  ask(question: LinksQuestion): void;
}

const NOTHING: LinksState = {
  status: 'none',
  answers: { now: null, proposed: null },
  answered: null,
  message: '',
};

/** Has the whole list with all its trials worked out away from the page, so that nobody waits for it while typing. */
export function createLinksDesk(spawn: () => LinksWorker): LinksDesk {
  const state = createStore(NOTHING);
  let worker: LinksWorker | null = null;
  let asked: LinksQuestion | null = null;
  let busy = false;
  let id = 0;
  const put = (change: Partial<LinksState>): void => state.set((now) => ({ ...now, ...change }));

  const discard = (): void => {
    if (worker === null) return;
    worker.onmessage = null;
    worker.onerror = null;
    worker.terminate();
    worker = null;
  };
  const broken = (message: string): void => {
    busy = false;
    asked = null;
    discard();
    put({ status: 'broken', message });
  };

  return {
    state,
    ask(question) {
      if (asked !== null && sameQuestion(asked, question)) return;
      // What runs cannot be interrupted from outside: it goes, and a fresh one takes over.
      if (busy) discard();
      asked = question;
      busy = true;
      id += 1;
      const here = id;
      worker ??= spawn();
      worker.onmessage = ({ data }) => {
        if (data.id !== here) return;
        if (data.kind === 'broken') broken(data.message);
        else if (data.kind === 'done') {
          busy = false;
          put({ status: 'done' });
        } else
          state.set((now) => ({
            ...now,
            answered: question,
            answers:
              question.now === question.proposed
                ? { now: data.answer, proposed: data.answer }
                : { ...now.answers, [data.lane]: data.answer },
          }));
      };
      worker.onerror = (event) => {
        event.preventDefault?.();
        broken(event.message ?? 'The worker stopped without saying why.');
      };
      put({ status: 'working', message: '' });
      worker.postMessage({ id: here, question, seed: SEED });
    },
  };
}

const sameQuestion = (a: LinksQuestion, b: LinksQuestion): boolean =>
  a.rig === b.rig && a.now === b.now && a.proposed === b.proposed;

/** The browser's own worker; its script is fetched when links are first asked for. */
export const spawnLinksWorker = (): LinksWorker =>
  new Worker(new URL('./hosts/links-worker.ts', import.meta.url), {
    type: 'module',
    name: 'links',
  }) as LinksWorker;
