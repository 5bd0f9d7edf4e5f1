import type { FindingCode, RemedyCode } from '../finding/codes.ts';
import type { Dimension } from '../finding/figure.ts';
import type { LimitOf, LinkLineId } from '../finding/link-lines.ts';

/** What a line of the knock-on list is held against. */
export interface LineRule {
  readonly dimension: Dimension;
  /** Which side of its limit it has to keep; null: it has no limit. */
  readonly keep: 'below' | 'above' | null;
  readonly limitOf: LimitOf | null;
  /** Findings that speak of it. */
  readonly findings: readonly FindingCode[];
  /** What helps when no finding says it. */
  readonly remedies: readonly RemedyCode[];
}

const free = (dimension: Dimension, remedies: readonly RemedyCode[] = []): LineRule => ({
  dimension,
  keep: null,
  limitOf: null,
  findings: [],
  remedies,
});
const held = (
  dimension: Dimension,
  keep: 'below' | 'above',
  limitOf: LimitOf,
  findings: readonly FindingCode[],
  remedies: readonly RemedyCode[] = [],
): LineRule => ({ dimension, keep, limitOf, findings, remedies });

const JOINT: readonly FindingCode[] = ['shaft-joint-binds', 'shaft-joint-near'];

export const LINE_RULES: Readonly<Record<LinkLineId, LineRule>> = {
  height: free('length'),
  'free-bump': free('length'),
  'travel-spare': held('length', 'above', 'owner', [
    'travel-fail',
    'travel-not-proven',
    'lift-buys-no-safety',
  ]),
  droop: free('length'),
  'shock-left-bump': held('length', 'above', 'owner', ['shock-bottoms-before-stop']),
  'shock-left-droop': held('length', 'above', 'owner', ['droop-shock-is-the-limit', 'strap-shorten']),
  'coil-left-bump': held('length', 'above', 'owner', ['coil-binds-before-stop']),
  'coil-held-droop': held('length', 'above', 'practice', ['droop-spring-unseats'], ['longer-coil']),
  'stop-off-pad': held('length', 'below', 'part', ['links-stop-off-pad']),
  'pinion-angle': { ...free('angle'), findings: ['shaft-pinion-aim'] },
  'joint-ride': held('angle', 'below', 'practice', ['shaft-angle-speed', 'shaft-joint-straight']),
  'joint-bump': held('angle', 'below', 'part', JOINT),
  'joint-droop': held('angle', 'below', 'part', JOINT),
  'joint-most': held('angle', 'below', 'part', JOINT),
  'slip-swing': held('length', 'below', 'part', ['shaft-slip-short']),
  'slip-left-in': held('length', 'above', 'practice', ['shaft-slip-bottoms']),
  'slip-left-out': held('length', 'above', 'part', ['shaft-slip-apart']),
  'shaft-length': free('length'),
  'shaft-speed': held('speed', 'above', 'practice', ['shaft-angle-speed', 'shaft-uneven', 'shaft-whirl']),
  'hose-slack': held('length', 'above', 'practice', [
    'line-taut',
    'line-slack-minimum',
    'hose-slack-minimum',
    'droop-hose-taut',
    'line-tie',
  ]),
  caster: held('angle', 'above', 'practice', [], ['turn-axle-back']),
  'bump-steer': free('angle', ['match-drag-link']),
  'panhard-slope': held('angle', 'below', 'practice', [], ['level-panhard']),
  'drag-link-slope': free('angle', ['match-drag-link']),
  'axle-sideways': free('length', ['centre-axle']),
  'axle-forward': free('length'),
  'axle-steer': free('angle'),
  'sideways-swing': free('length'),
  'roll-steer': free('ratio'),
  'roll-centre': free('length'),
  anti: free('ratio'),
  'spring-ratio': free('ratio'),
  'shock-ratio': free('ratio'),
  'stop-ratio': free('ratio'),
  'shock-lean': held('angle', 'below', 'practice', [], ['steeper-shock']),
  'bush-give': free('length'),
  'cg-height': free('length'),
  'static-stability-factor': held('ratio', 'above', 'practice', ['stability-factor']),
  'roll-stiffness': free('rollRate'),
  'roll-gradient': free('angle'),
  'slope-first-lift': free('angle'),
  'ride-frequency': free('frequency'),
};

/** Rules of thumb that are limits here. common practice, no source */
export const LINK_PRACTICE = {
  /** Least caster of a front axle that still runs straight [rad]; 4 to 8° is usual. */
  caster: (4 * Math.PI) / 180,
  /** Most slope of a Panhard at ride height [rad]. */
  panhardSlope: (5 * Math.PI) / 180,
  /** Most lean of a shock at ride height [rad]; up to 20° is usual. */
  shockLean: (30 * Math.PI) / 180,
} as const;
