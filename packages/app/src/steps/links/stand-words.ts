import { formatValue, type UnitSystem } from '@lastinch/core';
import { tie } from '../../parts/tie.ts';

/** Where the middle of an axle stands. */
export const inWords = (bump: number, system: UnitSystem): string =>
  bump === 0
    ? 'ride height'
    : tie(`${formatValue(Math.abs(bump), 'length', { system })} ${bump > 0 ? 'bump' : 'droop'}`);

/** Roll of the axle with its left side up is positive here. */
export function rollInWords(roll: number, system: UnitSystem): string {
  if (roll === 0) return 'level';
  const degrees = formatValue(Math.round(Math.abs(roll) * 572.96) / 572.96, 'angle', { system });
  return tie(`${degrees}, ${roll > 0 ? 'left' : 'right'} wheel up`);
}

export const stepText = (system: UnitSystem): string =>
  system === 'shop' ? '1/16 in a press, 1/2 in with Shift' : '1 mm a press, 10 mm with Shift';
