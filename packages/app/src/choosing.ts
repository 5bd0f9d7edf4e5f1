import type { Problem, Rig, WorkOutcome } from '@lastinch/core';
import type { ChooseAnswer, ChooseRequest, PartAnswers, Want } from '@lastinch/core/choose';
import { createStore, type Store } from './store.ts';

/** Pieces of a study that came in, and what is needed to go on from them. */
export interface ChooseHands {
  /** Does what is not done yet. Each piece is told as it comes in. */
  start(
    request: ChooseRequest,
    done: PartAnswers,
    tell: { readonly onShare: (share: number) => void; readonly onPieces: (done: PartAnswers) => void },
  ): { readonly outcome: Promise<WorkOutcome<PartAnswers>>; cancel(): void };
  /** Makes the answer of all pieces, away from the page. */
  answer(request: ChooseRequest, done: PartAnswers): Promise<ChooseAnswer>;
  /** Pieces of this very study that were kept by an earlier visit. */
  recall(request: ChooseRequest): Promise<PartAnswers>;
  keep(request: ChooseRequest, done: PartAnswers): void;
}

/** How the study stands. Scope: session; what came in is kept on this machine so that it need not be done twice. */
export interface ChooseState {
  readonly status: 'none' | 'working' | 'answering' | 'done' | 'cancelled' | 'refused' | 'broken';
  readonly share: number;
  /** The last answer that came back, and what it answers. Stays in view while a newer one is worked out. */
  readonly answer: ChooseAnswer | null;
  readonly answers: ChooseRequest | null;
  readonly asked: ChooseRequest | null;
  readonly problems: readonly Problem[];
  readonly message: string;
  /** Pieces that are there already of the question in view. */
  readonly kept: { readonly request: ChooseRequest; readonly pieces: number } | null;
}

/** What somebody looks at in the answer. Scope: session. */
export interface ChooseView {
  readonly trials: number;
  readonly x: Want;
  readonly y: Want;
  /** By want: the most that is asked for; the least of what shall be much. */
  readonly most: Readonly<Partial<Record<Want, number>>>;
  /** Number of the candidate that is looked at. */
  readonly chosen: number | null;
}

export interface ChooseDesk {
  readonly state: Store<ChooseState>;
  readonly view: Store<ChooseView>;
  /** Begins, or goes on where an earlier visit or a cancelled run ended. */
  ask(request: ChooseRequest): void;
  /** Stops what runs; the pieces that came in stay. */
  cancel(): void;
  /** Looks how much of a study is there already. */
  look(request: ChooseRequest): void;
}

/**
 * The part of a rig that a study depends on: of the setups only the one that is started from, so that a proposal made
 * of the answer does not make the answer old.
 */
export function requestOf(rig: Rig, trials: number, seed: number): ChooseRequest {
  const from = rig.choices?.from;
  const setup = from === undefined ? undefined : rig.setups[from];
  const setups = from === undefined || setup === undefined ? {} : { [from]: setup };
  return { rig: { ...rig, setups, assumptions: [] }, trials, seed };
}

const NO_STUDY: ChooseState = {
  status: 'none',
  share: 0,
  answer: null,
  answers: null,
  asked: null,
  problems: [],
  message: '',
  kept: null,
};

export const isBusy = ({ status }: ChooseState): boolean => status === 'working' || status === 'answering';

/** @param load – fetches who does the work, with the first study that is asked for */
export function createChooseDesk(load: () => Promise<ChooseHands>): ChooseDesk {
  const state = createStore(NO_STUDY);
  const view = createStore<ChooseView>({ trials: 16, x: 'lift', y: 'harshness', most: {}, chosen: null });
  const put = (change: Partial<ChooseState>): void => state.set((now) => ({ ...now, ...change }));
  let loading: Promise<ChooseHands> | null = null;
  const hands = (): Promise<ChooseHands> => {
    loading ??= load().catch((error: unknown) => {
      loading = null;
      throw error;
    });
    return loading;
  };
  let stop: (() => void) | null = null;
  /** The question that is being worked on; null as soon as nobody wants that any more. */
  let wanted: ChooseRequest | null = null;

  const run = async (request: ChooseRequest): Promise<void> => {
    const by = await hands();
    const before = await by.recall(request);
    if (wanted !== request) return;
    const work = by.start(request, before, {
      onShare: (share) => {
        if (wanted === request) put({ share: Math.max(state.get().share, share) });
      },
      onPieces: (done) => {
        by.keep(request, done);
        if (wanted === request) put({ kept: { request, pieces: done.length } });
      },
    });
    stop = () => work.cancel();
    const outcome = await work.outcome;
    if (wanted !== request) return;
    stop = null;
    switch (outcome.kind) {
      case 'done': {
        put({ status: 'answering', share: 1 });
        const answer = await by.answer(request, outcome.answer);
        if (wanted !== request) return;
        view.set((now) => lookAt(now, answer));
        return put({ status: 'done', answer, answers: request });
      }
      case 'cancelled':
        return put({ status: 'cancelled' });
      case 'refused':
        return put({ status: 'refused', problems: outcome.problems });
      case 'broken':
        return put({ status: 'broken', message: outcome.message });
    }
  };

  return {
    state,
    view,
    ask(request) {
      const before = stop;
      stop = null;
      wanted = request;
      before?.();
      put({ status: 'working', share: 0, asked: request, problems: [], message: '' });
      run(request).catch((error: unknown) => {
        if (wanted !== request) return;
        put({ status: 'broken', message: error instanceof Error ? error.message : String(error) });
      });
    },
    cancel() {
      if (wanted === null || !isBusy(state.get())) return;
      const before = stop;
      stop = null;
      wanted = null;
      before?.();
      put({ status: 'cancelled' });
    },
    look(request) {
      void hands()
        .then((by) => by.recall(request))
        .then((done) => put({ kept: done.length === 0 ? null : { request, pieces: done.length } }))
        // Nothing kept is no trouble: it is done again.
        .catch(() => undefined);
    },
  };
}

/** Axes on which members differ, and a member that the answer has. */
function lookAt(view: ChooseView, { wants, members }: ChooseAnswer): ChooseView {
  const telling = wants.filter((want) => new Set(members.map((one) => one.wants[want]?.middle)).size > 1);
  const x = telling.includes(view.x) ? view.x : (telling[0] ?? wants[0] ?? view.x);
  const others = [...telling, ...wants].filter((want) => want !== x);
  return {
    ...view,
    x,
    y: view.y !== x && telling.includes(view.y) ? view.y : (others[0] ?? view.y),
    most: Object.fromEntries(Object.entries(view.most).filter(([want]) => wants.includes(want as Want))),
    chosen: members.some(({ index }) => index === view.chosen) ? view.chosen : (members[0]?.index ?? null),
  };
}
