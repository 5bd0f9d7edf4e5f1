import type { LimitOf, LinkLineId } from '../finding/link-lines.ts';
import type { Place } from '../finding/place.ts';
import { PLACE_NAMES } from './places.ts';

/** A line of the knock-on list, by what it is and where. */
interface NamedLine {
  readonly of: LinkLineId;
  readonly place: Place;
  readonly part: string;
}

/** `Rear case joint, droop`: a line of the knock-on list as a view heads it. */
export function linkLineName({ of, place, part }: NamedLine): string {
  const said = NAMES[of](part, place);
  return place === 'rig' ? capital(said) : `${PLACE_NAMES[place]} ${said}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const named = (what: string, part: string): string => (part === '' ? what : `${what}, ${part}`);
const joint = (part: string, when: string): string => `${part} joint, ${when}`;

type Name = (part: string, place: Place) => string;

const NAMES: Readonly<Record<LinkLineId, Name>> = {
  height: () => 'height gained',
  'free-bump': () => 'free bump',
  'travel-spare': () => 'travel to spare',
  droop: () => 'droop',
  'shock-left-bump': () => 'shock left in bump',
  'shock-left-droop': () => 'shock left in droop',
  'coil-left-bump': () => 'coil left in bump',
  'coil-held-droop': () => 'coil held in droop',
  'stop-off-pad': () => 'stop off its pad',
  'flex-clear': () => 'way clear in flex',
  'flex-angle': () => 'flexed angle',
  'flex-up': () => 'flexed, wheel up',
  'flex-down': () => 'flexed, wheel down',
  'flex-tyre-load': () => 'low tyre load',
  'ramp-index': () => 'ramp index',
  'pinion-angle': (part) => (part === 'turned' ? 'pinion turned' : 'pinion angle'),
  'joint-ride': (part) => joint(part, 'ride'),
  'joint-bump': (part) => joint(part, 'bump'),
  'joint-droop': (part) => joint(part, 'droop'),
  'joint-most': (part) => joint(part, 'most'),
  'slip-swing': () => 'shaft plunge',
  'slip-left-in': () => 'slip left to go in',
  'slip-left-out': () => 'slip left engaged',
  'shaft-length': () => 'shaft length',
  'shaft-speed': () => 'speed shaft allows',
  'hose-slack': (part) => (part === '' ? 'hose slack' : `hose slack, ${part}`),
  caster: () => 'caster',
  'bump-steer': () => 'bump steer',
  'panhard-slope': () => 'Panhard slope',
  'drag-link-slope': () => 'drag link slope',
  'axle-sideways': () => 'axle to the left',
  'axle-forward': () => 'axle forward',
  'axle-steer': () => 'axle steer',
  'sideways-swing': () => 'sideways swing',
  'roll-steer': () => 'roll steer',
  'roll-centre': () => 'roll centre',
  anti: (_, place) => (place === 'front' ? 'anti-dive' : 'anti-squat'),
  'spring-ratio': () => 'spring ratio',
  'shock-ratio': () => 'shock ratio',
  'stop-ratio': () => 'stop ratio',
  'shock-lean': () => 'shock lean',
  'bush-give': () => 'give in bushes',
  'cg-height': () => 'centre of gravity',
  'static-stability-factor': () => 'stability factor',
  'slope-first-lift': () => 'slope, a tyre lifts',
  'slope-tips': () => 'slope, it tips',
  'roll-stiffness': () => 'roll stiffness',
  'roll-springs': () => 'roll, springs',
  'roll-gas': () => 'roll, shock gas',
  'roll-bar': () => 'roll, bar',
  'roll-tyres': () => 'roll, tyres',
  'roll-gradient': () => 'lean per g',
  'load-transfer-share': () => 'load transfer',
  'ride-frequency': () => 'ride frequency',
  'hop-frequency': () => 'wheel hop',
  'damping-compression': () => 'bump damping',
  'damping-rebound': () => 'rebound damping',
  'flat-ride-ratio': () => 'rear/front frequency',
  'flat-ride-speed': () => 'rides flat at',
  'washboard-sinks': (part) => named('packs down', part),
  'washboard-swing': (part) => named('washboard swing', part),
};

/** What a line means, in one sentence. */
export const linkLineMeaning = (of: LinkLineId): string => MEANINGS[of];

const MEANINGS: Readonly<Record<LinkLineId, string>> = {
  height: 'Body over the axle, against the rig as measured.',
  'free-bump': 'Axle travel until the stop touches, the lesser of both sides.',
  'travel-spare':
    'Left to metal beyond flex and reserve with the stop fully crushed, the lesser of both sides.',
  droop: 'Axle travel down to the fully stretched strap, or else the open shock.',
  'shock-left-bump': 'Shock stroke left with the stop fully crushed; the reserve is its limit.',
  'shock-left-droop': 'Shock stroke left with the strap fully stretched; the reserve is its limit.',
  'coil-left-bump': 'Coil left before it is solid, with the stop fully crushed; the reserve is its limit.',
  'coil-held-droop': 'What the coil is still pressed in at full droop; below nothing it is loose.',
  'stop-off-pad':
    'Tip of the stop from the middle of its pad, fully crushed, level and flexed; the edge is its limit.',
  'flex-clear':
    'One wheel up, the other down, where stop, strap or tyres end it: what is left to the nearest part that must not end it, the lesser of both sides.',
  'flex-angle':
    'Axle against the body, one wheel up and the other down, until something ends it; the lesser of both sides.',
  'flex-up': 'Travel of the wheel that goes up at the flexed angle, the lesser of both sides.',
  'flex-down': 'Travel of the wheel that goes down at the flexed angle, the lesser of both sides.',
  'flex-tyre-load': 'Load left on the tyre that goes down at the flexed angle, the lesser of both sides.',
  'ramp-index':
    'Way up a ramp of 20° with one front wheel until a tyre lifts or nothing flexes more, ÷ wheelbase × 1000; the lesser of both sides.',
  'pinion-angle': 'Against level, nose up; turned: since the rig was measured.',
  'joint-ride':
    'Bend of the joint at ride height; a single one is held against a rule of thumb for its speed.',
  'joint-bump': 'Bend of the joint with both wheels at full bump, against where it binds.',
  'joint-droop': 'Bend of the joint with both wheels at full droop, against where it binds.',
  'joint-most': 'Largest bend of the joint over bump, droop and roll, against where it binds.',
  'slip-swing': 'Longest less shortest shaft over bump, droop and roll, against the slip that can be used.',
  'slip-left-in': 'Slip left to go in where the shaft is shortest; 20 mm is usual.',
  'slip-left-out': 'Slip left where the shaft is longest, beyond what must stay engaged.',
  'shaft-length': 'Between the centres of its joints at ride height.',
  'shaft-speed': 'Road speed up to which joints and tube keep the rules of thumb.',
  'hose-slack': 'Free length less the largest distance of its ends over bump, droop, roll and steer.',
  caster: 'Top of the kingpin behind its foot, at ride height; 4 to 8° is usual.',
  'bump-steer': 'Largest turn of the wheels between full droop and full bump, steering wheel held.',
  'panhard-slope': 'Of the Panhard at ride height, seen from behind; 5° at most is usual.',
  'drag-link-slope': 'Between drag link and Panhard at ride height, seen from behind; alike is right.',
  'axle-sideways': 'Axle against the body at ride height, since the rig was measured; minus is to the right.',
  'axle-forward': 'Axle against the body at ride height, since the rig was measured; minus is backward.',
  'axle-steer': 'Turn of the axle seen from above at ride height; minus steers to the right.',
  'sideways-swing': 'How far the axle goes from side to side between full droop and full bump.',
  'roll-steer': 'Steer of the axle per roll of the axle, at ride height.',
  'roll-centre': 'Above the ground, at ride height.',
  anti: 'Share of the load transfer that the links carry, as if all drive (rear) or all braking (front) were put down at this axle.',
  'spring-ratio': 'Spring travel per axle travel at ride height, from its real points.',
  'shock-ratio': 'Shock travel per axle travel at ride height, from its real points.',
  'stop-ratio': 'Stop travel per axle travel at ride height, from its real points.',
  'shock-lean': 'Of the shock against upright at ride height; 30° at most is usual.',
  'bush-give': 'Length that bushes of four links and a Panhard must give over the travel.',
  'cg-height': 'Centre of gravity of the whole rig above the ground.',
  'static-stability-factor':
    'Track ÷ (2 × height of the centre of gravity); below 1 it tips before it slides.',
  'slope-tips': 'Side slope, standing still, at which it tips.',
  'roll-stiffness': 'Springs, gas, bars and tyres together.',
  'roll-springs': 'Roll stiffness by the springs of an axle.',
  'roll-gas': 'Roll stiffness by the gas of its shocks.',
  'roll-bar': 'Roll stiffness by its anti-roll bar; nothing while it is off.',
  'roll-tyres': 'Roll stiffness by its tyres, which stand below all the others.',
  'load-transfer-share':
    'Share of the load that a turn moves across which this axle takes; the one with more goes light first.',
  'roll-gradient': 'Lean of the body per g sideways.',
  'slope-first-lift': 'Side slope, standing still, at which the first tyre lifts.',
  'ride-frequency': 'Body on its springs and tyres.',
  'hop-frequency': 'Axle between its springs and tyres.',
  'damping-compression': 'Share of critical damping of the body, shocks closing.',
  'damping-rebound': 'Share of critical damping of the body, shocks opening.',
  'flat-ride-ratio': 'Rear ÷ front ride frequency; a little above 1 rides flat after a bump at speed.',
  'flat-ride-speed': 'Road speed at which these frequencies ride flat.',
  'washboard-sinks': 'How much lower the body rides on washboard, for rebound holds more than bump.',
  'washboard-swing': 'Suspension travel to each side on washboard.',
};

/** Whose limit it is, where it stands beside it. */
export const limitOfText = (limitOf: LimitOf): string => LIMITS[limitOf];

const LIMITS: Readonly<Record<LimitOf, string>> = {
  part: 'of the part',
  owner: 'what you keep free',
  practice: 'common practice, no source',
};

/** Parts whose points nobody measured, and which lines are missing for it. */
const MISSING = {
  links: 'links: pinion, caster, steer, roll centre, anti-squat and everything that follows from them',
  'spring-mounts': 'spring mounts: true spring ratio, coil length over the travel',
  'shock-mounts': 'shock mounts: true shock ratio and lean, shock length over the travel',
  'stop-mounts': 'stop mounts: where its tip lands on the pad, true stop ratio',
  pad: 'size of the stop pad: whether the tip stays on it',
  shaft: 'driveshaft: joint angles, plunge',
  slip: 'slip of the driveshaft, and how far it can still go in: what is left of it',
  'axle-ratio': 'axle ratio: shaft speed, and the angles that it allows',
  hose: 'ends of the brake hose: slack over all travel and lock',
  steering: 'steering: caster, bump steer, hoses at lock',
} as const;

/** `links: pinion, caster, …`: what was not measured, and what the answer lacks without it. */
export const linksMissingText = (what: keyof typeof MISSING): string => MISSING[what];
