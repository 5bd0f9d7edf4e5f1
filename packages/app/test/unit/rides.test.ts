import type { RideAnswer, RideHistory, RideRequest, Rig } from '@lastinch/core';
import { describe, expect, it } from 'vitest';
import type { RideHost, RideOutcome } from '../../src/hosts/browser-worker.ts';
import { createRideDesk, type RideQuestion } from '../../src/rides.ts';

/** A host that is answered by hand. */
class HandHost implements RideHost {
  readonly asked: {
    readonly lane: string;
    readonly request: RideRequest;
    readonly settle: (outcome: RideOutcome) => void;
    readonly progress: ((share: number) => void) | undefined;
  }[] = [];
  ride(lane: string, request: RideRequest, progress?: (share: number) => void): Promise<RideOutcome> {
    return new Promise((settle) => {
      this.asked.push({ lane, request, settle, progress });
    });
  }
  stop(): void {}
  close(): void {}
}

const rig = { name: 'a rig' } as Rig;
const question = (setup: string, speed = 10): RideQuestion => ({
  rig,
  setup,
  course: { kind: 'flat', length: 10 },
  courseName: 'flat',
  speed,
});
const history = { rate: 500 } as RideHistory;
const nominal = { setup: 'a', run: { time: 1, history } } as unknown as RideAnswer;
const sharp = { setup: 'a', run: { time: 1, history: null }, findings: ['sharper'] } as unknown as RideAnswer;
const soon = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

describe('ride desk', () => {
  it('shows the nominal ride first, then the one with intervals, with the histories of the first', async () => {
    const host = new HandHost();
    const desk = createRideDesk(host);
    desk.ask({ now: question('a'), proposed: null });
    expect(desk.rides.get().now.status).toBe('riding');
    expect(host.asked[0]?.request).toMatchObject({ trials: 0, historyRate: 500 });
    host.asked[0]?.settle({ kind: 'done', answer: nominal });
    await soon();
    expect(desk.rides.get().now).toMatchObject({ status: 'sharpening', answer: nominal });
    expect(host.asked[1]?.request.historyRate).toBe(0);
    expect(host.asked[1]?.request.trials).toBeGreaterThan(0);
    host.asked[1]?.progress?.(0.5);
    expect(desk.rides.get().now.share).toBe(0.5);
    host.asked[1]?.settle({ kind: 'done', answer: sharp });
    await soon();
    const { status, answer } = desk.rides.get().now;
    expect(status).toBe('done');
    expect(answer?.findings).toEqual(['sharper']);
    expect(answer?.run.history).toBe(history);
  });

  it('does not ask again what is answered or being answered', () => {
    const host = new HandHost();
    const desk = createRideDesk(host);
    const asked = question('a');
    desk.ask({ now: asked, proposed: null });
    desk.ask({ now: { ...asked }, proposed: null });
    expect(host.asked).toHaveLength(1);
    desk.ask({ now: { ...asked, speed: 11 }, proposed: null });
    expect(host.asked).toHaveLength(2);
  });

  it('lets an older answer that arrives late change nothing', async () => {
    const host = new HandHost();
    const desk = createRideDesk(host);
    desk.ask({ now: question('a'), proposed: null });
    desk.ask({ now: question('b'), proposed: null });
    host.asked[0]?.settle({ kind: 'done', answer: nominal });
    await soon();
    expect(desk.rides.get().now.answer).toBeNull();
    expect(host.asked).toHaveLength(2);
  });

  it('keeps the last answer in view when a newer ride breaks, says why, and may be asked again', async () => {
    const host = new HandHost();
    const desk = createRideDesk(host);
    desk.ask({ now: question('a'), proposed: null });
    host.asked[0]?.settle({ kind: 'done', answer: nominal });
    await soon();
    host.asked[1]?.settle({ kind: 'stale' });
    desk.ask({ now: question('a', 99), proposed: null });
    host.asked[2]?.settle({ kind: 'broken', message: 'too fast' });
    await soon();
    expect(desk.rides.get().now).toMatchObject({ status: 'broken', message: 'too fast', answer: nominal });
    desk.ask({ now: question('a', 99), proposed: null });
    expect(host.asked).toHaveLength(4);
  });
});
