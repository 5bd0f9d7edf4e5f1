import type { FromWorker, RideAnswer, RideRequest, ToWorker } from '@lastinch/core';
import { describe, expect, it } from 'vitest';
import { createRideHost, type WorkerLike } from '../../src/hosts/browser-worker.ts';

/** A stand-in for the browser's worker, answered by hand. */
class HandWorker implements WorkerLike {
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  readonly asked: ToWorker[] = [];
  ended = false;
  postMessage(message: ToWorker): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(message: FromWorker): void {
    this.onmessage?.({ data: message });
  }
  get id(): number {
    return this.asked.at(-1)?.id ?? -1;
  }
}

function hostOfHands() {
  const workers: HandWorker[] = [];
  const host = createRideHost(() => {
    const worker = new HandWorker();
    workers.push(worker);
    return worker;
  });
  return { host, workers };
}

const request = { setup: 'as-measured' } as RideRequest;
const answer = { course: 'whoops' } as RideAnswer;

describe('ride host', () => {
  it('gives back the answer to the question that was asked', async () => {
    const { host, workers } = hostOfHands();
    const outcome = host.ride('now', request);
    workers[0]?.say({ kind: 'ride-done', id: workers[0].id, answer });
    expect(await outcome).toEqual({ kind: 'done', answer });
  });

  it('lets the latest request of a lane win, and ends the worker that was busy with the older one', async () => {
    const { host, workers } = hostOfHands();
    const older = host.ride('now', request);
    const newer = host.ride('now', request);
    expect(await older).toEqual({ kind: 'stale' });
    expect(workers[0]?.ended).toBe(true);
    workers[0]?.say({ kind: 'ride-done', id: workers[0].id, answer: { course: 'late' } as RideAnswer });
    workers[1]?.say({ kind: 'ride-done', id: workers[1].id, answer });
    expect(await newer).toEqual({ kind: 'done', answer });
  });

  it('runs the two lanes beside each other', async () => {
    const { host, workers } = hostOfHands();
    const now = host.ride('now', request);
    const proposed = host.ride('proposed', request);
    workers[1]?.say({ kind: 'ride-done', id: workers[1].id, answer });
    expect((await proposed).kind).toBe('done');
    workers[0]?.say({ kind: 'ride-done', id: workers[0].id, answer });
    expect((await now).kind).toBe('done');
  });

  it('takes an idle worker again before it starts another', async () => {
    const { host, workers } = hostOfHands();
    const first = host.ride('now', request);
    workers[0]?.say({ kind: 'ride-done', id: workers[0].id, answer });
    await first;
    void host.ride('now', request);
    expect(workers).toHaveLength(1);
    expect(workers[0]?.asked).toHaveLength(2);
  });

  it('ignores what answers another question', async () => {
    const { host, workers } = hostOfHands();
    const outcome = host.ride('now', request);
    workers[0]?.say({ kind: 'ride-done', id: 999, answer: { course: 'other' } as RideAnswer });
    workers[0]?.say({ kind: 'ride-done', id: workers[0].id, answer });
    expect(await outcome).toEqual({ kind: 'done', answer });
  });

  it('replaces the worker after it says that it broke, and after it broke without a word', async () => {
    const { host, workers } = hostOfHands();
    const told = host.ride('now', request);
    workers[0]?.say({ kind: 'broken', id: workers[0].id, message: 'out of range' });
    expect(await told).toEqual({ kind: 'broken', message: 'out of range' });
    expect(workers[0]?.ended).toBe(true);
    const silent = host.ride('now', request);
    workers[1]?.onerror?.({ message: 'out of memory' });
    expect(await silent).toEqual({ kind: 'broken', message: 'out of memory' });
    expect(workers[1]?.ended).toBe(true);
    void host.ride('now', request);
    expect(workers).toHaveLength(3);
  });

  it('never lets progress fall back', async () => {
    const { host, workers } = hostOfHands();
    const seen: number[] = [];
    void host.ride('now', request, (share) => seen.push(share));
    for (const share of [0.1, 0.4, 0.3, 0.6]) workers[0]?.say({ kind: 'progress', id: workers[0].id, share });
    expect(seen).toEqual([0.1, 0.4, 0.4, 0.6]);
  });

  it('settles what still runs when it is closed', async () => {
    const { host, workers } = hostOfHands();
    const outcome = host.ride('now', request);
    host.close();
    expect(await outcome).toEqual({ kind: 'stale' });
    expect(workers[0]?.ended).toBe(true);
  });
});
