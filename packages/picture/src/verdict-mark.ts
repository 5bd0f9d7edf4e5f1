import type { Verdict } from '@lastinch/core';
import type { Role } from './role.ts';
import type { Item } from './scene.ts';

export const VERDICT_ROLES: Readonly<Record<Verdict, Role>> = {
  pass: 'pass',
  'not-proven': 'unproven',
  fail: 'fail',
};

/** The verdict as a mark told apart by its shape: a tick in a ring, a ring half open to the question, a cross in a square. */
export const verdictMark = (verdict: Verdict, x: number, y: number, radius: number): readonly Item[] => {
  const role = VERDICT_ROLES[verdict];
  const r = radius;
  if (verdict === 'pass') {
    return [
      { kind: 'circle', role, x, y, radius: r },
      {
        kind: 'polyline',
        role,
        points: [x - 0.5 * r, y, x - 0.12 * r, y - 0.42 * r, x + 0.52 * r, y + 0.42 * r],
      },
    ];
  }
  if (verdict === 'fail') {
    return [
      { kind: 'rect', role, x: x - 0.92 * r, y: y - 0.92 * r, width: 1.84 * r, height: 1.84 * r },
      { kind: 'line', role, x1: x - 0.45 * r, y1: y - 0.45 * r, x2: x + 0.45 * r, y2: y + 0.45 * r },
      { kind: 'line', role, x1: x - 0.45 * r, y1: y + 0.45 * r, x2: x + 0.45 * r, y2: y - 0.45 * r },
    ];
  }
  const wave = [-0.6, -0.1, -0.3, 0.2, 0, 0, 0.3, -0.2, 0.6, 0.1].map(
    (v, k) => (k % 2 === 0 ? x : y) + v * r,
  );
  return [
    { kind: 'polygon', role, points: [x, y + 1.15 * r, x + 1.15 * r, y, x, y - 1.15 * r, x - 1.15 * r, y] },
    { kind: 'polyline', role, points: wave },
  ];
};
