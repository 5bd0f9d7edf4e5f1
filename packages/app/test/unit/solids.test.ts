import type { MeshAsk, MeshReply, Solid, SolidRequest } from '@lastinch/mesh';
import { describe, expect, it } from 'vitest';
import { createSolidDesk, type MeshWorker } from '../../src/solids.ts';

/** A stand-in for the browser's worker, answered by hand. */
class HandWorker implements MeshWorker {
  onmessage: MeshWorker['onmessage'] = null;
  onerror: MeshWorker['onerror'] = null;
  readonly asked: MeshAsk[] = [];
  ended = false;
  postMessage(message: MeshAsk): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(reply: MeshReply): void {
    this.onmessage?.({ data: reply });
  }
  get id(): number {
    return this.asked.at(-1)?.id ?? -1;
  }
}

function bench() {
  const workers: HandWorker[] = [];
  const desk = createSolidDesk(() => {
    const worker = new HandWorker();
    workers.push(worker);
    return worker;
  });
  return { desk, workers, last: () => workers.at(-1)! };
}

const request = { cell: 0.01 } as SolidRequest;
const solid = { mesh: {} } as Solid;

describe('the desk of a solid', () => {
  it('tells how far it is, never falling, and gives back the memory when it is done', () => {
    const { desk, last } = bench();
    desk.make(request);
    last().say({ kind: 'progress', id: last().id, share: 0.5 });
    last().say({ kind: 'progress', id: last().id, share: 0.2 });
    expect(desk.state.get()).toMatchObject({ status: 'working', share: 0.5 });
    last().say({ kind: 'solid-done', id: last().id, solid });
    expect(desk.state.get()).toMatchObject({ status: 'done', solid, solidOf: request });
    expect(last().ended).toBe(true);
  });

  it('stops what runs for a newer request, and when cancelled; the last solid stays', () => {
    const { desk, workers, last } = bench();
    desk.make(request);
    last().say({ kind: 'solid-done', id: last().id, solid });
    desk.make({ ...request, cell: 0.008 });
    const older = last();
    desk.make({ ...request, cell: 0.012 });
    expect(older.ended).toBe(true);
    expect(workers).toHaveLength(3);
    desk.cancel();
    expect(last().ended).toBe(true);
    expect(desk.state.get()).toMatchObject({ status: 'cancelled', solid, solidOf: request });
  });

  it('says why a solid cannot be, and what broke', () => {
    const { desk, last } = bench();
    desk.make(request);
    const problems = [{ code: 'stop-solid-parts', where: {}, found: '2 parts', accepted: 'one' }] as const;
    last().say({ kind: 'refused', id: last().id, problems });
    expect(desk.state.get()).toMatchObject({ status: 'refused', problems });
    desk.make(request);
    last().onerror?.({ message: 'out of memory' });
    expect(desk.state.get()).toMatchObject({ status: 'broken', message: 'out of memory' });
  });

  it('writes the last solid as a file, and none while a newer one is made', async () => {
    const { desk, last } = bench();
    expect(await desk.file('stl', 'Stop')).toBeNull();
    desk.make(request);
    expect(await desk.file('stl', 'Stop')).toBeNull();
    last().say({ kind: 'solid-done', id: last().id, solid });
    const written = desk.file('3mf', 'Stop');
    expect(last().asked.at(-1)).toMatchObject({ kind: 'file', format: '3mf', title: 'Stop' });
    const bytes = Uint8Array.of(80, 75);
    last().say({ kind: 'file-done', id: last().id, bytes });
    expect(await written).toBe(bytes);
    expect(last().ended).toBe(true);
  });
});
