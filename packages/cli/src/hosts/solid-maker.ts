import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { bad, good, type Result } from '@lastinch/core';
import {
  type MeshAsk,
  type MeshReply,
  type Solid,
  type SolidFormat,
  type SolidRequest,
  serveMesh,
} from '@lastinch/mesh';

/** A solid and the bytes of its file. */
export interface MadeSolid {
  readonly solid: Solid;
  readonly bytes: Uint8Array;
}

/** The script of the thread, beside the built program. */
const MESH_SCRIPT = new URL('./lastinch-mesh.js', import.meta.url);

/**
 * Makes a solid and its file in a worker thread, so that progress is shown and an interrupt is heard meanwhile; in the
 * program's own thread where the script of the worker is not at hand. Ctrl+C ends program and thread: nothing has been
 * written by then.
 */
export async function makeSolid(
  request: SolidRequest,
  file: { readonly format: SolidFormat; readonly title: string },
  onProgress: (what: string, share: number) => void,
): Promise<Result<MadeSolid>> {
  const thread = existsSync(fileURLToPath(MESH_SCRIPT)) ? workerThread() : sameThread();
  try {
    const made = await thread.ask({ kind: 'solid', id: 1, request }, (share) =>
      onProgress('cutting walls', share),
    );
    if (made.kind === 'refused') return bad(...made.problems);
    if (made.kind !== 'solid-done') throw new Error('a solid was asked for, something else came');
    onProgress('packing the file', 0);
    const { solid } = made;
    const packed = await thread.ask({ kind: 'file', id: 2, ...file, mesh: solid.mesh }, () => {});
    if (packed.kind !== 'file-done') throw new Error('a file was asked for, something else came');
    return good({ solid, bytes: packed.bytes });
  } finally {
    thread.end();
  }
}

interface Thread {
  /** Settles with the last reply; a broken worker is a mistake of our own. */
  ask(
    ask: MeshAsk,
    onProgress: (share: number) => void,
  ): Promise<Exclude<MeshReply, { kind: 'progress' | 'broken' }>>;
  end(): void;
}

type Settle = (reply: MeshReply) => void;

function asking(
  post: (ask: MeshAsk, hear: Settle, fail: (error: Error) => void) => void,
  end: () => void,
): Thread {
  return {
    ask: (ask, onProgress) =>
      new Promise((done, fail) => {
        const hear = (reply: MeshReply): void => {
          if (reply.kind === 'progress') onProgress(reply.share);
          else if (reply.kind === 'broken') fail(new Error(reply.message));
          else done(reply);
        };
        post(ask, hear, fail);
      }),
    end,
  };
}

function workerThread(): Thread {
  const worker = new Worker(MESH_SCRIPT);
  return asking(
    (ask, hear, fail) => {
      worker.removeAllListeners();
      worker.on('message', hear);
      worker.on('error', fail);
      worker.on('exit', (code) => fail(new Error(`A worker thread ended with ${code}.`)));
      worker.postMessage(ask);
    },
    () => {
      worker.removeAllListeners();
      void worker.terminate();
    },
  );
}

const sameThread = (): Thread =>
  asking(
    (ask, hear) => serveMesh(hear)(ask),
    () => {},
  );
