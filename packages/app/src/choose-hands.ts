import type { Crew } from '@lastinch/core';
import { type ChooseAnswer, type ChooseRequest, type PartAnswers, startChoose } from '@lastinch/core/choose';
import type { ChooseHands } from './choosing.ts';
import type { PieceStore } from './keep/pieces.ts';

export type ToChooseWorker = { readonly request: ChooseRequest; readonly done: PartAnswers };
export type FromChooseWorker =
  | { readonly kind: 'done'; readonly answer: ChooseAnswer }
  | { readonly kind: 'broken'; readonly message: string };

/** What is needed of the worker that makes the answer. */
export interface ChooseWorker {
  postMessage(message: ToChooseWorker): void;
  terminate(): void;
  onmessage: ((event: { readonly data: FromChooseWorker }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
}

/**
 * Shares a study out over a crew, and has its answer made by a worker of its own.
 * @param build – changes with every build of the program: pieces of another one are not gone on from
 */
export function chooseHands(
  crew: Crew,
  spawn: () => ChooseWorker,
  store: PieceStore,
  build: string,
): ChooseHands {
  const nameOf = (request: ChooseRequest): string => `${build}\n${JSON.stringify(request)}`;
  return {
    start(request, done, { onShare, onPieces }) {
      const pieces = new Map(done.map((piece) => [piece.unit, piece]));
      return startChoose(request, crew, {
        done,
        onProgress: onShare,
        onPart: (piece) => {
          pieces.set(piece.unit, piece);
          onPieces([...pieces.values()]);
        },
      });
    },
    answer: (request, done) =>
      new Promise((found, failed) => {
        const worker = spawn();
        const end = (what: () => void): void => {
          worker.terminate();
          what();
        };
        worker.onmessage = ({ data }) =>
          end(() => (data.kind === 'done' ? found(data.answer) : failed(new Error(data.message))));
        worker.onerror = (event) => {
          event.preventDefault?.();
          end(() => failed(new Error(event.message ?? 'The worker stopped without saying why.')));
        };
        worker.postMessage({ request, done });
      }),
    recall: (request) => store.read(nameOf(request)),
    keep: (request, done) => store.write(nameOf(request), done),
  };
}
