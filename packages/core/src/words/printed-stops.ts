import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { needle } from './speeds.ts';
import { roughText as rough } from './stop-answers.ts';
import { brokenText, steepnessText } from './stops.ts';

/** A printed stop as the job says it, as far as sentences need it. */
interface Printed {
  readonly range: { readonly least: number; readonly most: number };
  readonly body: {
    readonly skin: number;
    readonly foot?: number;
    readonly cap?: number;
  };
  readonly curve: readonly { readonly crush: number; readonly wanted: number | null }[];
  readonly missed: readonly Missed[];
  readonly strain: number;
  readonly closesAt: number;
  readonly energy: number;
  readonly lost: { readonly least: number; readonly most: number };
  readonly slenderness: number;
  readonly skinFolds: { readonly least: number; readonly most: number } | null;
  readonly endsHold: number;
  readonly air: Air | null;
}

interface Missed {
  readonly from: number;
  readonly to: number;
  readonly way: 'soft' | 'hard';
  readonly share: number;
  readonly at: number;
}

interface Air {
  readonly slow: number | null;
  readonly hit: number | null;
  readonly vented: number | 'choked' | null;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What kind of print it is: `sheet lattice, skin 1.2 mm, solid foot 4 mm`. */
export function printedBuild({ skin, foot = 0, cap = 0 }: Printed['body'], system: UnitSystem): string {
  const length = (value: number) => formatValue(value, 'length', { system });
  return [
    'sheet lattice',
    skin > 0 ? `skin ${length(skin)}` : 'open sides, no skin',
    ...(foot > 0 ? [`solid foot ${length(foot)}`] : []),
    ...(cap > 0 ? [`solid tip ${length(cap)}`] : []),
  ].join(', ');
}

/** What a printed stop says beside its curve, a sentence a line. */
export function printedTexts(stop: Printed, system: UnitSystem): readonly string[] {
  const { range, strain, closesAt, energy, lost, skinFolds, endsHold, air } = stop;
  const hasTarget = stop.curve.some(({ wanted }) => wanted !== null);
  return [
    `Walls allow densities from ${percent(range.least)} to ${percent(range.most)}.`,
    ...(hasTarget ? missedTexts(stop.missed, system) : []),
    `At the end its most strained slice is crushed by ${percent(strain)}, and closes at ${percent(closesAt)}.`,
    `Takes ${rough(energy, 'energy', system)} up to there; a stroke and back loses about ${percent(lost.least / energy)} to ${percent(lost.most / energy)} of it (loss factor of such an elastomer, assumed).`,
    ...(skinFolds === null
      ? []
      : [
          `The skin carries until it folds into rings, at a strain of about ${percent(skinFolds.least)} (a bare tube) to ${percent(skinFolds.most)} (held all over by the lattice), and no more than that force beyond.`,
        ]),
    ...(endsHold > 1.002
      ? [
          `Solid ends hold the lattice: at most ${((endsHold - 1) * 100).toFixed(1)} % stiffer; the curve counts half of it.`,
        ]
      : []),
    ...(air === null ? [] : [airText(air, system)]),
    `${stop.slenderness.toFixed(2)} times as high as wide.`,
  ];
}

function missedTexts(missed: readonly Missed[], system: UnitSystem): readonly string[] {
  const length = (value: number) => formatValue(value, 'length', { system });
  if (missed.length === 0)
    return ['The wanted curve is met, within a twentieth of its force from a tenth of the crush on.'];
  return missed.map(({ from, to, way, share, at }) =>
    Number.isFinite(share)
      ? `Not met from ${length(from)} to ${length(to)}: up to ${percent(share)} too ${way}, most at ${length(at)}.`
      : `Not met from ${length(from)} to ${length(to)}: closed, solid, from ${length(at)} on.`,
  );
}

function airText({ slow, hit, vented }: Air, system: UnitSystem): string {
  const force = (value: number | null) =>
    value === null ? 'more than any wall' : rough(value, 'force', system);
  const shut = `Air shut in by the skin would add ${force(slow)} at the end pressed slowly, ${force(hit)} in a hit`;
  if (vented === null) return `${shut}, as far as the skin is tight; there are no vents.`;
  return vented === 'choked'
    ? `${shut}; at 1 m/s the vents do not let it out.`
    : `${shut}; through the vents ${rough(vented, 'force', system)} at 1 m/s, nothing slowly.`;
}

/** A share with its sign: `+4 %`, `0 %`; `closes` where there is none. */
export const movedText = (share: number | null): string =>
  share === null ? 'closes' : `${share >= 0 ? '+' : '−'}${(100 * Math.abs(share)).toFixed(1)} %`;

type Broken = 'clearance' | 'body' | 'bracket' | 'crush';

interface ForNeed {
  readonly demands: readonly { readonly name: string; readonly speed: number }[];
  readonly room: number;
  readonly power: number;
  readonly full: number;
  readonly least: number;
  readonly most: number;
  readonly outside: readonly {
    readonly from: number;
    readonly to: number;
    readonly way: string;
    readonly share: number;
  }[];
  readonly breaks: Readonly<Record<'middle' | 'soft' | 'hard', readonly Broken[]>>;
}

/** Which curve of the band was followed, and what came of the design when it was driven. */
export function needDesignTexts(need: ForNeed, system: UnitSystem): readonly string[] {
  const { power, full, least, most, room, outside, breaks } = need;
  const force = (value: number) => rough(value, 'force', system);
  const length = (value: number) => formatValue(value, 'length', { system });
  const said = (broken: readonly Broken[]) =>
    broken.length === 0 ? 'does' : broken.map(brokenText).join(' and ');
  return [
    `Followed: ${steepnessText(power)}, ${force(full)} at the end of the room of ${length(room)}, the middle of ${force(least)} to ${force(most)} that do at this steepness; of all steepnesses this body follows it best.`,
    outside.length === 0
      ? 'The design stays inside the band of curves that do.'
      : outside
          .map(
            ({ from, to, way, share }) =>
              `From ${length(from)} to ${length(to)} it is outside the band, up to ${Number.isFinite(share) ? percent(share) : 'all of it'} too ${way}.`,
          )
          .join(' '),
    `Driven over ${need.demands.map(({ name, speed }) => `${name} at ${needle(speed, system)}`).join(', ')}: as designed it ${said(breaks.middle)}; at the soft end of its interval it ${said(breaks.soft)}; at the hard end it ${said(breaks.hard)}.`,
    'Crush counts from where the present stop touches: its tip has to stand there.',
  ];
}
