import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';

type LawNumber = 'solidModulus' | 'densityPower' | 'softening' | 'closing';
type Doubt = 'one-density' | 'not-deep' | 'one-copy' | 'scatter' | 'not-settled';

const NAMES: Readonly<Record<LawNumber, string>> = {
  solidModulus: 'Modulus of the print',
  densityPower: 'Power of density',
  softening: 'Softening',
  closing: 'Closing',
};

/** A modulus in the unit that data sheets of elastomers use. */
const MODULUS_UNIT = { metric: { name: 'MPa', si: 1e6 }, shop: { name: 'psi', si: 6894.757 } } as const;

interface Told {
  readonly number: LawNumber;
  readonly before: number;
  readonly beforeHalf: number;
  readonly value: number;
  readonly half: number;
  readonly isTold: boolean;
}

/** One number of a material: its name, what was taken, what the presses say. */
export function toldText(
  told: Told,
  system: UnitSystem,
): { readonly name: string; readonly before: string; readonly now: string } {
  const { number, before, beforeHalf, value, half, isTold } = told;
  const unit = number === 'solidModulus' ? MODULUS_UNIT[system] : null;
  const figure = (middle: number, width: number): string => {
    const [shown, by] = unit === null ? [middle, width] : [middle / unit.si, width / unit.si];
    // As many decimals as the second digit of the half-width.
    const decimals = Math.max(0, 1 - Math.floor(Math.log10(Math.max(by, 1e-6))));
    return `${shown.toFixed(decimals)} ± ${by.toFixed(decimals)}${unit === null ? '' : ` ${unit.name}`}`;
  };
  return {
    name: NAMES[number],
    before: figure(before, beforeHalf),
    now: isTold ? figure(value, half) : 'not told, as before',
  };
}

/** Two numbers that presses cannot tell apart. */
export const togetherText = ({ one, other, by }: { one: LawNumber; other: LawNumber; by: number }): string =>
  `${NAMES[one]} and ${NAMES[other].toLowerCase()} are told ${by > 0 ? 'by their difference' : 'by their sum'} rather than each (correlation ${by.toFixed(2)}): the file keeps that.`;

/** What is doubtful about a material out of presses: one sentence, and what to do. */
export const correctDoubtText = (doubt: Doubt): string =>
  ({
    'one-density':
      'One density does not tell how stiffness goes with density: it stays as taken. Press coupons of two densities more.',
    'not-deep':
      'Pressed too little to show how walls soften or where cells close: those stay as taken. Press to four fifths of closing.',
    'one-copy': 'One print of each density: what printing alone scatters is taken. Press two of each.',
    scatter:
      'Readings lie more than 15 % off any one law: look for a coupon that buckled, stuck or was printed otherwise.',
    'not-settled': 'The search for the numbers did not settle: look at the readings.',
  })[doubt];

interface Plan {
  readonly diameter: number;
  readonly height: number;
  readonly cell: number;
  readonly copies: number;
}

/** How coupons are printed and pressed, a step a line. */
export function couponTexts({ diameter, height, cell, copies }: Plan, system: UnitSystem): readonly string[] {
  const length = (value: number) => formatValue(value, 'length', { system });
  return [
    `Cylinders ${length(diameter)} across and ${length(height)} high, ${copies} of each density, cells of ${length(cell)}: no skin, no plates. Same filament, spool, nozzle, heat and direction up as the stop.`,
    'Let them lie a day at room temperature. Measure height and diameter of each and write them down.',
    'Between flat plates, dry and clean, centred. Three strokes to the deepest crush first; then let it rest for a minute.',
    'One stroke: zero where the plate touches, ten seconds at each crush of the form, then write down the force. Stop where a coupon folds to one side.',
    'The forces stand at the deepest crush, as far as the material is known: choose a gauge or scale that reads a tenth of the least and more than the most.',
  ];
}
