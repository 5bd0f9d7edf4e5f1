import type { Figure } from '../finding/figure.ts';
import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';

interface Need {
  readonly room: number;
  readonly limits: { readonly body: Figure; readonly bracket: Figure | null };
}

/** What a stop has room for and what it must keep: one sentence. */
export const roomText = ({ room, limits }: Need, system: UnitSystem): string =>
  `From touch to where reserve and flex begin the stop has ${formatValue(room, 'length', { system })} to be crushed in; ` +
  `the body may see ${formatValue(limits.body.value, 'acceleration', { system })} above rest${
    limits.bracket === null
      ? ', and no limit is given for the bracket (limits.bracketForce)'
      : `, the bracket ${formatValue(limits.bracket.value, 'force', { system })}`
  }.`;

/** Said over the cures, where no curve does. */
export const NO_CURVE_DOES =
  'Every curve from a straight spring to a wall, from hardly there to rigid, was driven. What must change, one at a time:';

/** How far the band and the verdicts on stops can be trusted. */
export const NEED_TRUST: readonly string[] = [
  'The band is that of the rig at its nominal readings, found by driving simple curves without loss of their own; its edges are good to about 1 % of the force there. A curve inside it of another shape need not do: drive it.',
  'Each stop of the rig was driven with its own loss over sampled readings; ± covers 95 in 100 of such rigs, OPEN where a limit lies inside.',
];
