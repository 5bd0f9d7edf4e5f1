import { ENDS } from '../finding/place.ts';
import type { Choices, EndChoices } from './choices.ts';

/** What is bolted, cut or set in lengths at one end, in the order in which it is asked. */
export const HARD_CHOICES = [
  'stop',
  'stopSpacer',
  'seatAndStopDrop',
  'spring',
  'springSpacer',
  'strapLength',
] as const;
export type HardChoice = (typeof HARD_CHOICES)[number];

/** Names of the changes that a rig file lists: `front.stop`, `rear.notch.sump`. Settings cost nothing and have none. */
export function choiceNames(choices: Pick<Choices, 'ends'>): readonly string[] {
  return ENDS.flatMap((end) => {
    const of = choices.ends[end];
    return [
      ...HARD_CHOICES.filter((name) => offers(of, name)).map((name) => `${end}.${name}`),
      ...Object.keys(of.notch).map((contact) => `${end}.notch.${contact}`),
    ];
  });
}

function offers(of: EndChoices, name: HardChoice): boolean {
  if (name === 'stop' || name === 'spring') return of[name].length > 0;
  return of[name] !== null;
}
