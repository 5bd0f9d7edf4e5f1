import type { RemedyCode } from '../finding/codes.ts';
import type { Remedy } from '../finding/finding.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { atLeast, atMost, plain, within } from './amounts.ts';
import { bracketChangeText } from './brackets.ts';
import { readingName } from './readings.ts';

/**
 * What can be done, as an order to oneself: `Put 37 mm or more between stop and frame: …`. Amounts are rounded to what
 * can be cut, always to the safe side.
 */
export function remedyText(remedy: Remedy, { system }: { readonly system: UnitSystem }): string {
  return PHRASES[remedy.code](new Amount(remedy, system));
}

/** The slots of an order: its amount to the safe side, and what it acts on. */
class Amount {
  readonly remedy: Remedy;
  readonly system: UnitSystem;

  constructor(remedy: Remedy, system: UnitSystem) {
    this.remedy = remedy;
    this.system = system;
  }

  get least(): string {
    const { amount } = this.remedy;
    return amount ? `${atLeast(amount, this.system)} or more` : 'as much as is missing';
  }

  get most(): string {
    const { amount } = this.remedy;
    return amount ? `${atMost(amount, this.system)} or less` : 'less';
  }

  get plain(): string | null {
    const { amount } = this.remedy;
    return amount ? plain(amount.value, amount.dimension, this.system) : null;
  }

  /** As a half-width that has to be reached. */
  get within(): string | null {
    const { amount } = this.remedy;
    return amount && amount.value > 0 ? within(amount.value, amount.dimension, this.system) : null;
  }

  get target(): string {
    return this.remedy.target ?? 'the part in the way';
  }
}

const PHRASES: Readonly<Record<RemedyCode, (say: Amount) => string>> = {
  'stop-spacer': (say) =>
    `Put a steel or aluminium spacer of ${say.least} behind the stop or under its pad; the free gap shrinks by as much.`,
  'seat-and-stop-drop': (say) =>
    `Lower coil seat and stop together on the frame by ${say.least}: the rig rises by that, the free gap stays. Check shaft angles, hoses and the droop that is lost.`,
  'notch-contact': (say) =>
    `Take away or move ${say.least} at ${say.target}. Do not cut a frame before a qualified person has said how it is made good.`,
  'lift-with-spacer': (say) =>
    `Lift by ${say.least} and put a stop spacer of the same thickness with it, so that the free gap stays; the lift alone would buy no safety. Check shaft angles, hoses and the droop that is lost.`,
  'longer-coil': (say) =>
    `Use a coil that stands ${say.plain ?? 'as much'} longer at ride and is no longer when solid, instead of the spacer.`,
  'set-gap': (say) =>
    `Set the stop to a gap of ${say.most} instead: no lift needed, that much less free travel.`,
  'measure-again': (say) => {
    const { target = '' } = say.remedy;
    const half = say.within;
    if (half !== null)
      return `Measure ${readingName(target)} again: known to ± ${half} it would prove the pass, if its value stays.`;
    const where = target.includes('.contacts.') ? 'at three places' : 'three times';
    return `Measure ${target === '' ? 'it' : readingName(target)} again, ${where}, and type half the spread as its tolerance.`;
  },
  'measure-more-contacts': () =>
    'With the springs out, bring the axle up and list every part that comes near: tube, differential, bar, link, tyre, shaft, hose bracket.',
  'shorten-strap': (say) => `Use a strap of ${say.most}, of the same webbing.`,
  'longer-hose': (say) =>
    `Have a brake hose fitted that is ${say.least} longer, with its routing and retention, by a person qualified under your local rules.`,
  'slow-down': () => 'Drive it slower.',
  'more-compression-damping': () => 'Two clicks more compression, and nothing else at the same time.',
  'softer-compression-damping': () => 'Two clicks less compression, and nothing else at the same time.',
  'weigh-again': () =>
    'Weigh again: level pads, driver and fuel aboard, each corner bounced three times, three weighings.',
  'inspect-hose': () =>
    'Turn lock to lock at full droop and full bump: no tension, no rubbing. Have the brakes looked at by a person qualified under your local rules.',
  'shock-on-bench': () => 'Have the shock put on a bench up to the speed of a hit, and type its table.',
  'longer-slip': (say) =>
    `Have a slip fitted that can change its length by ${say.least}, with what must stay engaged in it; a driveshaft maker balances it.`,
  'shorter-shaft': () =>
    'Have the shaft shortened so that its slip stands further out at ride height; look at droop again afterwards.',
  'limit-droop': (say) =>
    `Or let a strap, fully stretched, end the droop of either wheel at ${say.most}: there the shaft still follows.`,
  'turn-joint-by-hand': () =>
    'With the axle at strap-tight droop and again at full bump, turn the shaft by hand a whole turn: no joint may bind, no yoke may touch.',
  'double-joint': () =>
    'Fit a double joint at the case and turn the pinion up until it points at it, one to two degrees low.',
  'turn-pinion': () =>
    'Turn the pinion to its aim with the links or new spring seats; on a front axle it takes caster with it.',
  'larger-tube': () => 'Have a tube of larger diameter fitted, or a shorter shaft with a bearing between.',
  'tie-line': (say) =>
    `Tie it to the ${say.target} link ${say.plain ?? 'as far'} from its joint on the body, with slack on both sides, free of edges and moving joints.`,
  'gentler-loop': () =>
    'Lead the slack in one wide bow, with fittings that point along it, or have a hose fitted that is no longer than needed.',
  'raise-one-axle': () =>
    'Measure the height of the centre of gravity: raise one axle on rated lifting gear, suspension locked, nobody under or beside it, and weigh the other.',
  'load-low': () =>
    'Carry what is heavy low and between the axles, nothing on the roof; belts on, side slopes avoided. A wider track or less lift is the cure.',
  'connect-bar': (say) => `Connect the ${say.target} anti-roll bar before driving on the road.`,
  'softer-rebound-damping': (say) =>
    `Two clicks less rebound at the ${say.target}, and nothing else at the same time; drive the same washboard again.`,
  'softer-stop': () => 'Try a stop whose force rises later, over a longer crush.',
  'free-links': () =>
    'Limit the travel with stop and strap, move the mounts, or use longer links, until the axle goes freely through all of it with springs out.',
  'larger-pad': () => 'Use a larger pad, or move it to where the tip lands when the stop is fully crushed.',
  'turn-axle-back': () =>
    'Turn the axle back with longer lower or shorter upper links; the pinion turns down with it, degree for degree.',
  'match-drag-link': () =>
    'Bring drag link and Panhard to the same slope and length between their joints, by moving a mount. Steering is for a qualified person: have it looked at.',
  'level-panhard': () => 'Move a mount of the Panhard until it lies nearly level at ride height.',
  'centre-axle': () => 'Adjust the Panhard until the axle stands in the middle again at ride height.',
  'steeper-shock': () =>
    'Move a mount of the shock so that it stands steeper, and look at its length at both ends of travel again.',
  'strap-in-flex': (say) =>
    `Fit a strap, or shorten it, so that it is fully stretched at a wheel droop of ${say.most} from ride height, tried with the other wheel up and not only level.`,
  'build-bracket': ({ remedy, system }) =>
    `${bracketChangeText(remedy.target ?? '', remedy.amount?.value ?? 0, system)}: by the formulas that is enough.`,
  'inspect-bracket': () =>
    'Have it made and looked at by a qualified welder, and passed by the inspection where you drive.',
  'stop-sooner-in-flex': () =>
    'Or let the stop end flex sooner, with a spacer behind it or a wider station; try it flexed, with springs out and the rig on rated stands.',
};
