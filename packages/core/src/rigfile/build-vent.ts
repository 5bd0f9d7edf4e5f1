import type { StopVent } from '../rig/parts.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps } from './gaps.ts';
import { USUAL } from './usual-value.ts';

/** The air space of a hollow stop and its hole; null where none was typed. */
export function buildVent(gaps: Gaps, key: string): StopVent | null {
  if (gaps.at(key) === undefined) return null;
  const cavity = gaps.needed(`${key}.cavity`, TAPED);
  const hole = gaps.needed(`${key}.hole`, { dimension: 'length', tool: 'drill-tolerance' });
  const typed = gaps.at(`${key}.count`);
  const count = typeof typed === 'number' ? typed : 1;
  const asked = cavity.text !== '' && hole.text !== '';
  if (asked && count * hole.value ** 2 >= cavity.value ** 2)
    gaps.problem(
      'rig-inconsistent',
      hole.key,
      hole.text,
      `less open than the air space, ${cavity.text} across`,
    );
  const discharge = gaps.readingOr(
    `${key}.discharge`,
    { dimension: 'ratio', tool: 'ratio-tolerance' },
    USUAL.ventDischarge,
  );
  if (discharge.value < 0.3 || discharge.value > 1)
    gaps.problem('rig-inconsistent', discharge.key, discharge.text, '0.3 to 1');
  return { cavity, hole, count, discharge };
}
