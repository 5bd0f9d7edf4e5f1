import type { RideAnswer, RideRequest } from '@lastinch/core';
import { LANES, type Lane, SEED } from './answers.ts';
import type { RideHost, RideOutcome } from './hosts/browser-worker.ts';
import { createStore, type Store } from './store.ts';

/** How the ride of one setup stands. Scope: session; a ride is never saved, it follows from the rig file. */
export interface LaneRide {
  /** `riding`: the nominal ride; `sharpening`: it is there, and the trials that make its intervals are running. */
  readonly status: 'none' | 'riding' | 'sharpening' | 'done' | 'broken';
  /** Share of the trials done, 0…1. */
  readonly share: number;
  /** The last answer that came back, and what it answers. Stays in view while a newer one is computed. */
  readonly answer: RideAnswer | null;
  readonly answers: RideQuestion | null;
  readonly message: string;
}

/** What is asked of the worker, apart from how finely. */
export type RideQuestion = Omit<RideRequest, 'historyRate' | 'trials' | 'seed'>;

export type Rides = Readonly<Record<Lane, LaneRide>>;

/** Samples a second of the histories: five to ten on the shortest stop hit of a heavy rig. */
const HISTORY_RATE = 500;
/** Runs over the tolerances; the 95 % interval of a peak is then itself known to about a tenth. */
const TRIALS = 64;

const NO_RIDE: LaneRide = { status: 'none', share: 0, answer: null, answers: null, message: '' };

export interface RideDesk {
  readonly rides: Store<Rides>;
  /** Asks for both rides; a question that is already answered or being answered is not asked again. */
  ask(questions: Readonly<Record<Lane, RideQuestion | null>>): void;
  forget(): void;
}

/** Asks a host for rides and keeps what comes back. First the nominal ride, then the one with its intervals. */
export function createRideDesk(host: RideHost): RideDesk {
  const rides = createStore<Rides>({ now: NO_RIDE, proposed: NO_RIDE });
  const asked: Record<Lane, RideQuestion | null> = { now: null, proposed: null };

  const put = (lane: Lane, change: Partial<LaneRide>): void =>
    rides.set((state) => ({ ...state, [lane]: { ...state[lane], ...change } }));

  const run = async (lane: Lane, question: RideQuestion): Promise<void> => {
    put(lane, { status: 'riding', share: 0, message: '' });
    const ask = (trials: number, historyRate: number, onProgress?: (share: number) => void) =>
      host.ride(lane, { ...question, historyRate, trials, seed: SEED }, onProgress);
    /** True when the outcome is not, or no longer, what is wanted. */
    const isOver = (outcome: RideOutcome): outcome is Exclude<RideOutcome, { kind: 'done' }> => {
      if (outcome.kind === 'stale' || asked[lane] !== question) return true;
      if (outcome.kind === 'done') return false;
      asked[lane] = null;
      put(lane, { status: 'broken', message: outcome.message });
      return true;
    };
    const nominal = await ask(0, HISTORY_RATE);
    if (isOver(nominal)) return;
    put(lane, { status: 'sharpening', answer: nominal.answer, answers: question, share: 0 });
    const sharpened = await ask(TRIALS, 0, (share) => put(lane, { share }));
    if (isOver(sharpened)) return;
    // The run is the same; the one that is shown already holds the histories.
    const answer = { ...sharpened.answer, run: nominal.answer.run };
    put(lane, { status: 'done', answer, answers: question, share: 1 });
  };

  return {
    rides,
    ask(questions) {
      for (const lane of LANES) {
        const question = questions[lane];
        if (question === null || sameQuestion(asked[lane], question)) continue;
        asked[lane] = question;
        void run(lane, question);
      }
    },
    forget() {
      for (const lane of LANES) {
        asked[lane] = null;
        host.stop(lane);
      }
      rides.set(() => ({ now: NO_RIDE, proposed: NO_RIDE }));
    },
  };
}

/** A rig and a course are immutable values, so the same object is the same question. */
const sameQuestion = (a: RideQuestion | null, b: RideQuestion): boolean =>
  a !== null && a.rig === b.rig && a.setup === b.setup && a.course === b.course && a.speed === b.speed;
