/** Said under every answer. Short, because a caution that nobody reads protects nobody. */
export const CAUTIONS: readonly string[] = [
  'This is advice from your own readings, not a certificate. Law and the inspection where you drive come first; brakes, steering and welds on frame or axle belong to licensed people.',
  'A compressed coil spring kills: use proper compressors and keep out of its line.',
  'Never reach under a rig that stands on a jack alone: stands under frame and axle, wheels chocked, level ground.',
  'Cycle the axle to full bump, droop and lock with springs out before you drive, and try it slowly first.',
];

/** Said where a stop is chosen, pressed or made. */
export const STOP_CAUTIONS: readonly string[] = [
  'Loading a press: guard and face shield, load centred, plates square, no loose blocks stacked, release slowly. A stop stores energy and can be thrown out.',
  'Stops change: cold makes them much stiffer and heat softer, oil, sun and wear eat them. Press again what was long on the rig, look at it before each trip, carry a spare.',
  'A printed stop only with solid metal contact behind it that the bracket bears; pressed to 1.3 times the worst load before it is driven.',
];
