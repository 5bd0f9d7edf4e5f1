/// <reference lib="webworker" />
import type { Result } from '@lastinch/core';
import { designStop, estimateStop, fitStop, stopNeed } from '@lastinch/core/stops';
import type { FromStopWorker, StopAnswers, StopJob, ToStopWorker } from '../stops.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (message: FromStopWorker): void => self.postMessage(message);

function answerOf(asked: ToStopWorker): Result<StopAnswers[StopJob]> {
  switch (asked.job) {
    case 'need':
      return stopNeed(asked.question, (share) => say({ kind: 'progress', id: asked.id, share }));
    case 'fit':
      return fitStop(asked.question);
    case 'estimate':
      return estimateStop(asked.question);
    case 'design':
      return designStop(asked.question);
  }
}

self.onmessage = ({ data }: MessageEvent<ToStopWorker>): void => {
  const { id } = data;
  try {
    const found = answerOf(data);
    if (found.ok) say({ kind: 'done', id, answer: found.value });
    else say({ kind: 'refused', id, problems: found.problems });
  } catch (error) {
    say({ kind: 'broken', id, message: error instanceof Error ? error.message : String(error) });
  }
};
