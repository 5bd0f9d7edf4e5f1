import { describe, expect, it } from 'vitest';
import { readRig } from '../../src/rigfile/index.ts';
import { problemText } from '../../src/words/problems.ts';
import { must, problemsOf, storyText } from '../travel/stories/story.ts';

const story = (changes: Readonly<Record<string, string | null>>) => storyText('s11-bracket', changes);
const KEY = 'front.bracket.stop';
const said = (changes: Readonly<Record<string, string | null>>): readonly string[] =>
  problemsOf(story(changes)).map(problemText);

describe('a bracket in a rig file', () => {
  it('is read part by part; what was not told is null, and mild steel is taken and marked', () => {
    const rig = must(readRig(story({ [`${KEY}.yield`]: null })));
    const { stop, spring, shock } = rig.front.brackets;
    expect([spring, shock]).toEqual([null, null]);
    expect(stop).toMatchObject({ kind: 'tower', weldLeg: null, bolts: null, stud: null, plate: null });
    expect(stop?.section).toMatchObject({ shape: 'box', depth: { value: 0.05 } });
    expect(stop?.yield).toMatchObject({ value: 250e6, origin: 'assumed' });
    expect(rig.assumptions.map(({ rule }) => rule)).toContain('bracket-yield');
  });

  it('without any, nothing is assumed about brackets', () => {
    const rig = must(readRig(story({ 'front.bracket': null, 'rear.bracket': null, limits: null })));
    expect(rig.limits.bracketFactor).toBeNull();
    expect(rig.assumptions.filter(({ key }) => key.includes('bracket'))).toEqual([]);
  });

  it('needs a standoff and a section', () => {
    const keys = problemsOf(story({ [`${KEY}.standoff`]: null, [`${KEY}.section.depth`]: null })).map(
      ({ where }) => where.key,
    );
    expect(keys).toEqual([`${KEY}.standoff`, `${KEY}.section.depth`]);
  });

  it.each([
    [{ [`${KEY}.section.wall`]: '25 mm' }, 'less than half of 50 mm ± 0'],
    [{ [`${KEY}.ultimate`]: '200 MPa' }, 'more than the yield strength'],
    [{ [`${KEY}.kind`]: 'plank' }, 'tower'],
    [{ [`${KEY}.standoff`]: '110' }, 'mm'],
    [{ [`${KEY}.section.diameter`]: '50 mm' }, `either this or ${KEY}.section.diameter`],
  ])('refuses %o with its line, and says what is accepted', (changes, accepted) => {
    const texts = said(changes);
    expect(texts.length).toBeGreaterThan(0);
    expect(texts.join('\n')).toContain(accepted);
    expect(texts[0]).toMatch(/^(line )?\d+/);
  });
});
