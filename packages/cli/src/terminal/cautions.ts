/** Said under every answer. Short, because a caution that nobody reads protects nobody. */
export const CAUTIONS: readonly string[] = [
  'This is advice from your own readings, not a certificate. Law and the inspection where you drive come first; brakes, steering and welds on frame or axle belong to licensed people.',
  'A compressed coil spring kills: use proper compressors and keep out of its line.',
  'Never reach under a rig that stands on a jack alone: stands under frame and axle, wheels chocked, level ground.',
  'Cycle the axle to full bump, droop and lock with springs out before you drive, and try it slowly first.',
];
