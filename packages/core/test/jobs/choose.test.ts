import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeAnswers } from '../../src/choose/merge.ts';
import { comparedMiddles, type Judged } from '../../src/choose/objectives.ts';
import { frontOf } from '../../src/choose/pareto.ts';
import { judgeScout, searchPart } from '../../src/choose/parts.ts';
import { candidateAt } from '../../src/choose/space.ts';
import { chooseAnswer, startChoose } from '../../src/jobs/choose-start.ts';
import { type ChooseStudy, openStudy } from '../../src/jobs/choose-study.ts';
import { readRig } from '../../src/rigfile/read.ts';
import { messageCrew } from './crews.ts';
import { must } from './ochre.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
/** A study small enough to be judged whole: 2 settings × 2 stops × 2 spacers × 2 drops, invented like the rig. */
const small = (more = 'budget: 150') =>
  OCHRE.replace(
    /^choices:\n(?: .*\n)+/m,
    `choices:
  ${more}
  front:
    stop: { soft: { price: 95, hours: 1 } }
    stopSpacer: { sizes: [1/2 in ± 1/32], price: 12, hours: 1 }
    seatAndStopDrop: { sizes: [1 in ± 1/32], price: 60, hours: 8 }
    trail: { shockSetting: [trail, road] }
  drive:
    - { course: whoops, trim: trail }
    - { course: ledge, trim: trail }
  fastest: { course: whoops, trim: trail, from: 8 mph, to: 30 mph }
`,
  );
const rigOf = (text: string) => must(readRig(text));
const request = (text = small()) => ({ rig: rigOf(text), trials: 4, seed: 3 });
const studyOf = (text = small()): ChooseStudy => must(openStudy(request(text)));

/** Judges a candidate to the end, whatever others do. */
function fullyJudged({ judge, problem, table }: ChooseStudy, index: number) {
  const candidate = candidateAt(table.space, index);
  const bounds: (readonly number[])[] = [];
  const first = judge.bound(candidate);
  if (first.kind === 'barred') return { bounds, judged: null, by: first.by };
  if (first.kind === 'bound') bounds.push(first.atLeast);
  const trial = judge.open(candidate);
  for (let stage = 1; stage < problem.stages.length; stage += 1) {
    const report = trial.next();
    if (report.kind === 'bound') bounds.push(report.atLeast);
    else if (report.kind === 'barred') return { bounds, judged: null, by: report.by };
    else return { bounds, judged: { index, ...report } satisfies Judged, by: [] as readonly string[] };
  }
  throw new Error('a candidate was not judged in the stages that are named');
}

async function answersOf(text: string, workers: number, options: Parameters<typeof startChoose>[2] = {}) {
  const outcome = await startChoose(request(text), messageCrew(workers), options).outcome;
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
  return outcome.answer;
}

describe('choosing the best few setups', () => {
  const study = studyOf();
  const all = Array.from({ length: study.layout.count }, (_, index) => fullyJudged(study, index));

  it('finds the front of the staged search by judging every candidate in full as well', () => {
    const judged = all.flatMap((one) => one.judged ?? []);
    const points = judged.map((one) => comparedMiddles(one, study.problem.objectives));
    const expected = frontOf(points).map((place) => points[place].join());
    const scouted = study.layout.scouts.map((_, k) =>
      judgeScout(study.problem, study.layout, study.judge, k),
    );
    const parts = Array.from({ length: study.layout.parts }, (_, part) =>
      searchPart(study.problem, study.layout, study.judge, scouted, part),
    );
    const merged = mergeAnswers(study.problem, study.layout, [...scouted, ...parts]);
    if ('missing' in merged) throw new Error('parts are missing');
    const found = merged.members.map((one) => comparedMiddles(one, study.problem.objectives).join());
    expect(new Set(found)).toEqual(new Set(expected));
    expect(found.length).toBeGreaterThan(1);
    expect(merged.tally.seen).toBe(study.layout.count);
  });

  it('a bound is a bound: no candidate comes out below what was known of it at any stage', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: all.length - 1 }), (index) => {
        const { bounds, judged } = all[index];
        if (judged === null) return;
        const middles = judged.objectives.map(({ middle }) => middle);
        for (const atLeast of bounds)
          for (const [k, least] of atLeast.entries()) expect(middles[k]).toBeGreaterThanOrEqual(least);
      }),
      { seed: 11, numRuns: 40 },
    );
  });

  it('the budget bars what costs more, and names itself', () => {
    const barred = all.filter(({ by }) => by.includes('budget'));
    expect(barred).toHaveLength(all.length / 4);
    for (const { judged } of barred) expect(judged).toBeNull();
  });

  it('one worker, two workers, two shards and a study taken up again give the same answer', async () => {
    const whole = await answersOf(small(), 1);
    const shards = [
      ...(await answersOf(small(), 1, { share: { shard: 1, of: 2 } })),
      ...(await answersOf(small(), 1, { share: { shard: 0, of: 2 } })),
    ];
    const kept: unknown[] = [];
    const again = await answersOf(small(), 2, {
      done: whole.slice(0, 2),
      onPart: (part) => kept.push(part),
    });
    expect(kept).toHaveLength(whole.length - 2);
    const told = chooseAnswer(study, whole);
    expect(told).toEqual(chooseAnswer(study, await answersOf(small(), 2)));
    expect(told).toEqual(chooseAnswer(study, shards));
    expect(told).toEqual(chooseAnswer(study, again));
    if ('missing' in told) throw new Error('parts are missing');
    expect(told.doNothing?.changes).toEqual([]);
    expect(told.onlySettings?.settings).toBe('best');
    expect(told.members.every(({ why }) => why.reasons.length > 0)).toBe(true);
    expect(structuredClone(told)).toEqual(told);
  });

  it('says which scouts and parts nobody did', () => {
    expect(chooseAnswer(study, [])).toEqual({
      missing: Array.from({ length: study.layout.scouts.length + study.layout.parts }, (_, unit) => unit),
    });
  });

  it('a study cancelled ends as cancelled', async () => {
    const work = startChoose(request(), messageCrew(1));
    work.cancel();
    expect((await work.outcome).kind).toBe('cancelled');
  });

  it.each([
    ['without choices', OCHRE.replace(/^choices:\n(?: .*\n)+/m, ''), 'choose-nothing'],
    [
      'with a speed no rig is driven at',
      small('from: as-it-is').replace('to: 30 mph', 'to: 900 mph'),
      'ask-speed-absurd',
    ],
    [
      'with a part whose length nobody measured',
      small().replace('      freeLength: 3 in ± 1/32\n', ''),
      'rig-needs-reading',
    ],
  ])('refuses a study %s', (_, text, code) => {
    const opened = openStudy(request(text));
    expect(opened.ok ? [] : opened.problems.map((one) => one.code)).toContain(code);
  });
});
