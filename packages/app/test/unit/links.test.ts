import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { AS_MEASURED, checkRig, type LinksAnswer, type Rig, resolveSetup, type Setup } from '@lastinch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDocument, openDocument, undoDocument } from '../../src/document/rig-document.ts';
import { createLinksDesk, type LinksWorker, type ToLinksWorker } from '../../src/links.ts';
import { axleOf, type LinkedAxle, posedAxle, reachOf } from '../../src/steps/links/axle.ts';
import { figuresHere, figuresOver, figureText, quantitiesOf } from '../../src/steps/links/figures.ts';
import {
  asMove,
  editsOfMove,
  handleTarget,
  movedTotal,
  type PointTarget,
  STEP,
  targetId,
  targetsOf,
  withPoint,
} from '../../src/steps/links/points.ts';
import { copyOfSetup } from '../../src/steps/travel/new-proposal.ts';

const OCHRE = readFileSync(join(import.meta.dirname, '../../../../examples/ochre/ochre.rig.yaml'), 'utf8');
const PROPOSAL = 'soft-stop-seat-down';
const open = () => openDocument(OCHRE, 'ochre.rig.yaml', OCHRE);
const rig = open().rig as Rig;

function setupIn(of: Rig, id: string): Setup {
  const found = resolveSetup(of, id);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}
function axleIn(setup: Setup, end: 'front' | 'rear'): LinkedAxle {
  const check = checkRig(setup.rig, { setup: setup.id, trials: 64, seed: 1 });
  if (!check.ok) throw new Error(JSON.stringify(check.problems));
  const answer = axleOf(setup, check.value, end);
  if (answer.status !== 'linked') throw new Error(`no links: ${answer.status}`);
  return answer.axle;
}
const lowerFrame: PointTarget = { of: 'link', link: 'lower', where: 'frame' };
const STEP_LENGTH = { label: 'x', gesture: null };

describe('a point that is moved', () => {
  it('stands where the file will have it: what is drawn under the finger is what is written down', () => {
    const proposal = setupIn(rig, PROPOSAL);
    fc.assert(
      fc.property(
        fc.constantFrom(...targetsOf(proposal, 'rear')),
        fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -0.03, max: 0.03, noNaN: true }))),
        fc.constantFrom('shop' as const, 'metric' as const),
        (target, by, system) => {
          const total = movedTotal(proposal, 'rear', target, [by[0]!, by[1]!, by[2]!], system);
          const drawn = axleIn(withPoint(proposal, 'rear', target, total), 'rear');
          const edits = editsOfMove(proposal, 'rear', target, total, system);
          const edited = editDocument(open(), edits, STEP_LENGTH);
          expect(edited.problems).toEqual([]);
          const written = axleIn(setupIn(edited.rig as Rig, PROPOSAL), 'rear');
          drawn.geometry.links.forEach((link, k) => {
            const same = written.geometry.links[k]!;
            for (const which of ['axle', 'body'] as const)
              link[which].forEach((at, axis) => {
                expect(at).toBeCloseTo(same[which][axis]!, 9);
              });
          });
        },
      ),
      { seed: 4, numRuns: 25 },
    );
  });

  it('moves by whole steps of the tape, and only in the ways that it was moved', () => {
    const proposal = setupIn(rig, PROPOSAL);
    const [ahead, out, up] = movedTotal(proposal, 'rear', lowerFrame, [0.0105, 0, -0.0021], 'shop');
    expect(ahead / STEP.shop.fine).toBeCloseTo(7, 9); // 0.0105 m is 6.6 sixteenths
    expect(out).toBe(0);
    expect(up / STEP.shop.fine).toBeCloseTo(-1, 9);
    const texts = editsOfMove(proposal, 'rear', lowerFrame, [ahead, out, up], 'shop');
    expect(texts).toEqual([
      { path: ['setups', PROPOSAL, 'rear', 'links', 'lower', 'frame', 'ahead'], text: '7/16 in' },
      { path: ['setups', PROPOSAL, 'rear', 'links', 'lower', 'frame', 'up'], text: '-1/16 in' },
    ]);
  });

  it('leaves nothing in the file when it comes back to where it was, and undo gives the old text', () => {
    const moved = editDocument(
      open(),
      editsOfMove(setupIn(rig, PROPOSAL), 'rear', lowerFrame, [0.0254, 0, 0], 'shop'),
      STEP_LENGTH,
    );
    const proposal = setupIn(moved.rig as Rig, PROPOSAL);
    const back = movedTotal(proposal, 'rear', lowerFrame, [-0.0254, 0, 0], 'shop');
    expect(editsOfMove(proposal, 'rear', lowerFrame, back, 'shop')).toEqual([
      { path: ['setups', PROPOSAL, 'rear', 'links', 'lower', 'frame', 'ahead'], text: null },
    ]);
    expect(undoDocument(moved).history.text).toBe(OCHRE);
  });

  it('goes outward on either side when it is pulled away from the centreline', () => {
    expect(asMove([0, 0.01, 0], 'left')).toEqual([0, 0.01, 0]);
    expect(asMove([0, -0.01, 0], 'right')).toEqual([0, 0.01, 0]);
    expect(asMove([0, -0.01, 0], null)).toEqual([0, -0.01, 0]);
    expect(handleTarget('lower-right.frame')).toEqual({ target: lowerFrame, side: 'right' });
    expect(targetId(handleTarget('panhard.axle').target)).toBe('panhard.axle');
  });
});

describe('a copy of a proposal', () => {
  it('keeps the joints that it moves', () => {
    const moved = editDocument(
      open(),
      editsOfMove(setupIn(rig, PROPOSAL), 'rear', lowerFrame, [0, 0, -0.0254], 'shop'),
      STEP_LENGTH,
    );
    const patch = (moved.rig as Rig).setups[PROPOSAL]!;
    const copied = editDocument(moved, copyOfSetup(patch, 'proposal-1'), STEP_LENGTH);
    expect(copied.problems).toEqual([]);
    const value = (id: string) => (copied.rig as Rig).setups[id]?.rear.links?.lower?.frame?.up?.value;
    expect(value('proposal-1')).toBe(value(PROPOSAL));
    expect(value('proposal-1')).toBeCloseTo(-0.0254, 12);
  });
});

describe('what moves with an axle', () => {
  const axle = axleIn(setupIn(rig, AS_MEASURED), 'rear');
  const check = checkRig(rig, { setup: AS_MEASURED, trials: 64, seed: 1 });
  if (!check.ok) throw new Error('the demo rig is whole');

  it('has the pinion at ride height where the angle gauge had it', () => {
    const pinion = quantitiesOf('rear').find(({ id }) => id === 'pinion')!;
    const here = figuresHere(axle, 'rear', { bump: 0, roll: 0 });
    expect(figureText(pinion, pinion.at(here, 0), 'shop')).toBe('9.0\u00a0deg');
  });

  it('is the same on a curve as at one place, coarse or fine', () => {
    const reach = reachOf([check.value], 'rear');
    const fine = figuresOver(axle, 'rear', reach, 0.05, 31);
    for (const quantity of quantitiesOf('rear').filter(({ isThere }) => isThere(axle)))
      for (const k of [0, 10, 30]) {
        const here = figuresHere(axle, 'rear', { bump: fine.curves.bumps[k]!, roll: 0.05 });
        expect(quantity.at(here, 0), quantity.id).toBeCloseTo(quantity.at(fine, k), 9);
      }
  });

  it('ends where a link does, with its name, and has no figure beyond', () => {
    const stopped = posedAxle(axle, { bump: 1.5, roll: 0 });
    expect(stopped.status).toBe('unreachable');
    const anti = quantitiesOf('rear').find(({ id }) => id === 'anti')!;
    const here = figuresHere(axle, 'rear', { bump: 1.5, roll: 0 });
    expect(figureText(anti, anti.at(here, 0), 'shop')).toBe('out of reach');
  });
});

describe('the desk of the knock-on list', () => {
  interface Stand extends LinksWorker {
    readonly asked: ToLinksWorker[];
    ended: boolean;
  }
  const bench = () => {
    const workers: Stand[] = [];
    const desk = createLinksDesk(() => {
      const worker: Stand = {
        asked: [],
        ended: false,
        onmessage: null,
        onerror: null,
        postMessage(message) {
          worker.asked.push(message);
        },
        terminate() {
          worker.ended = true;
        },
      };
      workers.push(worker);
      return worker;
    });
    return { desk, workers };
  };
  const question = (proposed: string) => ({ rig, now: AS_MEASURED, proposed });
  const answer = (setup: string) => ({ setup }) as unknown as LinksAnswer;

  it('asks once for the same question, and ends what is busy with an older one', () => {
    const { desk, workers } = bench();
    desk.ask(question('a'));
    desk.ask(question('a'));
    expect(workers[0]?.asked).toHaveLength(1);
    desk.ask(question('b'));
    expect(workers[0]?.ended).toBe(true);
    expect(workers).toHaveLength(2);
    workers[1]?.onmessage?.({ data: { kind: 'answer', id: 2, lane: 'proposed', answer: answer('b') } });
    workers[1]?.onmessage?.({ data: { kind: 'done', id: 2 } });
    expect(desk.state.get().answers.proposed?.setup).toBe('b');
    desk.ask(question('c'));
    expect(workers, 'an idle worker is used again').toHaveLength(2);
    expect(desk.state.get().answers.proposed?.setup, 'the last answer stays in view').toBe('b');
  });

  it('gives one answer to both when they are the same setup', () => {
    const { desk, workers } = bench();
    desk.ask(question(AS_MEASURED));
    workers[0]?.onmessage?.({
      data: { kind: 'answer', id: 1, lane: 'proposed', answer: answer(AS_MEASURED) },
    });
    const { now, proposed } = desk.state.get().answers;
    expect(now).toBe(proposed);
  });

  it('says what broke, takes a fresh worker, and may be asked again', () => {
    const { desk, workers } = bench();
    desk.ask(question('a'));
    workers[0]?.onerror?.({ message: 'out of memory' });
    expect(desk.state.get()).toMatchObject({ status: 'broken', message: 'out of memory' });
    desk.ask(question('a'));
    expect(workers).toHaveLength(2);
  });
});
