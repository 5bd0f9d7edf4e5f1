import { readFileSync } from 'node:fs';
import { sameThreadCrew } from '@lastinch/core';
import { chooseAnswer, openStudy, type PartAnswers } from '@lastinch/core/choose';
import { readRig } from '@lastinch/core/rigfile';
import { beforeEach, describe, expect, it } from 'vitest';
import { type ChooseWorker, chooseHands } from '../../src/choose-hands.ts';
import { type ChooseDesk, type ChooseState, createChooseDesk, requestOf } from '../../src/choosing.ts';
import type { PieceStore } from '../../src/keep/pieces.ts';

const OCHRE = new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url);
/** The demo rig with a front stop to choose from, on a course that is short. Invented as that rig is. */
const text = `${readFileSync(OCHRE, 'utf8').replace(/^choices:[\s\S]*/m, '')}choices:
  front:
    stop:
      soft: { price: 95, hours: 1 }
    stopSpacer: { sizes: [1/2 in ± 1/32], price: 12, hours: 1 }
  drive:
    - { course: ledge, trim: trail }
`;
const read = readRig(text, { file: 'ochre.rig.yaml' });
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const rig = read.value;
const request = requestOf(rig, 4, 1);

const crew = () =>
  sameThreadCrew(
    () => new Promise((resume) => setTimeout(resume, 0)),
    () => performance.now(),
  );

/** The worker that makes the answer, in this thread. */
function spawn(): ChooseWorker {
  const worker: ChooseWorker = {
    onmessage: null,
    onerror: null,
    terminate() {},
    postMessage({ request: asked, done }) {
      const study = openStudy(asked);
      if (!study.ok) throw new Error('refused');
      const answer = chooseAnswer(study.value, done);
      if ('missing' in answer)
        worker.onmessage?.({ data: { kind: 'broken', message: 'pieces are missing' } });
      else worker.onmessage?.({ data: { kind: 'done', answer } });
    },
  };
  return worker;
}

/** What the browser keeps, over a reload. */
let kept: { study: string; pieces: PartAnswers } | null = null;
const store: PieceStore = {
  read: async (study) => (kept?.study === study ? kept.pieces : []),
  write: (study, pieces) => {
    kept = { study, pieces };
  },
};
const desk = (build = 'one'): ChooseDesk =>
  createChooseDesk(async () => chooseHands(crew(), spawn, store, build));

async function until(one: ChooseDesk, is: (state: ChooseState) => boolean): Promise<ChooseState> {
  while (!is(one.state.get())) await new Promise((soon) => setTimeout(soon, 1));
  return one.state.get();
}
const ended = ({ status }: ChooseState): boolean =>
  ['done', 'cancelled', 'refused', 'broken'].includes(status);

beforeEach(() => {
  kept = null;
});

describe('choose desk', () => {
  it('answers, and looks at the first of the list, by two things in which members differ', async () => {
    const one = desk();
    one.ask(request);
    const { status, answer, message } = await until(one, ended);
    expect([status, message]).toEqual(['done', '']);
    expect(answer?.members.length).toBeGreaterThan(0);
    const { chosen, x, y } = one.view.get();
    expect(chosen).toBe(answer?.members[0]?.index);
    expect(x).not.toBe(y);
  });

  it('is stopped, and goes on from what was kept after a reload, to the same answer', async () => {
    const whole = desk();
    whole.ask(request);
    const { answer } = await until(whole, ended);
    const pieces = kept as unknown as { study: string; pieces: PartAnswers };
    kept = null;

    const first = desk();
    first.ask(request);
    await until(first, ({ kept: some }) => (some?.pieces ?? 0) >= 2);
    first.cancel();
    expect(first.state.get().status).toBe('cancelled');

    const second = desk();
    second.look(request);
    const { kept: found } = await until(second, (state) => state.kept !== null);
    expect(found?.pieces).toBeGreaterThanOrEqual(2);
    expect(found?.pieces).toBeLessThan(pieces.pieces.length);
    second.ask(request);
    const again = await until(second, ended);
    expect(JSON.stringify(again.answer)).toBe(JSON.stringify(answer));
  });

  it('does not go on from pieces of another build or of another question', async () => {
    const first = desk();
    first.ask(request);
    await until(first, ended);
    for (const [other, asked] of [
      [desk('two'), request],
      [desk(), requestOf(rig, 5, 1)],
    ] as const) {
      other.look(asked);
      await new Promise((soon) => setTimeout(soon, 20));
      expect(other.state.get().kept).toBeNull();
    }
  });

  it('does not ask anew because a proposal was written into the rig file', () => {
    const setups = { ...rig.setups, mine: { id: 'mine', notes: '', front: {}, rear: {} } };
    expect(JSON.stringify(requestOf({ ...rig, setups }, 4, 1))).toBe(JSON.stringify(request));
  });

  it('says that it broke when what does the work cannot be fetched', async () => {
    const one = createChooseDesk(() => Promise.reject(new Error('no way there')));
    one.ask(request);
    expect(await until(one, ended)).toMatchObject({ status: 'broken', message: 'no way there' });
  });

  it('tells what is wrong with the rig file', async () => {
    const one = desk();
    one.ask({ ...request, rig: { ...rig, choices: null } });
    const { status, problems } = await until(one, ended);
    expect([status, problems[0]?.code]).toEqual(['refused', 'choose-nothing']);
  });
});
