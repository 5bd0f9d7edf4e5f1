/// <reference lib="webworker" />
import { linksRig, problemText } from '@lastinch/core';
import type { FromLinksWorker, ToLinksWorker } from '../links.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (message: FromLinksWorker): void => self.postMessage(message);

/** The proposal against what is on the rig, then what is on the rig by itself. */
self.onmessage = ({ data: { id, question, seed } }: MessageEvent<ToLinksWorker>): void => {
  const { rig, now, proposed } = question;
  try {
    for (const setup of now === proposed ? [proposed] : [proposed, now]) {
      const found = linksRig(rig, { setup, against: now, seed });
      if (!found.ok) {
        say({ kind: 'broken', id, message: found.problems.map(problemText).join(' ') });
        return;
      }
      say({ kind: 'answer', id, lane: setup === proposed ? 'proposed' : 'now', answer: found.value });
    }
    say({ kind: 'done', id });
  } catch (error) {
    say({ kind: 'broken', id, message: error instanceof Error ? error.message : String(error) });
  }
};
