import { fileOf } from './files.ts';
import type { MeshAsk, MeshReply } from './mesh-messages.ts';
import { solidOf } from './solid.ts';

/**
 * Answers in a worker, whatever kind of worker it is.
 *
 * @param post – sends a reply; the buffers named with it may be moved instead of copied
 */
export function serveMesh(
  post: (reply: MeshReply, moved: readonly ArrayBuffer[]) => void,
): (ask: MeshAsk) => void {
  return (ask) => {
    const { id } = ask;
    try {
      if (ask.kind === 'file') {
        const bytes = fileOf(ask.format, ask.title, ask.mesh);
        post({ kind: 'file-done', id, bytes }, [bytes.buffer as ArrayBuffer]);
        return;
      }
      const made = solidOf(ask.request, (share) => post({ kind: 'progress', id, share }, []));
      if (!made.ok) {
        post({ kind: 'refused', id, problems: made.problems }, []);
        return;
      }
      const { points, triangles } = made.value.mesh;
      post({ kind: 'solid-done', id, solid: made.value }, [
        points.buffer as ArrayBuffer,
        triangles.buffer as ArrayBuffer,
      ]);
    } catch (error) {
      post({ kind: 'broken', id, message: error instanceof Error ? error.message : String(error) }, []);
    }
  };
}
