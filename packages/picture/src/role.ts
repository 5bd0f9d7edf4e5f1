/**
 * What a drawn thing means. A scene never names a colour: the style of each surface gives every role its own
 * tone, texture and line, so that no meaning hangs on colour alone.
 */
export const ROLES = [
  // the travel column, from the top down
  'metal',
  'flex',
  'reserve',
  'clearance',
  'crush',
  'free',
  'ride',
  'droop',
  'overlap',
  'tolerance',
  'contact',
  // the rig
  'body',
  'axle',
  'tyre',
  'ground',
  'spring',
  'shock',
  'stop',
  'pad',
  'link',
  'strap',
  // verdicts, as marks with a shape of their own
  'pass',
  'unproven',
  'fail',
  // charts
  'first',
  'second',
  'third',
  'limit',
  'allowed',
  // words and paper
  'title',
  'figure',
  'note',
  'axis',
  'grid',
  'leader',
  'paper',
] as const;
export type Role = (typeof ROLES)[number];
