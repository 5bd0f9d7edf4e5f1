import { type Crew, type Seat, threadCrew, type WorkThread } from '../../src/jobs/crew.ts';
import { serveWork } from '../../src/jobs/serve-work.ts';
import { openBench, rowsOf } from '../../src/jobs/work.ts';
import type { WorkReply } from '../../src/jobs/work-messages.ts';
import { randomStream } from '../../src/numerics/random.ts';

const soon = (): Promise<void> => new Promise((resume) => setTimeout(resume, 0));

/** Threads that are none: the worker's own side behind messages that are copied as between threads. */
export const messageCrew = (size: number): Crew => threadCrew(messageThread, size, () => performance.now());

function messageThread(): WorkThread {
  let ended = false;
  const serve = serveWork((reply, moved) => {
    const data = structuredClone<WorkReply>(reply, { transfer: [...moved] });
    setTimeout(() => {
      if (!ended) thread.onmessage?.({ data });
    }, 0);
  });
  const thread: WorkThread = {
    onmessage: null,
    onerror: null,
    postMessage(ask) {
      const copy = structuredClone(ask);
      setTimeout(() => serve(copy), 0);
    },
    terminate() {
      ended = true;
    },
  };
  return thread;
}

export interface UnrulyOptions {
  /** Turns that a stretch takes before it comes back. */
  readonly patience?: (from: number, seat: number) => number;
  /** Throws where the seat breaks. */
  readonly breaks?: (from: number, seat: number) => void;
  readonly breaksOnOpen?: (seat: number) => void;
}

/** A crew that does not keep to an order: some seats are slow, some break. Its clock runs by stretches. */
export function unrulyCrew(size: number, { patience, breaks, breaksOnOpen }: UnrulyOptions = {}) {
  const ended: number[] = [];
  const handedOut: { readonly from: number; readonly to: number; readonly seat: number }[] = [];
  const idle: Seat[] = [];
  let seats = 0;
  let now = 0;
  const hire = (): Seat => {
    const me = seats;
    seats += 1;
    let bench: ReturnType<typeof openBench> | null = null;
    return {
      async open(plan) {
        breaksOnOpen?.(me);
        bench = openBench(plan);
        return bench.ok ? [] : bench.problems;
      },
      async rows(from, to) {
        handedOut.push({ from, to, seat: me });
        for (let turn = patience?.(from, me) ?? 0; turn > 0; turn -= 1) await soon();
        await soon();
        now += 10;
        breaks?.(from, me);
        if (!bench?.ok) throw new Error('no plan');
        return rowsOf(bench.value, from, to);
      },
      end() {
        ended.push(me);
      },
    };
  };
  const crew: Crew = {
    size,
    clock: () => now,
    take: () => idle.pop() ?? hire(),
    giveBack: (seat) => idle.push(seat),
    close() {},
  };
  return { crew, ended, handedOut, idle, hired: () => seats };
}

/** Waits of 0 to `most` turns, the same for the same seed. */
export function randomPatience(seed: number, most: number): () => number {
  const random = randomStream(seed);
  return () => random.below(most + 1);
}
