import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CORNERS } from '../../src/finding/place.ts';
import { BRACKET_TRIALS, checkBrackets } from '../../src/jobs/bracket.ts';
import { compareSetups } from '../../src/jobs/compare.ts';
import { linksRig } from '../../src/jobs/links.ts';
import { rideRig } from '../../src/jobs/ride.ts';
import { formatFigure } from '../../src/quantity/format.ts';
import { readRig } from '../../src/rigfile/read.ts';
import { SHEET_SECTIONS, type Sheet, type SheetBlock, type SheetSectionId } from '../../src/sheet/sheet.ts';
import { type SheetRequest, sheetOfRig } from '../../src/sheet/sheet-of-rig.ts';
import { findingText } from '../../src/words/findings.ts';
import { must, ochre } from '../jobs/ochre.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
/** A setup that changes all that can be cut, bolted or loaded. */
const EVERY_CUT = `  all:
    front:
      stopGap: 2 in
      stopSpacer: 1/4 in
      springSpacer: 1/2 in
      notch: { sump: 1/2 in }
      addedLoad: 50 lb
    rear:
      strapLength: 15 1/2 in
      links: { lower: { axle: { up: 1/2 in }, frame: { ahead: 1 in }, longer: 1/8 in } }
      shaft: { case: { up: 1/4 in }, pinionJoint: double, slip: 5 in }
`;
const TRIALS = 4;
const asked: SheetRequest = {
  rig: ochre,
  setup: 'soft-stop-seat-down',
  courses: ['ledge', 'drop'],
  system: 'shop',
  trials: TRIALS,
  seed: 1,
};
const sheet = must(sheetOfRig(asked));
const blocksOf = (one: Sheet, id: SheetSectionId): readonly SheetBlock[] =>
  one.sections.find((section) => section.id === id)?.blocks ?? [];
const wordsOf = (block: SheetBlock): string =>
  block.kind === 'table'
    ? [...block.heads, ...block.rows.flat()].join('\n')
    : block.kind === 'reading'
      ? [block.what, block.expected, block.key].join('\n')
      : block.kind === 'columns'
        ? ''
        : block.text;
const text = (id: SheetSectionId, one = sheet): string => blocksOf(one, id).map(wordsOf).join('\n');
const shop = (figure: Parameters<typeof formatFigure>[0]): string => formatFigure(figure, { system: 'shop' });

describe('a build sheet', () => {
  it('has every section in its order, none empty, and survives the way to a worker', () => {
    expect(sheet.sections.map(({ id }) => id)).toEqual(SHEET_SECTIONS);
    for (const { blocks } of sheet.sections) expect(blocks.length).toBeGreaterThan(0);
    expect(structuredClone(sheet)).toEqual(sheet);
  });

  it('says of the travel what the check says, figure by figure', () => {
    const { before, after, gone, come } = must(
      compareSetups(ochre, { setup: asked.setup, against: 'as-measured' }),
    );
    const [decision, travel, cold] = [text('decision'), text('travel'), text('cold')];
    for (const corner of CORNERS) {
      const [was, is] = [before.travel.corners[corner], after.travel.corners[corner]];
      expect(decision).toContain(`${shop(was.spare)}\n${shop(is.spare)}`);
      for (const term of ['hardTravel', 'freeBump', 'crush', 'clearance', 'spare'] as const) {
        expect(travel).toContain(shop(was[term]));
        expect(travel).toContain(shop(is[term]));
      }
      expect(cold).toContain(shop(is.freeBump));
      expect(cold).toContain(shop(is.contacts[0].travel));
    }
    for (const finding of [...gone, ...come])
      expect(decision).toContain(findingText(finding, { system: 'shop' }));
    expect(blocksOf(sheet, 'travel').find(({ kind }) => kind === 'columns')).toMatchObject({
      travel: after.travel,
      against: before.travel,
    });
  });

  it('expects the marks that the ride of the screen expects', () => {
    const card = text('card');
    for (const courseName of ['ledge', 'drop']) {
      const { shape, speed } = ochre.courses[courseName];
      const { corners } = must(
        rideRig({
          rig: ochre,
          setup: asked.setup,
          course: shape,
          courseName,
          speed: speed ?? 1,
          historyRate: 0,
          trials: TRIALS,
          seed: 1,
        }),
      );
      for (const [one, other] of [CORNERS.slice(0, 2), CORNERS.slice(2)]) {
        const hit = corners[one].clearance.value <= corners[other].clearance.value ? one : other;
        expect(card).toContain(`axle travel ${shop(corners[hit].peakTravel)}`);
        expect(card).toContain(shop(corners[hit].clearance));
      }
    }
  });

  it('lists hoses, shaft and steering as the links step does, with what is to be done', () => {
    const { knockOn } = must(linksRig(ochre, { setup: asked.setup, against: 'as-measured' }));
    const lines = text('lines');
    const caster = knockOn.find(({ of }) => of === 'caster');
    expect(caster?.after).toBeTruthy();
    expect(lines).toContain(shop(caster!.after!));
    expect(lines).toContain('a qualified person looks at them');
  });

  it('turns each choice of a setup into one box to tick, and sets the trims of the file beside it', () => {
    const ticks = blocksOf(sheet, 'work').filter(({ kind }) => kind === 'tick');
    expect(ticks).toHaveLength(2);
    expect(text('work')).toMatch(/Lower coil seat and stop together on the frame by 1 in ± 1\/32/);
    expect(text('work')).toMatch(/Stop: soft, free length 3 in/);
    expect(text('settings')).toMatch(/trail-trim\nroad-trim/);
  });

  it('warns on its first page where the setup is not proven', () => {
    const fails = must(sheetOfRig({ ...asked, setup: 'soft-stop-bolted-in' }));
    expect(blocksOf(fails, 'decision').filter(({ kind }) => kind === 'warn')).toHaveLength(1);
    expect(text('decision', fails)).toContain('fail');
  });

  it('says that nothing is cut where a setup only sets something', () => {
    const trim = must(sheetOfRig({ ...asked, setup: 'road-trim' }));
    expect(text('work', trim)).toContain('Nothing is cut or bolted');
    expect(text('order', trim)).not.toMatch(/Coils out|Welded out/);
    expect(text('order', sheet)).toMatch(/Coils out[\s\S]*Welded out/);
  });

  it('expects no mark where no course has a speed, and refuses a setup that is not there', () => {
    expect(text('card', must(sheetOfRig({ ...asked, courses: [] })))).toContain('no course');
    expect(sheetOfRig({ ...asked, setup: 'nothing' })).toMatchObject({
      ok: false,
      problems: [{ code: 'ask-unknown-setup' }],
    });
  });

  it('says of each bracket what the bracket command says, and what was not checked', () => {
    const { brackets } = must(
      checkBrackets({
        rig: ochre,
        setup: asked.setup,
        demands: ['ledge', 'drop'].map((name) => ({
          name,
          course: ochre.courses[name].shape,
          speed: ochre.courses[name].speed ?? 1,
        })),
        trials: BRACKET_TRIALS,
        seed: 1,
        force: null,
      }),
    );
    const said = text('brackets');
    expect(brackets.length).toBeGreaterThan(0);
    for (const one of brackets) {
      expect(said).toContain(shop(one.ride.force));
      for (const { factor } of one.ride.lines) expect(said).toContain(shop(factor));
    }
    expect(said).toContain('Not checked:');
    expect(text('brackets', must(sheetOfRig({ ...asked, courses: [] })))).toContain('No bracket was checked');
  });

  it('writes every cut that a setup can hold', () => {
    const rig = must(
      readRig(OCHRE.replace('setups:\n', `setups:\n${EVERY_CUT}`), { file: 'every.rig.yaml' }),
    );
    const work = text('work', must(sheetOfRig({ ...asked, rig, setup: 'all' })));
    for (const said of [
      'Set the stop gap',
      'Solid spacer of',
      'on the coil that is there',
      'Notch or move',
      'Load of',
      'Strap of',
      'Link lower',
      'Slip of the driveshaft',
    ])
      expect(work).toContain(said);
  });
});
