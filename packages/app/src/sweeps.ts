import {
  type Crew,
  problemText,
  type SweepAnswer,
  type SweepRequest,
  startSweep,
  TRIALS_FOR_COVERAGE,
  type Work,
} from '@lastinch/core';
import { SEED } from './answers.ts';
import { createStore, type Store } from './store.ts';

/** What is asked, apart from how surely. */
export type SweepQuestion = Omit<SweepRequest, 'trials' | 'seed'>;

/** How the sweep stands. Scope: session; a sweep is never saved, it follows from the rig file. */
export interface SweepState {
  /** `scanning`: the rigs as measured; `sharpening`: those are there, and the trials that make ranges are running. */
  readonly status: 'none' | 'scanning' | 'sharpening' | 'done' | 'cancelled' | 'broken';
  /** Share of what runs, 0…1. */
  readonly share: number;
  /** The last answer that came back, and what it answers. Stays in view while a newer one is computed. */
  readonly answer: SweepAnswer | null;
  readonly answers: SweepQuestion | null;
  /** What runs, or ran last. */
  readonly asked: SweepQuestion | null;
  readonly message: string;
}

const NO_SWEEP: SweepState = {
  status: 'none',
  share: 0,
  answer: null,
  answers: null,
  asked: null,
  message: '',
};

export interface SweepDesk {
  readonly sweep: Store<SweepState>;
  /** Asks anew; what runs is stopped. */
  ask(question: SweepQuestion): void;
  /** Stops what runs; what has come back stays. */
  cancel(): void;
}

/** Shares sweeps out over a crew and keeps what comes back. First without trials, which is quick, then with them. */
export function createSweepDesk(crew: Crew): SweepDesk {
  const sweep = createStore(NO_SWEEP);
  let running: Work<SweepAnswer> | null = null;
  /** The question that is being answered; another one, or none, as soon as nobody wants that any more. */
  let wanted: SweepQuestion | null = null;
  const put = (change: Partial<SweepState>): void => sweep.set((state) => ({ ...state, ...change }));

  const run = async (question: SweepQuestion, trials: number): Promise<'done' | 'over'> => {
    const work = startSweep({ ...question, trials, seed: SEED }, crew, {
      onProgress: (share) => {
        if (running === work) put({ share });
      },
    });
    running = work;
    const outcome = await work.outcome;
    if (running !== work) return 'over';
    running = null;
    switch (outcome.kind) {
      case 'done':
        put({ answer: outcome.answer, answers: question, share: 1 });
        return 'done';
      case 'cancelled':
        return 'over';
      case 'refused':
        put({ status: 'broken', message: outcome.problems.map(problemText).join(' ') });
        return 'over';
      case 'broken':
        put({ status: 'broken', message: outcome.message });
        return 'over';
    }
  };

  const both = async (question: SweepQuestion): Promise<void> => {
    put({ status: 'scanning', share: 0, asked: question, message: '' });
    if ((await run(question, 0)) === 'over' || wanted !== question) return;
    put({ status: 'sharpening', share: 0 });
    if ((await run(question, TRIALS_FOR_COVERAGE)) === 'done' && wanted === question) put({ status: 'done' });
  };

  return {
    sweep,
    ask(question) {
      const before = running;
      running = null;
      wanted = question;
      before?.cancel();
      void both(question);
    },
    cancel() {
      if (wanted === null || !isBusy(sweep.get())) return;
      const before = running;
      running = null;
      wanted = null;
      before?.cancel();
      put({ status: 'cancelled' });
    },
  };
}

export const isBusy = ({ status }: SweepState): boolean => status === 'scanning' || status === 'sharpening';
