import type { Dimension } from '../finding/figure.ts';
import { toSi, type Unit } from './dimension.ts';
import type { Measure, Part } from './grammar.ts';
import { isTrouble, NOT_UNDERSTOOD, type Trouble } from './trouble.ts';
import { acceptedUnits, isUnitSomewhere, unitNamed } from './unit-name.ts';

/** A measure in SI, and the unit that stood last in it, which a bare tolerance inherits. */
export interface Meant {
  readonly value: number;
  readonly unit: Unit;
}

interface Size {
  readonly amount: number;
  readonly unit: Unit;
}

/** The last unit typed in a measure, or null. In `2' 7 1/4` it is the foot mark. */
export const lastUnitTyped = ({ parts }: Measure): string | null => {
  const [first, second] = parts;
  return second?.unit ?? first.unit;
};

/**
 * @param lent – name of the unit that a measure without one takes over, or null when there is none
 * @failure quantity-unit-missing, quantity-unit-unknown, quantity-unit-wrong-kind, quantity-out-of-range
 */
export function meantBy(measure: Measure, dimension: Dimension, lent: string | null): Meant | Trouble {
  const [first, second] = measure.parts;
  const unit = unitMeant(first.unit ?? lent, dimension);
  if (isTrouble(unit)) return unit;
  const size = second ? feetAndInches(first, unit, second, dimension) : { amount: first.amount, unit };
  if (isTrouble(size)) return size;
  const value = toSi(size.amount, size.unit);
  // A minus before nothing is nothing: `0 - 0` is 0, where `-0` would be negative zero.
  return { value: measure.negative ? 0 - value : value, unit: size.unit };
}

function unitMeant(name: string | null, dimension: Dimension): Unit | Trouble {
  const unit = unitNamed(name ?? '', dimension);
  if (unit) return unit;
  const trouble =
    name === null
      ? 'quantity-unit-missing'
      : isUnitSomewhere(name)
        ? 'quantity-unit-wrong-kind'
        : 'quantity-unit-unknown';
  return { trouble, accepted: acceptedUnits(dimension) };
}

/** `1 ft 6 in` in inches; after feet the inch may be left out (`1' 6`). No other two units go together. */
function feetAndInches(feet: Part, unit: Unit, inches: Part, dimension: Dimension): Size | Trouble {
  const inch = unitMeant(inches.unit ?? 'in', dimension);
  if (isTrouble(inch)) return inch;
  if (unit.name !== 'ft' || inch.name !== 'in') return NOT_UNDERSTOOD;
  return Number.isInteger(feet.amount) && inches.amount < 12
    ? { amount: 12 * feet.amount + inches.amount, unit: inch }
    : { trouble: 'quantity-out-of-range', accepted: 'whole feet, then less than 12 inches' };
}
