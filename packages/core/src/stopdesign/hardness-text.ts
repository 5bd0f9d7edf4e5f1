import { bad, good, type Result, type Where } from '../finding/problem.ts';
import { HARDNESS_RANGE, type HardnessScale } from './hardness.ts';

export interface Hardness {
  readonly value: number;
  readonly scale: HardnessScale;
}

/**
 * A hardness as typed: `60 A`, `Shore A 60`, `A60`, `45 D`. A bare number is refused: A and D differ by ten times in
 * stiffness.
 *
 * @failure `quantity-unit-missing`, `quantity-not-understood`; `stop-hardness-range` where hardness tells next to nothing
 */
export function parseHardness(text: string, where: Where = {}): Result<Hardness> {
  const plain = text.replace(/shore|durometer/gi, '').trim();
  const match = /^(?:([AD])\s*)?(\d+(?:\.\d+)?)\s*([AD])?$/i.exec(plain);
  if (match === null || (match[1] && match[3]))
    return bad({ code: 'quantity-not-understood', where, found: text, accepted: EXAMPLES });
  const letter = (match[1] ?? match[3])?.toUpperCase();
  if (letter === undefined)
    return bad({ code: 'quantity-unit-missing', where, found: text, accepted: `Shore A or D: ${EXAMPLES}` });
  const scale = letter === 'A' ? 'shore-a' : 'shore-d';
  const value = Number(match[2]);
  const [least, most] = HARDNESS_RANGE[scale];
  if (value >= least && value <= most) return good({ value, scale });
  return bad({
    code: 'stop-hardness-range',
    where,
    found: text,
    accepted: `${least} to ${most} on this scale; beyond, a durometer tells next to nothing about stiffness: press it`,
  });
}

const EXAMPLES = '60 A, 45 D';
