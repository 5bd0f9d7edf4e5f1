import type { FindingCode } from '../finding/codes.ts';
import type { Phrase } from './facts.ts';

type StabilityCode = Extract<FindingCode, `stability-${string}`>;

const VERDICTS: Readonly<Record<string, string>> = {
  over: 'it tips before it slides on ground that grips',
  unproven: 'it may tip before it slides on ground that grips',
  fine: 'standing still on ground that grips it would slide before it tips; ruts, rocks, speed and give of the springs take from that',
};

/** Stability is a safety matter: each sentence says what it does not prove. */
export const STABILITY_PHRASES: Readonly<Record<StabilityCode, Phrase>> = {
  'stability-factor': (say) =>
    `static stability factor ${say.figure('factor')} with the centre of gravity ${say.figure('height')} above the ground: ${VERDICTS[say.text('verdict')] ?? 'unknown'}. Chance that it is below ${say.limit}: ${say.chance}. This is arithmetic, no certificate.`,
  'stability-side-slope': (say) => {
    const assumed = say.text('assumed');
    const note =
      assumed === 'none' || assumed === 'unknown' ? '' : ` Roll centre ${assumed} is assumed, not measured.`;
    return `standing still on a smooth side slope with the ${say.text('lower')} side down, the first upper wheel carries nothing at ${say.figure('firstLift')} and the rig tips at ${say.figure('tips')} (${say.figure('rigid')} if nothing gave); the body then leans ${say.size('lean')} more than the ground.${note} A rut, a rock, a turn or a soft edge takes much of this away: never drive near it; belts on.`;
  },
  'stability-rear-heavy': (say) =>
    `on the road the rear axle takes ${say.figure('transfer')} of the load that a turn moves across, with ${say.plain('weight')} of the weight: its inner tyre goes light first and the tail may come round. The body leans ${say.figure('gradient')} for each g.`,
  'stability-pitches': (say) =>
    `the rear (${say.figure('rear')}) rides slower than the front (${say.figure('front')}): after a bump at speed it pitches instead of bouncing flat. For ${say.plain('speed')} the rule of thumb wants the rear ${say.figure('wanted')} times as quick; on rocks it does not matter.`,
  'stability-packs-down': (say) => {
    const then =
      say.text('stop') === 'touches'
        ? `with ${say.figure('swing')} of travel to each side it reaches its stops (free bump ${say.plain('freeBump')}), and rides harder the longer it lasts.`
        : `${say.plain('left')} of ${say.plain('freeBump')} free bump are left.`;
    return `on washboard of ${say.plain('spacing')} by ${say.plain('height')} at ${say.plain('speed')} the shocks pull the body down by ${say.figure('sinks')}: rebound holds more than bump; ${then}`;
  },
};
