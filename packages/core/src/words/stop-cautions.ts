/** Said where a stop is chosen, pressed or made. Short, because a caution that nobody reads protects nobody. */
export const STOP_CAUTIONS: readonly string[] = [
  'Loading a press: guard and face shield, load centred, plates square, no loose blocks stacked, release slowly. A stop stores energy and can be thrown out.',
  'Stops change: cold makes them much stiffer and heat softer, oil, sun and wear eat them. Press again what was long on the rig, look at it before each trip, carry a spare.',
  'A printed stop only with solid metal contact behind it that the bracket bears; pressed to 1.3 times the worst load before it is driven.',
];
