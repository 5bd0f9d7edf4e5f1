import { expect, it } from 'vitest';
import type { MeshAsk, MeshReply } from '../src/mesh-messages.ts';
import { serveMesh } from '../src/serve-mesh.ts';
import type { SolidRequest } from '../src/solid-request.ts';

const REQUEST: SolidRequest = {
  body: {
    height: 0.016,
    radius: { at: [0], value: [0.01] },
    bore: 0,
    skin: 0,
    density: { at: [0], value: [0.4] },
  },
  cell: 0.01,
  plate: 0.002,
  seat: null,
  cap: 0,
  vents: null,
};

function answers(ask: MeshAsk): MeshReply[] {
  const replies: MeshReply[] = [];
  // Whatever is sent to and from a worker is copied on the way.
  serveMesh((reply, moved) => replies.push(structuredClone(reply, { transfer: [...moved] })))(
    structuredClone(ask),
  );
  return replies;
}

it('answers with progress, then the solid; and packs it into a file', () => {
  const replies = answers({ kind: 'solid', id: 7, request: REQUEST });
  expect(replies.every(({ id }) => id === 7)).toBe(true);
  expect(replies.slice(0, -1).every(({ kind }) => kind === 'progress')).toBe(true);
  const last = replies[replies.length - 1];
  if (last.kind !== 'solid-done') throw new Error(last.kind);
  expect(last.solid.mesh.triangles.length).toBe(3 * last.solid.figures.triangles);
  const [file] = answers({ kind: 'file', id: 8, format: 'stl', title: 'stop', mesh: last.solid.mesh });
  if (file.kind !== 'file-done') throw new Error(file.kind);
  expect(file.bytes.length).toBe(84 + 50 * last.solid.figures.triangles);
});

it('refuses what cannot be made with its problems', () => {
  const [reply] = answers({ kind: 'solid', id: 1, request: { ...REQUEST, cell: 0 } });
  expect(reply.kind === 'refused' && reply.problems.map(({ code }) => code)).toEqual(['stop-shape']);
});

it('tells of its own mistakes instead of falling silent', () => {
  const [reply] = answers({ kind: 'solid', id: 1, request: { ...REQUEST, body: null as never } });
  expect(reply.kind).toBe('broken');
});
