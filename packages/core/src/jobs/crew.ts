import type { Problem } from '../finding/problem.ts';
import type { Bench } from './bench.ts';
import { openBench, rowsOf, type WorkPlan } from './work.ts';
import type { WorkAsk, WorkReply } from './work-messages.ts';

/** One who does work: told a plan, then asked for its units, one stretch at a time. */
export interface Seat {
  /** Lays the plan out. Resolves to what is wrong with it, or to nothing. */
  open(plan: WorkPlan): Promise<readonly Problem[]>;
  /** Rows of units `from` … `to` − 1 of the plan opened last. Rejects when the worker broke: then it is of no more use. */
  rows(from: number, to: number): Promise<Float64Array>;
  /** Ends it, whatever it is doing; what it was asked for never comes. */
  end(): void;
}

/** Where work is done: the contract of every host, one thread or many. */
export interface Crew {
  /** How many can work beside each other. */
  readonly size: number;
  /** Time that passes [ms], from any start. */
  clock(): number;
  /** One who is free; a fresh one when none is. */
  take(): Seat;
  /** Takes back one who is done and whole, to be used again while it is warm. */
  giveBack(seat: Seat): void;
  close(): void;
}

/** What a host needs of a worker thread: the browser's own, Node's in the same dress, or a stand-in in tests. */
export interface WorkThread {
  postMessage(message: WorkAsk): void;
  terminate(): void;
  onmessage: ((event: { readonly data: WorkReply }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
}

/** A crew of worker threads, started when they are needed and kept warm between plans. */
export function threadCrew(spawn: () => WorkThread, size: number, clock: () => number): Crew {
  const idle: Seat[] = [];
  return {
    size,
    clock,
    take: () => idle.pop() ?? threadSeat(spawn()),
    giveBack(seat) {
      if (idle.length < size) idle.push(seat);
      else seat.end();
    },
    close() {
      for (const seat of idle.splice(0)) seat.end();
    },
  };
}

function threadSeat(worker: WorkThread): Seat {
  let nextId = 1;
  let waiting: { id: number; done(message: WorkReply): void; failed(error: Error): void } | null = null;
  let broken: Error | null = null;
  const fail = (message: string): void => {
    broken = new Error(message);
    waiting?.failed(broken);
    waiting = null;
  };
  worker.onmessage = ({ data }) => {
    if (waiting === null || data.id !== waiting.id) return;
    if (data.kind === 'broken') return fail(data.message);
    const { done } = waiting;
    waiting = null;
    done(data);
  };
  worker.onerror = (event) => {
    event.preventDefault?.();
    fail(event.message ?? 'A worker stopped without saying why.');
  };
  const ask = (message: (id: number) => WorkAsk): Promise<WorkReply> =>
    new Promise((done, failed) => {
      if (broken !== null) return failed(broken);
      const id = nextId;
      nextId += 1;
      waiting = { id, done, failed };
      worker.postMessage(message(id));
    });
  return {
    async open(plan) {
      const answer = await ask((id) => ({ kind: 'open', id, plan }));
      if (answer.kind === 'opened') return answer.problems;
      throw new Error(`asked to open a plan, a worker answered ${answer.kind}`);
    },
    async rows(from, to) {
      const answer = await ask((id) => ({ kind: 'rows', id, from, to }));
      if (answer.kind === 'rows-done') return answer.rows;
      throw new Error(`asked for rows, a worker answered ${answer.kind}`);
    },
    end() {
      worker.onmessage = null;
      worker.onerror = null;
      waiting = null;
      worker.terminate();
    },
  };
}

/**
 * Everything in the thread that asks, for tests and where no worker can be started.
 * @param pause – lets other things happen between two stretches of work: a timer of the host
 */
export function sameThreadCrew(pause: () => Promise<void>, clock: () => number): Crew {
  const take = (): Seat => {
    let bench: Bench | null = null;
    return {
      async open(plan) {
        const opened = openBench(plan);
        if (!opened.ok) return opened.problems;
        bench = opened.value;
        return [];
      },
      async rows(from, to) {
        await pause();
        if (bench === null) throw new Error('rows were asked for before a plan');
        return rowsOf(bench, from, to);
      },
      end() {},
    };
  };
  return { size: 1, clock, take, giveBack() {}, close() {} };
}
