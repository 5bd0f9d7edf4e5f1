import type { Quantity } from '../quantity/quantity.ts';
import type { AssumptionRule } from '../rig/assumptions.ts';

/** A tool that gives no tolerance of its own: a choice of the owner, exact by definition. */
export type Tool = ToleranceRule | 'choice';

type ToleranceRule = Extract<AssumptionRule, `${string}-tolerance`>;

const SIXTEENTH_INCH = 0.0254 / 16;

/** Text in inches or feet was read off a tape with a sixteenth scale. */
const readInInches = (text: string): boolean => /["'″′”’]|\bin\b|\binch|\bft\b|\d(in|ft)\b/i.test(text);

/**
 * 95 % half-width that goes with a reading whose tolerance was not typed, by the tool that is normally used.
 * Common practice, no source, except where said; `docs/theory/assumptions.md` has the table.
 */
const HALF_WIDTH: Readonly<Record<ToleranceRule, (quantity: Quantity) => number>> = {
  // Tape ±1/16 in or 1 to 2 mm.
  'tape-tolerance': ({ text }) => (readInInches(text) ? SIXTEENTH_INCH : 0.0015),
  // Corner pads ±0.2 to 0.5 %.
  'scale-tolerance': ({ value }) => 0.005 * Math.abs(value),
  // Press and load cell ±3 to 5 %.
  'press-rate-tolerance': ({ value }) => 0.05 * value,
  // Repeatability of a press test ±5 %.
  'press-crush-tolerance': ({ value }) => 0.05 * value,
  // Two tapes over a few inches of travel.
  'ratio-tolerance': ({ value }) => Math.min(0.02, value / 2),
  'guess-tolerance': ({ value }) => 0.2 * Math.abs(value),
  // The drill whose shank just goes in, of a set that steps by half a millimetre.
  'drill-tolerance': () => 0.00025,
  // Weighed under the hubs with half the links hanging on the frame: ±3 to 5 %.
  'unsprung-tolerance': ({ value }) => 0.05 * value,
  // One axle raised on home gear: ±25 to 50 mm.
  'cg-height-tolerance': () => 0.04,
  // A stick gauge: one psi.
  'gauge-tolerance': () => 6894.757293168361,
  // Cable tie on the shaft: ±1.5 mm.
  'marker-tolerance': () => 0.0015,
  // Clay springs back and holds dust: ±1 mm and 0.5 to 1 mm.
  'clay-tolerance': () => 0.0015,
  // Plumb line, tape and a floor level to 3 mm: 1/8 in or 3 mm.
  'under-rig-tolerance': ({ text }) => (readInInches(text) ? 2 * SIXTEENTH_INCH : 0.003),
  // A digital level on a machined face: ±0.1 to 0.2°.
  // Calliper on plate or tube with mill scale: rolling tolerance and reading together.
  'gauge-plate-tolerance': ({ value }) => Math.max(0.0002, 0.04 * value),
  'level-tolerance': () => (0.2 * Math.PI) / 180,
};

/** What a tolerance that was not typed is taken as; null where the value is a choice. */
export function usualTolerance(
  quantity: Quantity,
  tool: Tool,
): { readonly rule: ToleranceRule | null; readonly halfWidth: number } {
  if (tool === 'choice') return { rule: null, halfWidth: 0 };
  const rule = quantity.assumed ? 'guess-tolerance' : tool;
  // A guess is never taken as better than the tool it stands in for.
  return { rule, halfWidth: Math.max(HALF_WIDTH[rule](quantity), HALF_WIDTH[tool](quantity)) };
}
