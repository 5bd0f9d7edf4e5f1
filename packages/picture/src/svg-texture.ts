import type { Role } from './role.ts';

/** A texture that repeats: its tile in pixels, and the marks in it. */
interface Texture {
  readonly width: number;
  readonly height: number;
  readonly marks: string;
}

/**
 * Which role is told apart by which texture, so that a picture reads the same in grey:
 * metal is hatched as cut steel is, rubber lies in layers, what must stay free is marked as a warning, droop hangs, what will do carries plus signs.
 */
export const TEXTURES: Readonly<Partial<Record<Role, Texture>>> = {
  metal: {
    width: 6,
    height: 6,
    marks: '<path class="lp-onmetal" d="M-1 7L7 -1M-1 1L1 -1M5 7L7 5" opacity=".55"/>',
  },
  flex: {
    width: 6,
    height: 6,
    marks: '<path class="lp-mark" d="M-1 -1L7 7M-1 5L1 7M5 -1L7 1" opacity=".75"/>',
  },
  reserve: {
    width: 6,
    height: 6,
    marks:
      '<circle class="lp-dot" cx="1.5" cy="1.5" r=".9" opacity=".75"/><circle class="lp-dot" cx="4.5" cy="4.5" r=".9" opacity=".75"/>',
  },
  clearance: {
    width: 11,
    height: 11,
    marks: '<circle class="lp-dot" cx="5.5" cy="5.5" r=".7" opacity=".45"/>',
  },
  crush: { width: 8, height: 4, marks: '<path class="lp-mark" d="M0 2H8" opacity=".45"/>' },
  stop: { width: 8, height: 4, marks: '<path class="lp-mark" d="M0 2H8" opacity=".45"/>' },
  droop: { width: 7, height: 8, marks: '<path class="lp-mark" d="M3.5 0V8" opacity=".3"/>' },
  overlap: { width: 7, height: 7, marks: '<path class="lp-danger" d="M-1 8L8 -1M-1 -1L8 8"/>' },
  ground: { width: 10, height: 10, marks: '<path class="lp-mark" d="M0 10L10 0" opacity=".22"/>' },
  allowed: {
    width: 9,
    height: 9,
    marks: '<path class="lp-mark" d="M2.5 4.5h4M4.5 2.5v4" opacity=".4"/>',
  },
  limit: { width: 9, height: 9, marks: '<path class="lp-danger" d="M-1 10L10 -1" opacity=".35"/>' },
};

/** All patterns, with ids that are unique on a page through the prefix; all, because a moving picture may need any. */
export const patternsOf = (prefix: string): string =>
  Object.entries(TEXTURES)
    .map(
      ([role, { width, height, marks }]) =>
        `<pattern id="${prefix}-${role}" width="${width}" height="${height}" patternUnits="userSpaceOnUse">${marks}</pattern>`,
    )
    .join('');
