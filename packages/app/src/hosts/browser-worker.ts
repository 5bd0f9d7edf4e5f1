import type { FromWorker, RideAnswer, RideRequest, ToWorker } from '@lastinch/core';

/** What a host needs of a worker: the browser's own, or a stand-in in tests. */
export interface WorkerLike {
  postMessage(message: ToWorker): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromWorker }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
}

/** How a request ended. `stale`: a newer one of the same lane took its place. */
export type RideOutcome =
  | { readonly kind: 'done'; readonly answer: RideAnswer }
  | { readonly kind: 'stale' }
  | { readonly kind: 'broken'; readonly message: string };

export interface RideHost {
  /** Asks for a ride. The latest request of a lane wins; what ran before it in that lane is stopped. */
  ride(lane: string, request: RideRequest, onProgress?: (share: number) => void): Promise<RideOutcome>;
  /** Stops whatever runs in a lane; its outcome is `stale`. */
  stop(lane: string): void;
  close(): void;
}

interface Running {
  readonly id: number;
  readonly worker: WorkerLike;
  readonly settle: (outcome: RideOutcome) => void;
}

/**
 * Runs rides away from the page, one worker a lane. A ride cannot be interrupted from outside, so a newer request
 * ends the worker that is busy with an older one and takes a fresh one; the same after any error.
 * @invariant each request settles exactly once; progress of a request never falls back.
 */
export function createRideHost(spawn: () => WorkerLike): RideHost {
  const idle: WorkerLike[] = [];
  const running = new Map<string, Running>();
  let nextId = 1;

  const take = (): WorkerLike => idle.pop() ?? spawn();
  const discard = (worker: WorkerLike): void => {
    worker.onmessage = null;
    worker.onerror = null;
    worker.terminate();
  };
  const stop = (lane: string): void => {
    const old = running.get(lane);
    if (old === undefined) return;
    running.delete(lane);
    discard(old.worker);
    old.settle({ kind: 'stale' });
  };

  return {
    ride(lane, request, onProgress) {
      stop(lane);
      const id = nextId;
      nextId += 1;
      const worker = take();
      return new Promise<RideOutcome>((resolve) => {
        running.set(lane, { id, worker, settle: resolve });
        let reached = 0;
        const broken = (message: string): void => {
          running.delete(lane);
          discard(worker);
          resolve({ kind: 'broken', message });
        };
        worker.onmessage = ({ data }) => {
          if (data.id !== id) return;
          if (data.kind === 'progress') {
            reached = Math.max(reached, data.share);
            onProgress?.(reached);
          } else if (data.kind === 'ride-done') {
            running.delete(lane);
            worker.onmessage = null;
            idle.push(worker);
            resolve({ kind: 'done', answer: data.answer });
          } else broken(data.message);
        };
        worker.onerror = (event) => {
          event.preventDefault?.();
          broken(event.message ?? 'The worker stopped without saying why.');
        };
        worker.postMessage({ kind: 'ride', id, request });
      });
    },
    stop,
    close() {
      for (const lane of [...running.keys()]) stop(lane);
      for (const worker of idle.splice(0)) discard(worker);
    },
  };
}

/** The browser's own worker with the ride in it; its script is fetched when the first ride is asked for. */
export function spawnRideWorker(): WorkerLike {
  return new Worker(new URL('./ride-worker.ts', import.meta.url), {
    type: 'module',
    name: 'ride',
  }) as WorkerLike;
}
