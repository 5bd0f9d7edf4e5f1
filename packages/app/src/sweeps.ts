import {
  type Crew,
  problemText,
  type SweepAnswer,
  startSweep,
  TRIALS_FOR_COVERAGE,
  type Work,
} from '@lastinch/core';
import { SEED } from './answers.ts';
import { createStore } from './store.ts';
import { isBusy, NO_SWEEP, type SweepDesk, type SweepQuestion, type SweepState } from './sweep-state.ts';

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
