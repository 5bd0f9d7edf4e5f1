import { describe, expect, it } from 'vitest';
import { heightOf, type TapedPoint, tapedValue } from '../../src/rig/linkage.ts';
import { nominal } from '../../src/rig/reading.ts';
import { readingsOf } from '../../src/rig/readings.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { editRig, fieldsOf } from '../../src/rigfile/index.ts';
import { readingName } from '../../src/words/readings.ts';
import { changed, frontWith, LINKED, RAIL, THREE_LINK } from './linked-rig.ts';
import { must, problemsOf, rigOf, SMALLEST } from './smallest-rig.ts';

const INCH = 0.0254;
const inches = (point: TapedPoint) =>
  [tapedValue(point.ahead, nominal), tapedValue(point.left, nominal), heightOf(point, nominal)].map(
    (metres) => Math.round((metres / INCH) * 1e9) / 1e9,
  );
const front = (text: string) => rigOf(text).front;
const linkOf = (text: string, id: string) => {
  const link = front(text).points.linkage?.links.find((each) => each.id === id);
  if (!link) throw new Error(`no link ${id}`);
  return link;
};

describe('links as somebody with a tape types them', () => {
  it('a rig without links stays a rig, and has none', () => {
    expect(front(SMALLEST).points).toMatchObject({
      linkage: null,
      driveline: null,
      hose: null,
      steering: null,
    });
  });

  it('every height is from where it was taped: floor, tube or rail', () => {
    const text = frontWith(`${RAIL}${THREE_LINK}  tyre: { radius: 17 in }\n`);
    expect(inches(linkOf(text, 'lower-left').axle)).toEqual([-2, 19, 14.5]);
    expect(inches(linkOf(text, 'lower-left').frame)).toEqual([-36, 15.5, 21]);
    expect(inches(linkOf(text, 'upper').frame)).toEqual([-31, -9, 25]);
    expect(inches(linkOf(text, 'panhard').axle)).toEqual([4, -20, 21]);
  });

  it('a pair is typed once: the right one is the mirror of the left', () => {
    const left = linkOf(LINKED, 'lower-left');
    const right = linkOf(LINKED, 'lower-right');
    for (const end of ['axle', 'frame'] as const) {
      const [ahead = 0, aside = 0, up = 0] = inches(left[end]);
      expect(inches(right[end])).toEqual([ahead, -aside, up]);
      expect(right[end].ahead.reading.key).toBe(left[end].ahead.reading.key);
    }
  });

  it('of a right one that stands elsewhere only what differs is typed', () => {
    const text = changed(LINKED, [
      '    upper:\n',
      '      right: { frame: { out: 14 in, aboveFloor: 20 1/2 in } }\n    upper:\n',
    ]);
    expect(inches(linkOf(text, 'lower-right').frame)).toEqual([-36, -14, 20.5]);
    expect(inches(linkOf(text, 'lower-right').axle)[1]).toBe(-19);
    expect(inches(linkOf(text, 'lower-left').frame)).toEqual([-36, 15.5, 21]);
  });

  it('an unstated tolerance is that of tape and plumb line, and marked', () => {
    const { ahead } = linkOf(LINKED, 'upper').axle;
    expect(ahead.reading).toMatchObject({ toleranceOrigin: 'assumed', plus: INCH / 8 });
    expect(rigOf(LINKED).assumptions).toContainEqual({
      key: 'front.links.upper.axle.behind',
      what: 'tolerance',
      rule: 'under-rig-tolerance',
    });
  });

  it('a mount stands at the spread that its part has already, unless it says otherwise', () => {
    const text = changed(LINKED, [
      'spring: { rate: 160 lb/in }',
      'spring: { rate: 160 lb/in, spread: 34 in }',
    ]);
    const { spring, shock } = front(text).points.mounts;
    expect(spring && inches(spring.left.axle)[1]).toBe(17);
    expect(shock && inches(shock.right.axle)[1]).toBe(-20);
  });

  it('shaft, hose and steering are read with their joints, sides and ties', () => {
    const { driveline, hose, steering } = front(LINKED).points;
    expect(driveline).toMatchObject({ pinionJoint: 'single', caseJoint: 'double', slipIn: null });
    expect(driveline?.caseAngle).toMatchObject({ value: 0, origin: 'assumed' });
    expect(hose).toMatchObject({ steers: true, tieTo: 'lower' });
    expect(steering?.dragLink).toMatchObject({ boxSide: 'left' });
    // Their ends say more than one distance at full droop would.
    expect(front(LINKED).hose).toBeNull();
  });

  it('a hose by one distance and a shaft by its droop are read as ever', () => {
    const text = frontWith(
      '  hose: { freeLength: 22 in, distanceAtDroop: 21 in }\n  shaft: { droop: 6 in }\n',
    );
    expect(front(text).hose?.distanceAtDroop.text).toBe('21 in');
    expect(front(text).shaft?.droop.text).toBe('6 in');
    expect(problemsOf(frontWith('  hose: { freeLength: 22 in }\n')).map(({ where }) => where.key)).toEqual([
      'front.hose.distanceAtDroop',
    ]);
    expect(problemsOf(frontWith('  shaft: {}\n')).map(({ where }) => where.key)).toEqual([
      'front.shaft.droop',
    ]);
  });

  it('each kind asks for its own links and no others', () => {
    const asked = (kind: string) =>
      problemsOf(frontWith(`  links: { kind: ${kind} }\n`)).map(({ where }) => where.key?.split('.').at(-1));
    expect(asked('three-link')).toEqual(['lower', 'upper', 'panhard']);
    expect(asked('four-link')).toEqual(['lower', 'upper', 'panhard']);
    expect(asked('triangulated')).toEqual(['lower', 'upper']);
    expect(asked('radius-arms')).toEqual(['arm', 'panhard']);
    expect(asked('leaf')).toEqual([]);
  });
});

describe('links in a setup', () => {
  const text = `${LINKED}setups:
  flatter:
    front:
      links:
        lower: { frame: { up: +1 in, out: -1/2 in } }
        upper: { longer: 1/4 in }
      shaft: { case: { up: -1 in }, caseJoint: double, slip: 5 in }
`;

  it('are moved by their mounts, made longer, and given another shaft', () => {
    const { patch } = must(resolveSetup(rigOf(text), 'flatter')).ends.front;
    expect(patch.links?.lower?.frame?.up?.value).toBeCloseTo(INCH, 12);
    expect(patch.links?.lower?.frame?.out?.value).toBeCloseTo(-INCH / 2, 12);
    expect(patch.links?.upper?.longer?.value).toBeCloseTo(INCH / 4, 12);
    expect(patch.shaft).toMatchObject({ caseJoint: 'double' });
    expect(patch.shaft?.case?.up?.value).toBeCloseTo(-INCH, 12);
  });

  it('have a name in words for every reading', () => {
    for (const { key } of readingsOf(must(resolveSetup(rigOf(text), 'flatter'))))
      expect(readingName(key)).not.toBe(key);
    for (const { path } of fieldsOf(text)) {
      const key = path.join('.');
      if (/(links|mounts|steering|shaft|hose)\./.test(key)) expect(readingName(key), key).not.toBe(key);
    }
  });
});

describe('links in the Measure step', () => {
  const keys = (text: string) => fieldsOf(text).map(({ path }) => path.join('.'));

  it('show one way to say where a point is, and the way that was typed', () => {
    expect(keys(SMALLEST)).toContain('front.links.lower.axle.aboveFloor');
    expect(keys(SMALLEST)).not.toContain('front.links.lower.axle.belowTube');
    expect(keys(LINKED)).toContain('front.links.lower.axle.belowTube');
    expect(keys(SMALLEST).filter((key) => key.startsWith('setups.'))).toEqual([]);
  });

  it('offer an upper link by its side where it stands alone, by its spread where it is a pair', () => {
    const bare = (kind: string) =>
      keys(frontWith(`  links: { kind: ${kind} }\n`)).filter((key) =>
        /front\.links\.upper\.axle\.(left|spread)/.test(key),
      );
    expect(bare('three-link')).toEqual(['front.links.upper.axle.left']);
    expect(bare('four-link')).toEqual(['front.links.upper.axle.spread']);
  });

  it('write a point into a file that has none, one coordinate after the other', () => {
    const edited = must(
      editRig(SMALLEST, [
        { path: ['front', 'links', 'kind'], text: 'leaf' },
        { path: ['front', 'shaft', 'pinion', 'ahead'], text: '-10 in' },
        { path: ['front', 'shaft', 'pinion', 'left'], text: '0 in' },
      ]),
    );
    expect(problemsOf(edited).map(({ where }) => where.key)).toEqual([
      'front.shaft.case',
      'front.shaft.pinionAngle',
      'front.shaft.pinion.aboveFloor',
    ]);
  });
});
