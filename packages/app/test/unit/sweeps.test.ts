import { readFileSync } from 'node:fs';
import { type Crew, sameThreadCrew } from '@lastinch/core';
import { readRig } from '@lastinch/core/rigfile';
import { describe, expect, it } from 'vitest';
import { lateSweepDesk } from '../../src/late-sweeps.ts';
import type { SweepDesk, SweepQuestion, SweepState } from '../../src/sweep-state.ts';
import { createSweepDesk } from '../../src/sweeps.ts';

const OCHRE = new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url);
const read = readRig(readFileSync(OCHRE, 'utf8'), { file: 'ochre.rig.yaml' });
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const rig = read.value;

const question = (change: Partial<SweepQuestion> = {}): SweepQuestion => ({
  rig,
  setups: ['as-it-is'],
  course: { kind: 'flat', length: 1 },
  courseName: 'flat',
  wantedSpeed: null,
  from: 5,
  to: 6,
  step: 1,
  ...change,
});

const crew = (): Crew =>
  sameThreadCrew(
    () => new Promise((resume) => setTimeout(resume, 0)),
    () => performance.now(),
  );

/** Everything that the desk says until it rests. */
async function watched(desk: SweepDesk, start: () => void): Promise<readonly SweepState[]> {
  const seen: SweepState[] = [];
  const stop = desk.sweep.subscribe(() => seen.push(desk.sweep.get()));
  start();
  const rests = ['done', 'cancelled', 'broken'];
  while (!rests.includes(desk.sweep.get().status)) await new Promise((soon) => setTimeout(soon, 5));
  stop();
  return seen;
}

describe.each([
  { how: 'there from the start', made: createSweepDesk },
  {
    how: 'fetched with the first sweep',
    made: (by: Crew) => lateSweepDesk(() => Promise.resolve(createSweepDesk(by))),
  },
])('sweep desk, $how', ({ made }) => {
  it('shows the rigs as measured first, and then the ranges over the readings', async () => {
    const desk = made(crew());
    const asked = question();
    const seen = await watched(desk, () => desk.ask(asked));
    const first = seen.find(({ answer }) => answer !== null);
    expect(first?.answer?.trials).toBe(0);
    expect(first?.answers).toBe(asked);
    const last = desk.sweep.get();
    expect(last).toMatchObject({ status: 'done', share: 1, answers: asked });
    expect(last.answer?.trials).toBe(39);
    expect(last.answer?.coverage).toBeCloseTo(0.95, 12);
    for (const status of ['scanning', 'sharpening'] as const) {
      const shares = seen.filter((state) => state.status === status).map(({ share }) => share);
      expect(shares.length).toBeGreaterThan(0);
      expect(shares).toEqual([...shares].sort((a, b) => a - b));
    }
  });

  it('keeps what has come back when it is cancelled', async () => {
    const desk = made(crew());
    await watched(desk, () => {
      desk.sweep.subscribe(() => {
        const { status, share } = desk.sweep.get();
        if (status === 'sharpening' && share > 0) desk.cancel();
      });
      desk.ask(question());
    });
    expect(desk.sweep.get()).toMatchObject({ status: 'cancelled' });
    expect(desk.sweep.get().answer?.trials).toBe(0);
    desk.cancel();
    expect(desk.sweep.get().status).toBe('cancelled');
  });

  it('answers the latest question, and never mixes an older one in', async () => {
    const desk = made(crew());
    const older = question();
    const newer = question({ from: 7, to: 8 });
    const seen = await watched(desk, () => {
      desk.ask(older);
      desk.ask(newer);
    });
    expect(desk.sweep.get().answers).toBe(newer);
    expect(seen.every(({ answers }) => answers === null || answers === newer)).toBe(true);
    expect(desk.sweep.get().answer?.speeds).toEqual([7, 8]);
  });

  it('says what is wrong with a question', async () => {
    const desk = made(crew());
    await watched(desk, () => desk.ask(question({ setups: ['softer'] })));
    expect(desk.sweep.get()).toMatchObject({ status: 'broken', answer: null });
    expect(desk.sweep.get().message).toContain('softer');
  });

  it('says why when a worker cannot be started', async () => {
    const broken: Crew = {
      ...crew(),
      take: () => ({
        open: () => Promise.reject(new Error('no such script')),
        rows: () => Promise.reject(new Error('no plan')),
        end() {},
      }),
    };
    const desk = made(broken);
    await watched(desk, () => desk.ask(question()));
    expect(desk.sweep.get()).toMatchObject({ status: 'broken', message: 'no such script' });
  });
});

describe('a sweep desk that cannot be fetched', () => {
  it('says so, and tries again with the next sweep', async () => {
    let tries = 0;
    const desk = lateSweepDesk(async () => {
      tries += 1;
      if (tries === 1) throw new Error('no network');
      return createSweepDesk(crew());
    });
    await watched(desk, () => desk.ask(question()));
    expect(desk.sweep.get()).toMatchObject({ status: 'broken', message: 'The sweep could not be fetched.' });
    await watched(desk, () => desk.ask(question()));
    expect(desk.sweep.get().status).toBe('done');
  });
});
