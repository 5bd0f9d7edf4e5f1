/// <reference lib="webworker" />
import { type FromWorker, problemText, rideRig, type ToWorker } from '@lastinch/core';

declare const self: DedicatedWorkerGlobalScope;

const say = (message: FromWorker, transfer: Transferable[] = []): void => self.postMessage(message, transfer);

self.onmessage = (event: MessageEvent<ToWorker>): void => {
  const { id, request } = event.data;
  try {
    const ridden = rideRig(request, (share: number) => say({ kind: 'progress', id, share }));
    if (!ridden.ok) {
      say({ kind: 'broken', id, message: ridden.problems.map(problemText).join(' ') });
      return;
    }
    const history = ridden.value.run.history;
    const buffers =
      history === null ? [] : Object.values(history).filter((part) => part instanceof Float64Array);
    say(
      { kind: 'ride-done', id, answer: ridden.value },
      buffers.map((array) => array.buffer as ArrayBuffer),
    );
  } catch (error) {
    say({ kind: 'broken', id, message: error instanceof Error ? error.message : String(error) });
  }
};
