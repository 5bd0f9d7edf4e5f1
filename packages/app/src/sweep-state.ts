import type { SweepAnswer, SweepRequest } from '@lastinch/core';
import type { Store } from './store.ts';

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

export const NO_SWEEP: SweepState = {
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

export const isBusy = ({ status }: SweepState): boolean => status === 'scanning' || status === 'sharpening';
