/**
 * Every line of the knock-on list: what moves when a setup changes height or links. `words/` has a name for each; the
 * compiler proves it through `Record<LinkLineId, …>`. In the order in which lines without a limit are shown.
 */
export const LINK_LINES = [
  // height and travel
  'height',
  'free-bump',
  'travel-spare',
  'droop',
  'shock-left-bump',
  'shock-left-droop',
  'coil-left-bump',
  'coil-held-droop',
  'stop-off-pad',
  // one wheel up, the other down
  'flex-clear',
  'flex-angle',
  'flex-up',
  'flex-down',
  'flex-tyre-load',
  'ramp-index',
  // shaft
  'pinion-angle',
  'joint-ride',
  'joint-bump',
  'joint-droop',
  'joint-most',
  'slip-swing',
  'slip-left-in',
  'slip-left-out',
  'shaft-length',
  'shaft-speed',
  // hoses
  'hose-slack',
  // steering and handling
  'caster',
  'bump-steer',
  'panhard-slope',
  'drag-link-slope',
  'axle-sideways',
  'axle-forward',
  'axle-steer',
  'sideways-swing',
  'roll-steer',
  'roll-centre',
  'anti',
  'spring-ratio',
  'shock-ratio',
  'stop-ratio',
  'shock-lean',
  'bush-give',
  // the whole rig
  'cg-height',
  'static-stability-factor',
  'slope-first-lift',
  'slope-tips',
  'roll-stiffness',
  'roll-springs',
  'roll-gas',
  'roll-bar',
  'roll-tyres',
  'roll-gradient',
  'load-transfer-share',
  'ride-frequency',
  'hop-frequency',
  'damping-compression',
  'damping-rebound',
  'flat-ride-ratio',
  'flat-ride-speed',
  'washboard-sinks',
  'washboard-swing',
] as const;
export type LinkLineId = (typeof LINK_LINES)[number];

/** Whose limit it is: of a part or joint, chosen by the owner, geometry itself, or a rule of thumb. */
export type LimitOf = 'part' | 'owner' | 'practice';
