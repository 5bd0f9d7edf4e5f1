import { describe, expect, test } from 'vitest';
import type { AxleGeometry, Link } from '../../src/linkage/geometry.ts';
import { geometryProblems } from '../../src/linkage/geometry-problems.ts';
import { problemText } from '../../src/words/problems.ts';
import { fourLink, KINDS, threeLink, triangulated } from './invented.ts';

const asked = { key: 'rear.links', system: 'metric' } as const;
const change = (rig: AxleGeometry, id: string, to: Partial<Link>): AxleGeometry => ({
  ...rig,
  links: rig.links.map((link) => (link.id === id ? { ...link, ...to } : link)),
});
const found = (rig: AxleGeometry) => geometryProblems(rig, asked).map(problemText);

describe('a geometry that cannot be worked with', () => {
  test('a sound one of each kind has no problem', () => {
    for (const rig of KINDS) expect(found(rig)).toEqual([]);
  });

  test('coincident joints are named with their gap', () => {
    const [link] = threeLink.links;
    const [x, y, z] = link.body;
    expect(found(change(threeLink, link.id, { axle: [x - 0.003, y, z] }))).toEqual([
      'rear.links.lower-left: this link has no length: “axle joint and frame joint 3 mm apart”. Accepted: two joints at least 20 mm apart.',
    ]);
  });

  test('a joint on the wrong side is named with how far it is over', () => {
    const [link] = threeLink.links;
    const [text] = found(change(threeLink, 'lower-left', { axle: [link.axle[0], -0.04, link.axle[2]] }));
    expect(text).toContain('rear.links.lower-left.axle');
    expect(text).toContain('40 mm to the right');
  });

  test('exchanged ends are seen by their distance to the hub line', () => {
    const { axle, body } = fourLink.links[2];
    const [text] = found(change(fourLink, 'upper-left', { axle: body, body: axle }));
    expect(text).toContain('rear.links.upper-left: the ends of this link look exchanged');
  });

  test('missing and unknown links are told in one pass', () => {
    const links = threeLink.links
      .filter(({ id }) => id !== 'panhard')
      .map((link) => ({ ...link, id: link.id === 'upper' ? 'top' : link.id }));
    const codes = geometryProblems({ ...threeLink, links }, asked).map(({ code, where }) => [
      code,
      where.key,
    ]);
    expect(codes).toEqual([
      ['links-missing', 'rear.links.upper'],
      ['links-missing', 'rear.links.panhard'],
      ['links-unknown', 'rear.links.top'],
    ]);
  });

  test('four links straight fore and aft leave the axle loose sideways', () => {
    const straight: AxleGeometry = {
      ...triangulated,
      links: triangulated.links.map(({ id, axle, body }) => ({
        id,
        axle,
        body: [body[0], axle[1], body[2]],
      })),
    };
    expect(found(straight)[0]).toMatch(
      /^rear.links: 1 mm of play in the joints lets the axle move “sideways, without end”/,
    );
  });

  test('an upper at the height of the lowers leaves it loose in wind-up, by the arm of the closed form', () => {
    // Lowers level through the hub line; an upper h above them, level: wind-up by 1 mm of play is 1 mm ÷ h at 0.5 m.
    const height = 0.01;
    const links: Link[] = [0.45, -0.45].map((y) => ({
      id: y > 0 ? 'lower-left' : 'lower-right',
      axle: [-2.6, y, 0.42],
      body: [-1.6, y, 0.42],
    }));
    links.push({ id: 'upper', axle: [-2.6, 0, 0.42 + height], body: [-1.8, 0, 0.42 + height] });
    links.push({ id: 'panhard', axle: [-2.6, -0.5, 0.42], body: [-2.6, 0.5, 0.42] });
    const [text] = found({ ...threeLink, links });
    expect(text).toContain('in wind-up');
    // 0.5 m × 1 mm ÷ 10 mm = 50 mm from the upper alone; shared with two lowers, √(3/2) of that.
    const shown = Number(/, ([\d.]+) mm/.exec(text)?.[1]);
    expect(shown).toBeCloseTo(50 * Math.sqrt(1.5), 2);
  });
});
