import { NAMES, type Name, type Outcome } from './contestants.ts';

/** One setting of a contestant on one case. */
export interface Tried {
  readonly setting: string;
  readonly error: number;
  readonly simulatedPerSecond: number;
  readonly evaluations: number;
}

export type Work = Readonly<Record<Name, readonly Tried[]>>;

export const tried = (outcome: Outcome, error: number, duration: number): Tried => ({
  setting: outcome.setting,
  error,
  simulatedPerSecond: duration / outcome.seconds,
  evaluations: outcome.evaluations,
});

/** Errors at which speeds are compared: three a decade. */
const ERRORS = [3e-2, 1e-2, 5e-3, 2e-3, 1e-3, 5e-4, 2e-4, 1e-4, 5e-5, 2e-5, 1e-5];

/** Work against precision over several cases. */
export interface Front {
  readonly error: number;
  /** Geometric mean over the cases of the best simulated seconds a second; null where one case is never so exact. */
  readonly speed: Readonly<Record<Name, number | null>>;
}

export function frontOf(cases: readonly Work[]): readonly Front[] {
  return ERRORS.map((error) => ({
    error,
    speed: Object.fromEntries(
      NAMES.map((name) => [name, geometricMean(cases.map((work) => bestWithin(work[name], error)))]),
    ) as Record<Name, number | null>,
  }));
}

function bestWithin(settings: readonly Tried[], error: number): number | null {
  const speeds = settings.filter((one) => one.error <= error).map((one) => one.simulatedPerSecond);
  return speeds.length > 0 ? Math.max(...speeds) : null;
}

/** Null when one of them is. */
export function geometricMean(values: readonly (number | null)[]): number | null {
  const known = values.filter((value): value is number => value !== null);
  if (known.length === 0 || known.length < values.length) return null;
  return Math.exp(known.reduce((sum, value) => sum + Math.log(value), 0) / known.length);
}

/** The table of the terminal and of the page: error, then everybody's speed. */
export function frontLines(fronts: readonly Front[]): readonly string[] {
  return fronts.map(({ error, speed }) =>
    [
      `${String(+(100 * error).toPrecision(2))} %`.padStart(9),
      ...NAMES.map((name) => (speed[name] === null ? '–' : speed[name].toFixed(0)).padStart(8)),
    ].join(' '),
  );
}
