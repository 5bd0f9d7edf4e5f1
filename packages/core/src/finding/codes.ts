/**
 * Every code of a problem. `words/` must hold a sentence for each: the compiler proves it through
 * `Record<ProblemCode, …>`, a test proves that each can be reached.
 */
export const PROBLEM_CODES = [
  // typed quantities
  'quantity-empty',
  'quantity-not-understood',
  'quantity-unit-missing',
  'quantity-unit-unknown',
  'quantity-unit-wrong-kind',
  'quantity-tolerance-crossed',
  'quantity-out-of-range',
  'quantity-too-long',
  // files
  'file-not-found',
  'file-is-folder',
  'file-no-permission',
  'file-not-text',
  'file-too-large',
  'file-not-yaml',
  'file-duplicate-key',
  'file-alias-refused',
  'file-exists',
  'file-more-problems',
  // rig file
  'rig-key-missing',
  'rig-key-unknown',
  'rig-wrong-shape',
  'rig-schema-version',
  'rig-schema-from-the-future',
  'rig-negative',
  'rig-ratio-zero',
  'rig-table-not-rising',
  'rig-table-too-short',
  'rig-table-start',
  'rig-unknown-name',
  'rig-cannot-settle',
  'rig-needs-reading',
  'rig-inconsistent',
  // asking for work
  'ask-unknown-setup',
  'ask-unknown-course',
  'ask-speed-absurd',
  'ask-option',
  'ask-port-taken',
  // ride cases
  'case-not-json',
  'case-wrong-shape',
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

/** Every code of a finding, with the same proof as above. */
export const FINDING_CODES = [
  'travel-pass',
  'travel-not-proven',
  'travel-fail',
  'travel-contacts-tie',
  'travel-only-one-contact',
  'stop-after-metal',
  'stop-touches-at-ride',
  'stop-gap-needed',
  'coil-binds-before-stop',
  'shock-bottoms-before-stop',
  'droop-first-limit',
  'droop-shock-is-the-limit',
  'droop-hose-taut',
  'droop-spring-unseats',
  'strap-shorten',
  'hose-slack-minimum',
  'witness-data-valid',
  'witness-data-scattered',
  'witness-flex-observed',
  'witness-margin-short',
  'witness-travel-share',
  'lift-buys-no-safety',
  'statics-spring-length-disagrees',
  'statics-weights-cross',
  'assumption-matters',
  'ride-metal',
  'ride-clearance-short',
  'ride-clear',
  'ride-airborne',
  'ride-left-validity',
  'ride-stop-past-table',
  'ride-harsh',
  'exposure-seat',
  'exposure-shocks',
  'exposure-unknown',
  'exposure-narrow',
] as const;
export type FindingCode = (typeof FINDING_CODES)[number];

/** What can be done about a finding. */
export const REMEDY_CODES = [
  'stop-spacer',
  'seat-and-stop-drop',
  'notch-contact',
  'lift-with-spacer',
  'longer-coil',
  'set-gap',
  'measure-again',
  'measure-more-contacts',
  'shorten-strap',
  'longer-hose',
  'slow-down',
  'more-compression-damping',
  'softer-compression-damping',
  'weigh-again',
  'inspect-hose',
  'softer-stop',
] as const;
export type RemedyCode = (typeof REMEDY_CODES)[number];
