import { bad, good, type Result, type Where } from '../finding/problem.ts';
import { parseQuantity } from './parse.ts';

/** Both ends of a stretch of speeds as typed [m/s]: nothing is said of which is larger. */
export interface SpeedRange {
  readonly from: number;
  readonly to: number;
}

const ACCEPTED = 'two speeds with two dots between, for example 5..45 mph';
/** What stands between the two: two dots, three, or the sign for them. */
const BETWEEN = /\.{2,3}|…/;
/** A number that has no unit of its own. */
const BARE = /^[-+.,/\d\s]*\d$/;
const SHOWN_OF_BAD_TEXT = 60;

/**
 * `5..45mph` → both ends. A first speed without a unit has that of the second, so `8..72 km/h` is understood as well
 * as `5 mph..72 km/h`.
 *
 * @failure `ask-option` when there are not two of them; what `parseQuantity` says of either
 */
export function parseSpeedRange(text: string, where: Where = {}): Result<SpeedRange> {
  const parts = text.split(BETWEEN).map((part) => part.trim());
  const [first = '', second = ''] = parts;
  if (parts.length !== 2 || first === '' || second === '')
    return bad({
      code: 'ask-option',
      where,
      found: text.trim().slice(0, SHOWN_OF_BAD_TEXT),
      accepted: ACCEPTED,
    });
  const to = parseQuantity(second, 'speed', where);
  if (!to.ok) return to;
  const unit = BARE.test(first) ? (/[^-+.,/\d\s].*$/.exec(second)?.[0] ?? '') : '';
  const from = parseQuantity(`${first} ${unit}`, 'speed', where);
  return from.ok ? good({ from: from.value.value, to: to.value.value }) : from;
}
