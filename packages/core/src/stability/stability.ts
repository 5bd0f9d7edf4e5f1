import { ENDS } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { columnOf } from '../stance/columns.ts';
import { type Draws, drawsOf, type TrialOptions } from '../stance/draws.ts';
import { stabilityFindings } from './findings.ts';
import {
  figureOfLine,
  type NamedWashboard,
  type SampledLine,
  type SampledLines,
  sampleLines,
} from './lines.ts';
import {
  STABILITY_LINES,
  type StabilityChange,
  type StabilityComparison,
  type StabilityLine,
  type StabilityResult,
} from './result.ts';
import { type RollCentres, rollCentresOf } from './roll-centre.ts';

export interface StabilityOptions extends TrialOptions {
  /** Roll centres worked out from measured links, as the setup stands; what is left out is assumed and said so. */
  readonly rollCentres?: Partial<RollCentres>;
  /** At which a flat ride is wanted [m/s]; 80 km/h when left out. */
  readonly roadSpeed?: number;
  /** Washboards to be driven; the usual one when left out. */
  readonly washboards?: readonly NamedWashboard[];
}

const ROAD_SPEED = 80 / 3.6;

/** Ripples of a graded dirt road at an easy pace: 0.35 to 1 m, 20 to 70 mm, 30 to 60 km/h (common practice, no source). */
export const USUAL_WASHBOARD: NamedWashboard = { name: '', spacing: 0.75, height: 0.03, speed: 40 / 3.6 };

/**
 * Stability and road manners of a setup: height of its centre of gravity, static stability factor, side slopes, roll
 * stiffness, roll gradient, load transfer, ride frequencies, flat ride and packing down, each with its half-width.
 *
 * @returns plain data, the same for the same setup, trials and seed
 * @validity statics and small motion: nothing here proves that a rig does not roll over
 */
export function stabilityOf(setup: Setup, options: StabilityOptions = {}): StabilityResult {
  return ask(setup, options, drawsOf(setup.rig, options)).result;
}

/**
 * Two setups of one rig line by line: road trim and trail trim side by side.
 *
 * @param options – roll centres for both; `before` and `after` differ where links move with the lift
 */
export function compareStability(
  before: Setup,
  after: Setup,
  options: StabilityOptions & { readonly rollCentresBefore?: Partial<RollCentres> } = {},
): StabilityComparison {
  const draws = drawsOf(after.rig, options);
  const { rollCentresBefore = options.rollCentres, ...rest } = options;
  const from = ask(before, { ...rest, rollCentres: rollCentresBefore }, draws);
  const to = ask(after, rest, draws);
  const keys = new Map<string, StabilityLine>();
  for (const line of [...from.result.lines, ...to.result.lines]) keys.set(keyOf(line), line);
  const lines = inOrder([...keys.values()]).map(({ id, place, of }): StabilityChange => {
    const same = (line: { id: string; place: string; of: string }) =>
      keyOf(line) === keyOf({ id, place, of });
    const [a, b] = [from.sampled.lines.find(same), to.sampled.lines.find(same)];
    return {
      id,
      place,
      of,
      before: from.result.lines.find(same)?.figure ?? null,
      after: to.result.lines.find(same)?.figure ?? null,
      change: a && b ? figureOfLine(difference(a, b)) : null,
    };
  });
  return { before: from.result, after: to.result, lines };
}

function ask(
  setup: Setup,
  options: StabilityOptions,
  draws: Draws,
): { result: StabilityResult; sampled: SampledLines } {
  const rollCentres = rollCentresOf(setup, options.rollCentres);
  const asked = {
    rollCentres,
    roadSpeed: options.roadSpeed ?? ROAD_SPEED,
    washboards: options.washboards ?? [USUAL_WASHBOARD],
  };
  const sampled = sampleLines(setup, draws, asked);
  const lines = inOrder(
    sampled.lines.map((line): StabilityLine => {
      const { id, place, of } = line;
      return { id, place, of, figure: figureOfLine(line) };
    }),
  );
  const result: StabilityResult = {
    setup: setup.id,
    lines,
    lowerSide: sampled.lowerSide,
    rollCentres: { front: rollCentres.front.origin, rear: rollCentres.rear.origin },
    findings: stabilityFindings(setup, sampled, asked),
  };
  return { result, sampled };
}

const keyOf = ({ id, place, of }: { id: string; place: string; of: string }): string =>
  `${id} ${place} ${of}`;

/** In the order of the list, rig before front before rear. */
function inOrder<T extends Pick<StabilityLine, 'id' | 'place'>>(lines: readonly T[]): readonly T[] {
  const places = ['rig', ...ENDS];
  const rank = ({ id, place }: T) => STABILITY_LINES.indexOf(id) * 3 + places.indexOf(place);
  return [...lines].sort((a, b) => rank(a) - rank(b));
}

const difference = (a: SampledLine, b: SampledLine): SampledLine => ({
  ...b,
  column: columnOf(a.column.length, (i) => b.column[i] - a.column[i]),
  unsure: a.unsure || b.unsure,
});
