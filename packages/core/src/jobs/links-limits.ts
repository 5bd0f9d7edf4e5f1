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
  /** Of a line without a limit: from this size on something should be done about it (common practice, no source). */
  readonly worth: number;
}

const free = (
  dimension: Dimension,
  remedies: readonly RemedyCode[] = [],
  worth = Number.POSITIVE_INFINITY,
): LineRule => ({ dimension, keep: null, limitOf: null, findings: [], remedies, worth });
const held = (
  dimension: Dimension,
  keep: 'below' | 'above',
  limitOf: LimitOf,
  findings: readonly FindingCode[],
  remedies: readonly RemedyCode[] = [],
): LineRule => ({ dimension, keep, limitOf, findings, remedies, worth: 0 });

const DEGREE = Math.PI / 180;
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
  'coil-held-droop': held('length', 'above', 'practice', ['droop-spring-unseats']),
  'stop-off-pad': held('length', 'below', 'part', ['links-stop-off-pad']),
  'flex-clear': held('length', 'above', 'owner', [
    'flex-on-body',
    'flex-on-solid',
    'flex-on-hose',
    'flex-on-shaft',
    'flex-on-shock',
  ]),
  'flex-angle': free('angle'),
  'flex-up': { ...free('length'), findings: ['flex-off-pad'] },
  'flex-down': free('length'),
  'flex-tyre-load': free('force'),
  'ramp-index': free('ratio'),
  'pinion-angle': { ...free('angle'), findings: ['shaft-pinion-aim'] },
  'joint-ride': held('angle', 'below', 'practice', ['shaft-angle-speed', 'shaft-joint-straight']),
  'joint-bump': held('angle', 'below', 'part', []),
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
  'bump-steer': free('angle', ['match-drag-link'], DEGREE / 2),
  'panhard-slope': held('angle', 'below', 'practice', [], ['level-panhard']),
  'drag-link-slope': free('angle', ['match-drag-link'], 2 * DEGREE),
  'axle-sideways': free('length', ['centre-axle'], 0.006),
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
  'slope-first-lift': { ...free('angle'), findings: ['stability-side-slope'] },
  'slope-tips': { ...free('angle'), findings: ['stability-side-slope'] },
  'roll-stiffness': free('rollRate'),
  'roll-springs': free('rollRate'),
  'roll-gas': free('rollRate'),
  'roll-bar': free('rollRate'),
  'roll-tyres': free('rollRate'),
  'roll-gradient': free('angle'),
  'load-transfer-share': { ...free('ratio'), findings: ['stability-rear-heavy'] },
  'ride-frequency': free('frequency'),
  'hop-frequency': free('frequency'),
  'damping-compression': free('ratio'),
  'damping-rebound': free('ratio'),
  'flat-ride-ratio': { ...free('ratio'), findings: ['stability-pitches'] },
  'flat-ride-speed': { ...free('speed'), findings: ['stability-pitches'] },
  'washboard-sinks': { ...free('length'), findings: ['stability-packs-down'] },
  'washboard-swing': free('length'),
};

/** Rules of thumb that are limits here. common practice, no source */
export const LINK_PRACTICE = {
  /** Least caster of a front axle that still runs straight [rad]; 4 to 8° is usual. */
  caster: 4 * DEGREE,
  /** Most slope of a Panhard at ride height [rad]. */
  panhardSlope: 5 * DEGREE,
  /** Most lean of a shock at ride height [rad]; up to 20° is usual. */
  shockLean: 30 * DEGREE,
} as const;
