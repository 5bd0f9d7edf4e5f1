/// <reference lib="webworker" />
import type { Result } from '@lastinch/core';
import { designForNeed, designStop, estimateStop, fitStop, stopNeed } from '@lastinch/core/stops';
import type { FromStopWorker, StopAnswers, StopJob, ToStopWorker } from '../stops.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (message: FromStopWorker): void => self.postMessage(message);

function answerOf(asked: ToStopWorker): Result<StopAnswers[StopJob]> {
  const tell = (share: number): void => say({ kind: 'progress', id: asked.id, share });
  switch (asked.job) {
    case 'need':
      return stopNeed(asked.question, tell);
    case 'fit':
      return fitStop(asked.question);
    case 'estimate':
      return estimateStop(asked.question);
    case 'design':
      return designStop(asked.question);
    case 'forNeed':
      return designForNeed(asked.question, asked.question.shape, tell);
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
