import { describe, expect, it } from 'vitest';
import { changed } from '../rigfile/linked-rig.ts';
import { storyText } from '../travel/stories/story.ts';
import { after, asked, before, line } from './asked-links.ts';

const DEGREES = 180 / Math.PI;

/** Acceptance story S5. Its numbers: common practice, no source; the rig invented to fit. */
describe('S5: plus 40 mm at the rear, driveline', () => {
  const answer = asked(storyText('s5-plus-forty'), { setup: 'plus-forty', trials: 64 });

  it('joints go from 12.2 to 14.6 degrees at ride, and to 22.8 at full droop', () => {
    for (const joint of ['case', 'pinion']) {
      expect(Math.abs(before(answer, `joint-ride.rear.${joint}`) * DEGREES - 12.2)).toBeLessThan(0.1);
      expect(Math.abs(after(answer, `joint-ride.rear.${joint}`) * DEGREES - 14.6)).toBeLessThan(0.1);
      expect(Math.abs(after(answer, `joint-droop.rear.${joint}`) * DEGREES - 22.8)).toBeLessThan(0.2);
    }
  });

  it('the angle is already too much for 80 km/h before, and more so after', () => {
    const own = line(answer, 'joint-ride.rear.case');
    expect(answer.roadSpeed).toMatchObject({ from: 'course' });
    // The rule of the story: 7 to 9 degrees at 2250 rpm.
    expect(own.limit!.value * DEGREES).toBeGreaterThan(7);
    expect(own.limit!.value * DEGREES).toBeLessThan(9);
    expect(own.before!.value).toBeGreaterThan(own.limit!.value);
    expect(own.after!.value).toBeGreaterThan(own.before!.value);
    expect(own.used).toBeGreaterThan(1.5);
    expect(own.findings).toContain('shaft-angle-speed');
    expect(own.remedies.map(({ code }) => code)).toContain('double-joint');
  });

  it('the plunge of about 91 mm is more than the slip of 75: it fails, with a longer slip named', () => {
    const swing = line(answer, 'slip-swing.rear');
    expect(Math.abs(swing.after!.value - 0.091)).toBeLessThan(0.002);
    expect(swing).toMatchObject({ kept: 'over', limitOf: 'part' });
    const slip = swing.remedies.find(({ code }) => code === 'longer-slip');
    // At least 115: 91 and 25 that must stay engaged.
    expect(slip!.amount!.value).toBeGreaterThan(0.115);
    expect(slip!.amount!.value).toBeLessThan(0.122);
    expect(answer.findings[0]!.severity).toBe('over');
  });

  it('a spacer moves neither end of the travel, so what the shaft does there stays', () => {
    expect(answer.steady.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['slip-swing.rear', 'joint-droop.rear.case', 'joint-bump.rear.case']),
    );
  });

  it('the nearest to its limit stands first, what has none last', () => {
    const used = answer.knockOn.map((each) => each.used);
    const known = used.filter((each) => each !== null);
    expect(known).toEqual([...known].sort((a, b) => b - a));
    expect(used.slice(known.length).every((each) => each === null)).toBe(true);
    expect(answer.knockOn[0]!.of).toBe('joint-ride');
  });

  it('cured: double joint, longer slip, pinion turned to a degree or two below the shaft', () => {
    // With the pinion its joint goes up too, so less turn is needed than on a shaft that stays where it is.
    const text = changed(storyText('s5-plus-forty'), ['longer: 50 mm', 'longer: 38 mm']);
    const cured = asked(text, { setup: 'cured' });
    expect(cured.findings.filter(({ severity }) => severity === 'over')).toEqual([]);
    expect(cured.findings.map(({ code }) => code)).not.toContain('shaft-pinion-aim');
    expect(line(cured, 'slip-swing.rear').kept).toBe('fine');
    expect(line(cured, 'shaft-speed.rear').kept).toBe('fine');
    expect(after(cured, 'joint-droop.rear.case') * DEGREES).toBeLessThan(25);
  });

  it('at 30 km/h the angle is tolerable, the slip still fails', () => {
    const slow = asked(storyText('s5-plus-forty'), { setup: 'plus-forty', roadSpeed: 30 / 3.6 });
    expect(line(slow, 'joint-ride.rear.case').kept).toBe('fine');
    expect(slow.findings.map(({ code }) => code)).not.toContain('shaft-angle-speed');
    expect(line(slow, 'slip-swing.rear').kept).toBe('over');
  });
});

/** Acceptance story S7, with the ends of its hose in space. */
describe('S7: strap and hose', () => {
  const fitted = asked(storyText('s7-hose-in-space'), { setup: 'as-measured' });
  const shorter = asked(storyText('s7-hose-in-space'), { setup: 'shorter' });

  it('the stretched strap lets the shock open 12 mm too far: it fails, and a shorter one is named', () => {
    const own = line(fitted, 'shock-left-droop.front');
    expect(own.after!.value).toBeCloseTo(0.712 - 0.724, 9);
    expect(own).toMatchObject({ kept: 'over', limitOf: 'owner' });
    expect(own.findings).toContain('droop-shock-is-the-limit');
    expect(own.remedies.map(({ code }) => code)).toContain('shorten-strap');
  });

  it('the hose has 25 mm of slack at stretched droop and full lock: the least that is usual', () => {
    for (const side of ['left', 'right']) {
      const own = line(fitted, `hose-slack.front.${side}`);
      expect(Math.abs(own.after!.value - 0.025)).toBeLessThan(0.003);
      expect(own.findings).toContain('line-slack-minimum');
      expect(own.remedies.map(({ code }) => code)).toContain('inspect-hose');
    }
  });

  it('a strap of 376 mm leaves 14 mm, loses 24 to 26 of droop and eases the hose', () => {
    expect(after(shorter, 'shock-left-droop.front')).toBeCloseTo(0.014, 3);
    expect(line(shorter, 'shock-left-droop.front').kept).toBe('fine');
    const lost = -line(shorter, 'droop.front').change!.value;
    expect(lost).toBeGreaterThan(0.024);
    expect(lost).toBeLessThan(0.0265);
    expect(after(shorter, 'hose-slack.front.left')).toBeGreaterThan(after(fitted, 'hose-slack.front.left'));
  });

  it('a longer strap lets the hose hang tighter', () => {
    const longer = asked(storyText('s7-hose-in-space'), { setup: 'longer' });
    expect(line(longer, 'hose-slack.front.left').change!.value).toBeLessThan(-0.005);
  });
});
