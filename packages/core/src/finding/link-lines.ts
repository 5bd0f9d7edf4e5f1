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
  'roll-stiffness',
  'roll-gradient',
  'slope-first-lift',
  'ride-frequency',
] as const;
export type LinkLineId = (typeof LINK_LINES)[number];

/** Whose limit it is: of a part or joint, chosen by the owner, geometry itself, or a rule of thumb. */
export type LimitOf = 'part' | 'owner' | 'practice';
