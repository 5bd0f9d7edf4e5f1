import {
  type End,
  formatValue,
  type Reading,
  type Setup,
  type UnitSystem,
  type Vector,
} from '@lastinch/core';
import type { LinkName, LinkPatch, PointPatch } from '@lastinch/core/links';
import type { RigEdit } from '../../document/rig-document.ts';

/** A point that a proposal can move: a joint of a link, both of a pair alike, or the shaft's joint at the case. */
export type PointTarget =
  | { readonly of: 'link'; readonly link: LinkName; readonly where: 'axle' | 'frame' }
  | { readonly of: 'case' };

export const WAYS = ['ahead', 'out', 'up'] as const;
export type Way = (typeof WAYS)[number];

const LINK_TITLE: Readonly<Record<LinkName, string>> = {
  lower: 'Lower link',
  upper: 'Upper link',
  arm: 'Radius arm',
  panhard: 'Panhard bar',
};

/** `lower.axle`, `case`: stable name of a target. */
export const targetId = (target: PointTarget): string =>
  target.of === 'case' ? 'case' : `${target.link}.${target.where}`;

export const targetName = (target: PointTarget): string =>
  target.of === 'case' ? 'Shaft joint at the case' : `${LINK_TITLE[target.link]}, ${target.where} end`;

/** Which target a drawn point belongs to, and on which side it is. */
export function handleTarget(id: string): {
  readonly target: PointTarget;
  readonly side: 'left' | 'right' | null;
} {
  if (id === 'case') return { target: { of: 'case' }, side: null };
  const [link = '', where] = id.split('.');
  const [name = '', side] = link.split('-');
  return {
    target: { of: 'link', link: name as LinkName, where: where === 'axle' ? 'axle' : 'frame' },
    side: side === 'left' || side === 'right' ? side : null,
  };
}

/** Everything that can be moved at an end, in the order of the file. */
export function targetsOf(setup: Setup, end: End): readonly PointTarget[] {
  const { linkage, driveline } = setup.ends[end].base.points;
  const names = [...new Set(linkage?.links.map(({ name }) => name) ?? [])];
  return [
    ...names.flatMap((link): PointTarget[] => [
      { of: 'link', link, where: 'axle' },
      { of: 'link', link, where: 'frame' },
    ]),
    ...(driveline === null ? [] : [{ of: 'case' } as const]),
  ];
}

/** Where the changes of a point stand in the file. */
export const targetPath = (setupId: string, end: End, target: PointTarget): readonly string[] =>
  target.of === 'case'
    ? ['setups', setupId, end, 'shaft', 'case']
    : ['setups', setupId, end, 'links', target.link, target.where];

const patchOf = (setup: Setup, end: End, target: PointTarget): PointPatch => {
  const { patch } = setup.ends[end];
  return (target.of === 'case' ? patch.shaft?.case : patch.links?.[target.link]?.[target.where]) ?? {};
};

/** A move on the rig, left positive, as a move of that side's point: out is away from the centreline. */
export const asMove = ([ahead, left, up]: Vector, side: 'left' | 'right' | null): Vector => [
  ahead,
  side === 'right' ? -left : left,
  up,
];

/** The finest step that a point is moved by [m], and the one with Shift. */
export const STEP: Readonly<Record<UnitSystem, { readonly fine: number; readonly coarse: number }>> = {
  shop: { fine: 0.0254 / 16, coarse: 0.0254 / 2 },
  metric: { fine: 0.001, coarse: 0.01 },
};

const onStep = (value: number, step: number): number => Math.round(value / step) * step;

/** How far a point is moved in all once it has been moved by so much more [m], on whole steps. */
export const movedTotal = (
  setup: Setup,
  end: End,
  target: PointTarget,
  by: Vector,
  system: UnitSystem,
): Vector => {
  const patch = patchOf(setup, end, target);
  const total = WAYS.map((way, k) => {
    const before = patch[way]?.value ?? 0;
    return by[k] === 0 ? before : onStep(before + (by[k] ?? 0), STEP[system].fine);
  });
  return [total[0] ?? 0, total[1] ?? 0, total[2] ?? 0];
};

/** The setup with a point moved in all by so much: what is drawn while it is under the finger. */
export function withPoint(setup: Setup, end: End, target: PointTarget, total: Vector): Setup {
  const at = setup.ends[end];
  const key = targetPath(setup.id, end, target).join('.');
  const point: PointPatch = Object.fromEntries(
    WAYS.map((way, k) => [way, momentary(`${key}.${way}`, total[k] ?? 0)]),
  );
  const patch =
    target.of === 'case'
      ? { ...at.patch, shaft: { ...at.patch.shaft, case: point } }
      : {
          ...at.patch,
          links: {
            ...at.patch.links,
            [target.link]: { ...at.patch.links?.[target.link], [target.where]: point } satisfies LinkPatch,
          },
        };
  return { ...setup, ends: { ...setup.ends, [end]: { ...at, patch } } };
}

const momentary = (key: string, value: number): Reading => ({
  key,
  dimension: 'length',
  value,
  plus: 0,
  minus: 0,
  origin: 'measured',
  toleranceOrigin: 'measured',
  text: '',
});

/** What is written into the file when a point is let go: only what changed; nothing for a way that is back where it was. */
export function editsOfMove(
  setup: Setup,
  end: End,
  target: PointTarget,
  total: Vector,
  system: UnitSystem,
): readonly RigEdit[] {
  const patch = patchOf(setup, end, target);
  const path = targetPath(setup.id, end, target);
  return WAYS.flatMap((way, k): readonly RigEdit[] => {
    const value = total[k] ?? 0;
    const before = patch[way]?.value ?? 0;
    if (Math.abs(value - before) < STEP[system].fine / 100) return [];
    const none = Math.abs(value) < STEP[system].fine / 100;
    return [{ path: [...path, way], text: none ? null : formatValue(value, 'length', { system }) }];
  });
}
