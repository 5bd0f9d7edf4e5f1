import type { Spring } from '../rig/parts.ts';
import type { Gaps } from './gaps.ts';

/** A coil, on the rig or on the shelf. */
export function buildSpring(gaps: Gaps, key: string, id: string): Spring {
  const spring: Spring = {
    id,
    rate: gaps.needed(`${key}.rate`, { dimension: 'rate', tool: 'press-rate-tolerance' }),
    freeLength: gaps.typedReading(`${key}.freeLength`, TAPED),
    solidLength: gaps.typedReading(`${key}.solidLength`, TAPED),
  };
  const { freeLength, solidLength } = spring;
  if (freeLength && solidLength && solidLength.value >= freeLength.value) {
    gaps.problem(
      'rig-inconsistent',
      `${key}.solidLength`,
      solidLength.text,
      `less than the free length, ${freeLength.text}`,
    );
  }
  return spring;
}

export const TAPED = { dimension: 'length', tool: 'tape-tolerance' } as const;
