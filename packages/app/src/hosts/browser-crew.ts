import { type Crew, threadCrew, type WorkThread } from '@lastinch/core';

/** More share out no faster what takes seconds, and each takes its memory on a phone. */
const MOST_WORKERS = 8;

/** The browser's own workers, as many as it says that there is room for. They start with the first work. */
export const browserCrew = (): Crew =>
  threadCrew(spawnWorkWorker, Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency)), () =>
    performance.now(),
  );

const spawnWorkWorker = (): WorkThread =>
  new Worker(new URL('./work-worker.ts', import.meta.url), { type: 'module', name: 'work' }) as WorkThread;
