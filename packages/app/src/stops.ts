import type { Problem } from '@lastinch/core';
import type {
  BandAsked,
  NeedDesign,
  StopDesign,
  StopDesignRequest,
  StopEstimate,
  StopEstimateRequest,
  StopFit,
  StopFitRequest,
  StopNeed,
  StopNeedRequest,
} from '@lastinch/core/stops';
import { createSolidDesk, type MeshWorker, type SolidDesk } from './solids.ts';
import { createStore, type Store } from './store.ts';

/** What can be asked about stops, by job. */
export interface StopQuestions {
  readonly need: StopNeedRequest;
  readonly fit: StopFitRequest;
  readonly estimate: StopEstimateRequest;
  readonly design: StopDesignRequest;
  readonly forNeed: ForNeedQuestion;
}
/** A printed stop of this shape for an end that is asked about as in `need`. */
export interface ForNeedQuestion extends BandAsked {
  readonly shape: PrintShape;
}
export type PrintShape = Omit<StopDesignRequest, 'target' | 'density'>;
export interface StopAnswers {
  readonly need: StopNeed;
  readonly fit: StopFit;
  readonly estimate: StopEstimate;
  readonly design: StopDesign;
  readonly forNeed: NeedDesign;
}
export type StopJob = keyof StopQuestions;

export type ToStopWorker = {
  readonly [Job in StopJob]: {
    readonly id: number;
    readonly job: Job;
    readonly question: StopQuestions[Job];
  };
}[StopJob];

export type FromStopWorker =
  | { readonly kind: 'progress'; readonly id: number; readonly share: number }
  | { readonly kind: 'done'; readonly id: number; readonly answer: StopAnswers[StopJob] }
  | { readonly kind: 'refused'; readonly id: number; readonly problems: readonly Problem[] }
  | { readonly kind: 'broken'; readonly id: number; readonly message: string };

/** What is needed of a worker: the browser's own, or a stand-in in tests. */
export interface StopWorker {
  postMessage(message: ToStopWorker): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromStopWorker }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
}

/** How one question stands. Scope: session; an answer is never saved, it follows from what was asked. */
export interface StopState<Job extends StopJob> {
  readonly status: 'none' | 'working' | 'done' | 'cancelled' | 'refused' | 'broken';
  /** Share of what runs, 0…1, never falling. */
  readonly share: number;
  /** The last answer that came back, and what it answers. Stays in view while a newer one is worked out. */
  readonly answer: StopAnswers[Job] | null;
  readonly answers: StopQuestions[Job] | null;
  /** What runs, or ran last. */
  readonly asked: StopQuestions[Job] | null;
  /** Why what was asked last has no answer. */
  readonly problems: readonly Problem[];
  readonly message: string;
}

export interface StopDesk<Job extends StopJob> {
  readonly state: Store<StopState<Job>>;
  /** The latest question wins; one that is being answered, or by itself was already, is not asked again. */
  ask(question: StopQuestions[Job], how?: { readonly byHand: boolean }): void;
  /** Stops what runs; what has come back stays. */
  cancel(): void;
}

export interface StopDesks {
  /** One for each end in each setup, so that what was found for one stays while another is looked at. */
  need(place: string): StopDesk<'need'>;
  readonly fit: StopDesk<'fit'>;
  readonly estimate: StopDesk<'estimate'>;
  readonly design: StopDesk<'design'>;
  readonly forNeed: StopDesk<'forNeed'>;
  readonly solid: SolidDesk;
  /** What was typed into the step, by name of the field. Scope: session. */
  readonly forms: Store<Readonly<Record<string, string>>>;
}

export function createStopDesks(spawn: () => StopWorker, spawnMesh: () => MeshWorker): StopDesks {
  const needs = new Map<string, StopDesk<'need'>>();
  return {
    need(place) {
      const desk = needs.get(place) ?? createStopDesk('need', spawn);
      needs.set(place, desk);
      return desk;
    },
    fit: createStopDesk('fit', spawn),
    estimate: createStopDesk('estimate', spawn),
    design: createStopDesk('design', spawn),
    forNeed: createStopDesk('forNeed', spawn),
    solid: createSolidDesk(spawnMesh),
    forms: createStore({}),
  };
}

/** Asks a worker of its own, away from the page, and keeps what comes back. */
export function createStopDesk<Job extends StopJob>(job: Job, spawn: () => StopWorker): StopDesk<Job> {
  const state = createStore<StopState<Job>>({
    status: 'none',
    share: 0,
    answer: null,
    answers: null,
    asked: null,
    problems: [],
    message: '',
  });
  let worker: StopWorker | null = null;
  let id = 0;
  const put = (change: Partial<StopState<Job>>): void => state.set((now) => ({ ...now, ...change }));

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
        else put({ status: 'done', share: 1, answer: data.answer as StopAnswers[Job], answers: question });
      };
      worker.onerror = (event) => {
        event.preventDefault?.();
        broken(event.message ?? 'The worker stopped without saying why.');
      };
      put({ status: 'working', share: 0, asked: question, problems: [], message: '' });
      worker.postMessage({ id: here, job, question } as ToStopWorker);
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

/** The browser's own worker; its script is fetched when a stop is first asked about. */
export const spawnStopWorker = (): StopWorker =>
  new Worker(new URL('./hosts/stop-worker.ts', import.meta.url), {
    type: 'module',
    name: 'stop',
  }) as StopWorker;
