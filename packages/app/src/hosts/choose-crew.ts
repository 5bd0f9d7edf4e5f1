import { type ChooseWorker, chooseHands } from '../choose-hands.ts';
import type { ChooseHands } from '../choosing.ts';
import { pieceStore } from '../keep/pieces.ts';
import { browserCrew } from './browser-crew.ts';

/**
 * Hands in the browser: its workers, its storage. The address of this very piece of the program changes with its
 * contents, the addresses of the workers among them, so it tells one build from another.
 */
export const browserChooseHands = (): ChooseHands =>
  chooseHands(browserCrew(), spawnChooseWorker, pieceStore(), import.meta.url);

const spawnChooseWorker = (): ChooseWorker =>
  new Worker(new URL('./choose-worker.ts', import.meta.url), {
    type: 'module',
    name: 'choose',
  }) as ChooseWorker;
