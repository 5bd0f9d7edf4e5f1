import type { Remedy } from '../finding/finding.ts';
import { endOf } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import { exact } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { COIL } from './contacts.ts';
import { largestGap, smallestLength } from './enough.ts';
import type { TravelColumn } from './result.ts';
import type { SampledColumn } from './sampled-column.ts';
import { verdictOn } from './verdict.ts';

/**
 * What makes a corner pass, each by itself and each the smallest that does: worked out on the trials, not guessed.
 * Amounts are lengths along the part that is cut or moved, taken as exact; whoever cuts less exactly adds his error.
 *
 * @returns empty when the corner passes, or when its gap or its lift is not known
 * @source rules T2, T6–T8, T17 of SPEC.md
 */
export function remediesOf(
  setup: Setup,
  sampled: SampledColumn,
  column: TravelColumn,
  draws: Draws,
): readonly Remedy[] {
  const { spare, verdict } = column;
  if (verdict === 'pass' || spare.tolerance === null) return [];
  const { base, patch } = setup.ends[endOf(column.corner)];
  const remedies: Remedy[] = [];
  if (verdict === 'not-proven') remedies.push(...measuringAgain(sampled, column));

  // A stop that is closer to its pad meets the pad before anything else does: every contact gains.
  const stopRatio = draws.of(base.stopMount.ratio);
  const spacer = smallestLength(sampled, () => true, stopRatio);
  if (spacer !== null && column.freeBump.value > spacer / stopRatio[0])
    remedies.push({ code: 'stop-spacer', amount: exact('length', spacer) });
  const gap = largestGap(sampled, stopRatio);
  if (gap !== null) remedies.push({ code: 'set-gap', amount: exact('length', gap) });
  const notch = notchOf(sampled, draws);
  if (notch) remedies.push(notch);
  const height = smallestLength(sampled, (k) => sampled.contacts[k].id !== COIL, null);
  if (height !== null) {
    remedies.push({ code: 'seat-and-stop-drop', amount: exact('length', height) });
    remedies.push({ code: 'lift-with-spacer', amount: exact('length', height) });
  }
  const coil = sampled.contacts.findIndex(({ id }) => id === COIL);
  if (coil >= 0 && patch.springSpacer && verdictOn(lineOf(column, COIL)) !== 'pass')
    remedies.push({ code: 'longer-coil', amount: exact('length', patch.springSpacer.value), target: COIL });
  return remedies;
}

const lineOf = (column: TravelColumn, id: string) =>
  (column.contacts.find((line) => line.id === id) as TravelColumn['contacts'][number]).spare;

/** A cut at the one contact that stands in the way; none where two do. */
function notchOf(sampled: SampledColumn, draws: Draws): Remedy | null {
  const { contacts, spares } = sampled;
  let worst = -1;
  for (const [k, contact] of contacts.entries())
    if (contact.kind === 'body' && (worst < 0 || spares[k][0] < spares[worst][0])) worst = k;
  if (worst < 0) return null;
  const { ratio, name } = contacts[worst];
  const cut = smallestLength(sampled, (k) => k === worst, draws.of(ratio));
  return cut === null ? null : { code: 'notch-contact', amount: exact('length', cut), target: name };
}

/**
 * The reading to take again first, and how well: the half-width at which u would come down to the spare, the other
 * readings staying as they are. No half-width is named where this reading alone cannot do it.
 */
function measuringAgain({ readings }: SampledColumn, { blame, spare }: TravelColumn): readonly Remedy[] {
  const [worst] = blame;
  const reading = worst && readings.get(worst.key);
  if (!reading || spare.tolerance === null) return [];
  const half = neededHalfWidth(reading, worst.share, spare.value, spare.tolerance);
  return [
    half === null
      ? { code: 'measure-again', target: reading.key }
      : { code: 'measure-again', target: reading.key, amount: exact(reading.dimension, half) },
  ];
}

function neededHalfWidth(reading: Reading, share: number, spare: number, u: number): number | null {
  if (spare <= 0) return null;
  const left = spare ** 2 - u ** 2 * (1 - share);
  if (left <= 0) return null;
  return Math.max(reading.plus, reading.minus) * Math.sqrt(left / (u ** 2 * share));
}
