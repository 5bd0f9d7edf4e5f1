/// <reference lib="webworker" />
import { chooseAnswer, openStudy } from '@lastinch/core/choose';
import type { FromChooseWorker, ToChooseWorker } from '../choose-hands.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (message: FromChooseWorker): void => self.postMessage(message);

/** Drives who stands once more at the nominal readings, and puts the answer together. */
self.onmessage = ({ data: { request, done } }: MessageEvent<ToChooseWorker>): void => {
  try {
    const study = openStudy(request);
    if (!study.ok) throw new Error('a study that was done is refused');
    const answer = chooseAnswer(study.value, done);
    if ('missing' in answer) throw new Error(`${answer.missing.length} pieces of the study are missing`);
    say({ kind: 'done', answer });
  } catch (error) {
    say({ kind: 'broken', message: error instanceof Error ? error.message : String(error) });
  }
};
