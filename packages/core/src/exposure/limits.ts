/** Eight hours [s]: the day to which exposure is referred. */
export const EIGHT_HOURS = 28_800;

/** A pair of values of one day: 8-hour r.m.s. [m/s²] and vibration dose [m/s^1.75]. */
export interface DailyValue {
  readonly acceleration: number;
  readonly dose: number;
}

/**
 * Daily values of European law for people at work. They bind employers; here they are a yardstick and nothing else.
 *
 * @source Directive 2002/44/EC, Article 3(2): read; the dose of the action value read in a meter's manual
 */
export const DAILY_VALUES: Readonly<Record<'action' | 'limit', DailyValue>> = {
  action: { acceleration: 0.5, dose: 9.1 },
  limit: { acceleration: 1.15, dose: 21 },
};

/** How much each direction counts. @source ISO 2631-1:1997, 7.2 and Directive 2002/44/EC, annex B */
export const AXIS_FACTORS = { foreAndAft: 1.4, sideways: 1.4, vertical: 1 } as const;

/**
 * Vibration total value √(Σ k²·a²).
 *
 * @source ISO 2631-1:1997, 6.5
 */
export const totalValue = (rms: Readonly<Record<keyof typeof AXIS_FACTORS, number>>): number =>
  Math.hypot(
    AXIS_FACTORS.foreAndAft * rms.foreAndAft,
    AXIS_FACTORS.sideways * rms.sideways,
    AXIS_FACTORS.vertical * rms.vertical,
  );

/**
 * Daily exposure A(8) = k·a_w·√(T ÷ 8 h).
 *
 * @param counted – k·a_w [m/s²]
 * @param duration – T [s]
 * @source Directive 2002/44/EC, annex B; ISO 2631-1:1997
 */
export const dailyExposure = (counted: number, duration: number): number =>
  counted * Math.sqrt(duration / EIGHT_HOURS);

/** Driving time until A(8) reaches a value [s]; Infinity when nothing shakes. */
export const timeToExposure = (counted: number, value: number): number =>
  EIGHT_HOURS * (value / counted) ** 2;

/** Driving time until the dose reaches a value [s], from the counted dose k·VDV of a record. */
export const timeToDose = (counted: number, recorded: number, value: number): number =>
  recorded * (value / counted) ** 4;

/** Reactions to vibration in public transport, from mild to harsh. The bands overlap. */
export const COMFORT_BANDS = [
  { reaction: 'not', from: 0, to: 0.315 },
  { reaction: 'little', from: 0.315, to: 0.63 },
  { reaction: 'fairly', from: 0.5, to: 1 },
  { reaction: 'uncomfortable', from: 0.8, to: 1.6 },
  { reaction: 'very', from: 1.25, to: 2.5 },
  { reaction: 'extremely', from: 2, to: Number.POSITIVE_INFINITY },
] as const;
export type Reaction = (typeof COMFORT_BANDS)[number]['reaction'];

/**
 * The bands that a weighted r.m.s. falls into, mild first.
 *
 * @param rms – [m/s²] ≥ 0
 * @param tolerance – half-width [m/s²]: every band within it counts
 * @source ISO 2631-1:1997, Annex C (from memory; the break points 0.315, 0.63, 1 and 1.6 read in a transcription)
 */
export const comfortBands = (rms: number, tolerance = 0): readonly Reaction[] =>
  COMFORT_BANDS.filter(({ from, to }) => rms + tolerance >= from && rms - tolerance < to).map(
    ({ reaction }) => reaction,
  );

/** Lower and upper bound of the guidance zone [m/s²]. */
export interface ZoneBounds {
  readonly lower: number;
  readonly upper: number;
}
/** Where an exposure lies about the zone. */
export type ZonePlace = 'below' | 'within' | 'above';

/** Ten minutes [s]: below it the equal-energy zone is level. */
const TEN_MINUTES = 600;

/**
 * The guidance zone of ISO 2631-1 for a daily exposure. The standard has two definitions that do not agree: equal
 * energy, a·√T, level at 3 and 6 m/s² up to ten minutes; and fourth power, 1.4·a·T^¼ = 8.5 and 17 m/s^1.75. At eight
 * hours they give 0.43 to 0.87 and 0.47 to 0.93 m/s²; the 0.45 and 0.90 that are often quoted are neither. Both are
 * given. The zone is one of caution in the standard's reckoning, not a diagnosis.
 *
 * @param duration – of a day [s] > 0
 * @source ISO 2631-1:1997, Annex B (from memory)
 */
export function guidanceZone(duration: number): {
  readonly equalEnergy: ZoneBounds;
  readonly fourthPower: ZoneBounds;
} {
  const energy = Math.sqrt(TEN_MINUTES / Math.max(duration, TEN_MINUTES));
  const fourth = 1 / (1.4 * duration ** 0.25);
  return {
    equalEnergy: { lower: 3 * energy, upper: 6 * energy },
    fourthPower: { lower: 8.5 * fourth, upper: 17 * fourth },
  };
}

export const placeInZone = (counted: number, { lower, upper }: ZoneBounds): ZonePlace =>
  counted < lower ? 'below' : counted <= upper ? 'within' : 'above';

/** Signs that the r.m.s. alone tells too little. */
export const SHOCK_TRIGGERS = { crestFactor: 9, transientShare: 1.5, doseShare: 1.75 } as const;
export type ShockTrigger = keyof typeof SHOCK_TRIGGERS;

/**
 * Which signs of single hits are given: crest factor above 9; MTVV ÷ a_w above 1.5; VDV ÷ (a_w·T^¼) above 1.75.
 *
 * @source ISO 2631-1:1997, 6.2 and 6.3.3 (from memory)
 */
export function shockTriggers(of: {
  readonly rms: number;
  readonly peak: number;
  readonly maximumTransient: number;
  readonly dose: number;
  readonly duration: number;
}): readonly ShockTrigger[] {
  const { rms } = of;
  if (!(rms > 0)) return [];
  const reached: Readonly<Record<ShockTrigger, number>> = {
    crestFactor: of.peak / rms,
    transientShare: of.maximumTransient / rms,
    doseShare: of.dose / (rms * of.duration ** 0.25),
  };
  return (Object.keys(SHOCK_TRIGGERS) as ShockTrigger[]).filter(
    (each) => reached[each] > SHOCK_TRIGGERS[each],
  );
}

/**
 * What ride tests stop at: 6 W of absorbed power at the driver, and 2.5 g after a 30 Hz low-pass over half-rounds.
 * Of vehicles that drive all day with a crew of soldiers; common practice, no source opened.
 */
export const RIDE_TEST_LIMITS = { absorbedPower: 6, peak: 2.5 * 9.80665 } as const;
