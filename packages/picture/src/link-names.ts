import { type DrawnAxle, forceLine, instantOf, posedAt, rollAxis, rollOf } from './link-axle.ts';
import { isInside, type LinkView, onPaper, type PaperPoint } from './link-view.ts';
import type { Named } from './link-words.ts';
import type { Box } from './scene.ts';

const LINK_WORD: Readonly<Record<string, string>> = {
  lower: 'lower',
  upper: 'upper',
  arm: 'radius arm',
  panhard: 'Panhard',
};

/** What deserves a word beside it: each kind of part once, centres by setup where the two stand apart. */
export const namesOf = (axles: readonly DrawnAxle[], view: LinkView, bounds: Box): readonly Named[] => {
  const last = axles.at(-1);
  if (last === undefined) return [];
  const middle = (one: PaperPoint, other: PaperPoint): PaperPoint => [
    (one[0] + other[0]) / 2,
    (one[1] + other[1]) / 2,
  ];
  const names: Named[] = [];
  for (const [of, name] of [
    [instantOf, 'instant centre'],
    [rollOf, 'roll centre'],
  ] as const)
    names.push(...centreNames(axles, (axle) => of(axle, view), name, bounds));
  names.push(...linesOff(last, view, bounds));
  const seen = new Set<string>();
  for (const { id, axle: on, body } of last.geometry.links) {
    const kind = id.replace(/-(left|right)$/, '');
    if (seen.has(kind)) continue;
    seen.add(kind);
    names.push({ text: LINK_WORD[kind] ?? kind, at: middle(posedAt(last, view, on), onPaper(view, body)) });
  }
  if (last.shaft !== null && view !== 'rear')
    names.push({
      text: 'shaft',
      at: middle(posedAt(last, view, last.shaft.pinion), onPaper(view, last.shaft.case)),
    });
  if (last.dragLink !== null)
    names.push({
      text: 'drag link',
      at: middle(posedAt(last, view, last.dragLink.axle), onPaper(view, last.dragLink.body)),
    });
  // Springs, shocks and stops are named where they are longest; elsewhere the words would hide them.
  for (const part of view === 'side' ? (['shock', 'spring', 'stop'] as const) : []) {
    const strut = last.geometry.struts[`${part}-left`];
    if (strut !== undefined)
      names.push({ text: part, at: middle(posedAt(last, view, strut.axle), onPaper(view, strut.body)) });
  }
  return names;
};

/** Lines that lead off the paper, named near its edge. */
const linesOff = (axle: DrawnAxle, view: LinkView, bounds: Box): readonly Named[] => {
  if (view !== 'side') return [];
  const names: Named[] = [];
  const instant = instantOf(axle, view);
  if (instant !== null && !isInside(bounds, instant)) {
    const [from, to] = forceLine(axle, instant, bounds);
    names.push({
      text: 'to the instant centre',
      at: [from[0] + (to[0] - from[0]) * 0.75, from[1] + (to[1] - from[1]) * 0.75],
    });
  }
  const axis = rollAxis(axle, bounds);
  if (axis !== null) {
    const [from, to] = axis;
    names.push({
      text: 'roll axis',
      at: [from[0] + (to[0] - from[0]) * 0.08, from[1] + (to[1] - from[1]) * 0.08],
    });
  }
  return names;
};

const centreNames = (
  axles: readonly DrawnAxle[],
  of: (axle: DrawnAxle) => PaperPoint | null,
  name: string,
  bounds: Box,
): readonly Named[] => {
  const found = axles.flatMap((axle) => {
    const place = of(axle);
    return place === null || !isInside(bounds, place) ? [] : [{ name: axle.name, place }];
  });
  const [one, other] = found;
  if (one === undefined) return [];
  const apart =
    other === undefined ? 0 : Math.hypot(one.place[0] - other.place[0], one.place[1] - other.place[1]);
  const near = apart < (bounds.right - bounds.left) / 12;
  if (other === undefined || near)
    return [{ text: axles.length > 1 && other === undefined ? `${name}, ${one.name}` : name, at: one.place }];
  return found.map((each) => ({ text: `${name}, ${each.name}`, at: each.place }));
};
