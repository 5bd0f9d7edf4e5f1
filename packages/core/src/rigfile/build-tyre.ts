import { rateFromPress } from '../elements/tyre-rate.ts';
import type { End } from '../finding/place.ts';
import type { TyreSize } from '../rig/parts.ts';
import type { Tyre } from '../rig/rig.ts';
import { TAPED } from './build-spring.ts';
import { readForceTable } from './force-table.ts';
import type { Gaps } from './gaps.ts';
import type { ReadBeside } from './read-beside.ts';
import { readTyreSize, TYRE_SIZE_ACCEPTED } from './tyre-size.ts';
import { tyreRate, tyreRateBySize, USUAL } from './usual-value.ts';

/**
 * Tyre of one end. Its rate as typed; else out of a press test, at the load it carries; else by size and pressure; else by
 * pressure alone.
 *
 * @param staticLoad – mean on the two tyres [N]
 */
export function buildTyre(
  gaps: Gaps,
  end: End,
  staticLoad: number,
  readBeside: ReadBeside | undefined,
): Tyre {
  const key = `${end}.tyre`;
  const pressure = gaps.typedReading(`${key}.pressure`, { dimension: 'pressure', tool: 'gauge-tolerance' });
  const size = sizeOf(gaps, `${key}.size`);
  const rateKey = `${key}.rate`;
  const pressed = pressedRate(gaps, key, staticLoad, readBeside);
  const spec = { dimension: 'rate', tool: 'guess-tolerance' } as const;
  const usual = size && pressure ? tyreRateBySize(size, pressure.value) : tyreRate(pressure?.value ?? null);
  return {
    pressure,
    size,
    rate: pressed === null ? gaps.readingOr(rateKey, spec, usual) : gaps.worked(rateKey, 'rate', pressed),
    damping: gaps.readingOr(
      `${key}.damping`,
      { dimension: 'damping', tool: 'guess-tolerance' },
      USUAL.tyreDamping,
    ),
    radius: gaps.readingOr(`${key}.radius`, TAPED, USUAL.tyreRadius),
  };
}

function sizeOf(gaps: Gaps, key: string): TyreSize | null {
  const text = gaps.text(key);
  if (text === undefined) return null;
  const size = readTyreSize(text);
  if (!size) gaps.problem('rig-wrong-shape', key, text, TYRE_SIZE_ACCEPTED);
  return size;
}

function pressedRate(
  gaps: Gaps,
  key: string,
  staticLoad: number,
  readBeside: ReadBeside | undefined,
): number | null {
  const press = `${key}.press`;
  if (gaps.at(press) === undefined) return null;
  if (gaps.at(`${key}.rate`) !== undefined)
    gaps.problem(
      'rig-inconsistent',
      `${key}.rate`,
      gaps.text(`${key}.rate`) ?? '',
      `either this or ${press}`,
    );
  const table = readForceTable(gaps, press, { dimensions: ['length', 'force'], kind: 'stop' }, readBeside);
  return table ? rateFromPress(table.first, table.second, staticLoad) : null;
}
