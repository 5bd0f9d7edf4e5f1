import type { StopEstimate, StopEstimateRequest } from '@lastinch/core/stops';
import { describe, expect, it } from 'vitest';
import { cellsOf, shelfNameOf, withCell, withLines } from '../../src/steps/stop/readings.ts';
import {
  createStopDesk,
  createStopDesks,
  type FromStopWorker,
  type StopWorker,
  type ToStopWorker,
} from '../../src/stops.ts';
import { sameQuestion } from '../../src/work-desk.ts';

/** A stand-in for the browser's worker, answered by hand. */
class HandWorker implements StopWorker {
  onmessage: StopWorker['onmessage'] = null;
  onerror: StopWorker['onerror'] = null;
  readonly asked: ToStopWorker[] = [];
  ended = false;
  postMessage(message: ToStopWorker): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(message: FromStopWorker): void {
    this.onmessage?.({ data: message });
  }
  get id(): number {
    return this.asked.at(-1)?.id ?? -1;
  }
}

function bench() {
  const workers: HandWorker[] = [];
  const desk = createStopDesk('estimate', () => {
    const worker = new HandWorker();
    workers.push(worker);
    return worker;
  });
  return { desk, workers, last: () => workers.at(-1)! };
}

const gas = (stroke: number): StopEstimateRequest => ({
  kind: 'gas',
  rodDiameter: 0.03,
  pressure: 7e5,
  column: 0.065,
  stroke,
});
const answer = { kind: 'gas' } as StopEstimate;

describe('the desk of a stop', () => {
  it('asks once for the same question, and again by hand', () => {
    const { desk, last } = bench();
    desk.ask(gas(0.05));
    desk.ask(gas(0.05));
    expect(last().asked).toHaveLength(1);
    last().say({ kind: 'done', id: last().id, answer });
    desk.ask(gas(0.05));
    expect(last().asked).toHaveLength(1);
    desk.ask(gas(0.05), { byHand: true });
    expect(last().asked).toHaveLength(2);
    expect(desk.state.get().answer).toBe(answer);
  });

  it('ends what is busy with an older question, and keeps the last answer in view', () => {
    const { desk, workers, last } = bench();
    desk.ask(gas(0.05));
    last().say({ kind: 'done', id: last().id, answer });
    desk.ask(gas(0.04));
    const busy = last();
    desk.ask(gas(0.03));
    expect(busy.ended).toBe(true);
    expect(workers).toHaveLength(2);
    expect(desk.state.get()).toMatchObject({
      status: 'working',
      answer,
      answers: gas(0.05),
      asked: gas(0.03),
    });
  });

  it('tells how far it is, never falling, and stops when cancelled', () => {
    const { desk, last } = bench();
    desk.ask(gas(0.05));
    last().say({ kind: 'progress', id: last().id, share: 0.4 });
    last().say({ kind: 'progress', id: last().id, share: 0.3 });
    expect(desk.state.get().share).toBe(0.4);
    desk.cancel();
    expect(last().ended).toBe(true);
    expect(desk.state.get().status).toBe('cancelled');
    desk.ask(gas(0.05));
    expect(desk.state.get()).toMatchObject({ status: 'working', share: 0 });
  });

  it('says why a question has no answer, and what broke', () => {
    const { desk, last } = bench();
    desk.ask(gas(0.07));
    const problems = [{ code: 'stop-shape', where: {}, found: 'a', accepted: 'b' }] as const;
    last().say({ kind: 'refused', id: last().id, problems });
    expect(desk.state.get()).toMatchObject({ status: 'refused', problems });
    desk.ask(gas(0.05));
    const worker = last();
    worker.onerror?.({ message: 'out of memory' });
    expect(desk.state.get()).toMatchObject({ status: 'broken', message: 'out of memory' });
    expect(worker.ended).toBe(true);
  });

  it('keeps what was found for one end while another is looked at', () => {
    const desks = createStopDesks(
      () => new HandWorker(),
      () => {
        throw new Error('no solid is asked for');
      },
    );
    expect(desks.need('front a')).toBe(desks.need('front a'));
    expect(desks.need('front a')).not.toBe(desks.need('rear a'));
  });

  it('takes the same words about another rig as another question', () => {
    const [rig, twin] = [{ name: 'Ochre' }, { name: 'Ochre' }];
    expect(sameQuestion({ rig, end: 'front', courses: [1] }, { rig, end: 'front', courses: [1] })).toBe(true);
    expect(sameQuestion({ rig, end: 'front' }, { rig: twin, end: 'front' })).toBe(false);
    expect(sameQuestion({ rig }, { rig, end: 'front' })).toBe(false);
    expect(sameQuestion({ rig }, null)).toBe(false);
  });
});

describe('readings as a table', () => {
  it('splits a line as the file is read, and puts a typed cell back into it', () => {
    expect(cellsOf('12 mm, 340 N')).toEqual(['12 mm', '340 N']);
    expect(cellsOf('12,5;340')).toEqual(['12,5', '340']);
    expect(cellsOf('12 mm')).toEqual(['12 mm', '']);
    expect(withCell('0 mm, 0 N\n5 mm, 20 N', 1, 1, '25 N')).toBe('0 mm, 0 N\n5 mm, 25 N');
  });

  it('makes lines that were not there, and drops what was emptied at the end', () => {
    const one = withCell('', 1, 0, '12,5 mm');
    expect(cellsOf(one.split('\n')[1] ?? '')).toEqual(['12,5 mm', '']);
    expect(withCell(one, 1, 0, '')).toBe('');
  });

  it('takes pasted lines from a row on', () => {
    expect(withLines('a, b\nc, d', 1, '1 mm\t2 N\n2 mm\t5 N\n')).toBe('a, b\n1 mm\t2 N\n2 mm\t5 N');
  });

  it('makes a name for the rig file out of that of a file', () => {
    expect(shelfNameOf('Soft 60mm.csv')).toBe('Soft-60mm');
    expect(shelfNameOf('2.csv')).toBe('pressed');
  });
});
