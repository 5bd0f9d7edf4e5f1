import type { Problem } from '@lastinch/core';
import type { MeshAsk, MeshReply, Solid, SolidFormat, SolidRequest } from '@lastinch/mesh';
import { createStore, type Store } from './store.ts';

/** What is needed of a worker: the browser's own, or a stand-in in tests. */
export interface MeshWorker {
  postMessage(message: MeshAsk): void;
  terminate(): void;
  onmessage: ((event: { readonly data: MeshReply }) => void) | null;
  onerror: ((event: { readonly message?: string; preventDefault?(): void }) => void) | null;
}

/** How the solid of a printed stop stands. Scope: session; it is never saved, it follows from the design. */
export interface SolidState {
  readonly status: 'none' | 'working' | 'done' | 'cancelled' | 'refused' | 'broken';
  /** Share of what runs, 0…1, never falling. */
  readonly share: number;
  /** The last solid that was made, and of what. Stays in view while a newer one is made. */
  readonly solid: Solid | null;
  readonly solidOf: SolidRequest | null;
  readonly asked: SolidRequest | null;
  readonly problems: readonly Problem[];
  readonly message: string;
}

export interface SolidDesk {
  readonly state: Store<SolidState>;
  /** The latest request wins; what runs is stopped. */
  make(request: SolidRequest): void;
  cancel(): void;
  /** The solid as the bytes of a file; null when it could not be written, and then the state says why. */
  file(format: SolidFormat, title: string): Promise<Uint8Array | null>;
}

/** Makes solids away from the page: seconds of work, and hundreds of megabytes while it lasts. */
export function createSolidDesk(spawn: () => MeshWorker): SolidDesk {
  const state = createStore<SolidState>({
    status: 'none',
    share: 0,
    solid: null,
    solidOf: null,
    asked: null,
    problems: [],
    message: '',
  });
  let worker: MeshWorker | null = null;
  let id = 0;
  const put = (change: Partial<SolidState>): void => state.set((now) => ({ ...now, ...change }));
  const end = (): void => {
    if (worker === null) return;
    worker.onmessage = null;
    worker.onerror = null;
    worker.terminate();
    worker = null;
  };
  const broken = (message: string): void => {
    end();
    put({ status: 'broken', message });
  };
  const listen = (
    of: MeshWorker,
    onReply: (reply: MeshReply) => void,
    onBroken: (message: string) => void,
  ) => {
    of.onmessage = ({ data }) => {
      if (data.id !== id) return;
      if (data.kind === 'broken') onBroken(data.message);
      else onReply(data);
    };
    of.onerror = (event) => {
      event.preventDefault?.();
      onBroken(event.message ?? 'The worker stopped without saying why.');
    };
  };

  return {
    state,
    make(request) {
      if (state.get().status === 'working') end();
      id += 1;
      worker ??= spawn();
      listen(
        worker,
        (reply) => {
          if (reply.kind === 'progress') put({ share: Math.max(state.get().share, reply.share) });
          else if (reply.kind === 'refused') put({ status: 'refused', problems: reply.problems });
          else if (reply.kind === 'solid-done') {
            put({ status: 'done', share: 1, solid: reply.solid, solidOf: request });
            // What it took to make it is not kept.
            end();
          }
        },
        broken,
      );
      put({ status: 'working', share: 0, asked: request, problems: [], message: '' });
      worker.postMessage({ kind: 'solid', id, request });
    },
    cancel() {
      if (state.get().status !== 'working') return;
      end();
      put({ status: 'cancelled' });
    },
    file(format, title) {
      const { solid, status } = state.get();
      if (solid === null || status === 'working') return Promise.resolve(null);
      id += 1;
      worker ??= spawn();
      const writer = worker;
      return new Promise((resolve) => {
        listen(
          writer,
          (reply) => {
            if (reply.kind !== 'file-done') return;
            end();
            resolve(reply.bytes);
          },
          (message) => {
            broken(message);
            resolve(null);
          },
        );
        writer.postMessage({ kind: 'file', id, format, title, mesh: solid.mesh });
      });
    },
  };
}

/** The browser's own worker; its script is fetched when a solid is first made. */
export const spawnMeshWorker = (): MeshWorker =>
  new Worker(new URL('./hosts/mesh-worker.ts', import.meta.url), {
    type: 'module',
    name: 'mesh',
  }) as MeshWorker;
