/// <reference lib="webworker" />
import { sheetOfRig } from '@lastinch/core/sheet';
import type { FromSheetWorker, ToSheetWorker } from '../sheets.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (message: FromSheetWorker): void => self.postMessage(message);

self.onmessage = ({ data: { id, question } }: MessageEvent<ToSheetWorker>): void => {
  try {
    const made = sheetOfRig(question, (share) => say({ kind: 'progress', id, share }));
    if (made.ok) say({ kind: 'done', id, answer: made.value });
    else say({ kind: 'refused', id, problems: made.problems });
  } catch (error) {
    say({ kind: 'broken', id, message: error instanceof Error ? error.message : String(error) });
  }
};
