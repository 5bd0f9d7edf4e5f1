import type { Figure } from '../finding/figure.ts';
import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import { ENDS, type End } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { exact, shareOf } from '../stance/columns.ts';
import { figureOfLine, freeBumpAt, type LineOptions, type SampledLine, type SampledLines } from './lines.ts';
import type { StabilityLineId } from './result.ts';

/** Below one a rig tips on ground on which it would else slide. */
const TIPS_FIRST = 1;
/** Share of load transfer that the rear may have over its share of the weight before it is named (from memory). */
const REAR_HEAVY = 0.05;
/** Sinking that somebody at the wheel would notice [m]: common practice, no source. */
const NOTICED = 0.008;

/** What stability and manners have to say, in words of data. */
export function stabilityFindings(
  setup: Setup,
  sampled: SampledLines,
  options: LineOptions,
): readonly Finding[] {
  const line = (id: StabilityLineId, place: SampledLine['place'] = 'rig', of = '') =>
    sampled.lines.find((each) => each.id === id && each.place === place && each.of === of);
  const figure = (id: StabilityLineId, place: SampledLine['place'] = 'rig', of = ''): Figure | null => {
    const found = line(id, place, of);
    return found ? figureOfLine(found) : null;
  };
  return [
    ...factorFinding(setup, line('static-stability-factor'), figure('cg-height')),
    ...slopeFinding(setup, sampled, figure, options),
    ...rearHeavyFinding(setup, line('load-transfer-share', 'rear'), figure('roll-gradient')),
    ...pitchFinding(line('flat-ride-ratio'), figure, options.roadSpeed),
    ...ENDS.flatMap((end) => packFindings(setup, end, figure, options)),
  ];
}

type FigureOf = (id: StabilityLineId, place?: SampledLine['place'], of?: string) => Figure | null;

function factorFinding(
  setup: Setup,
  line: SampledLine | undefined,
  height: Figure | null,
): readonly Finding[] {
  const factor = line && figureOfLine(line);
  if (!line || !factor || !height) return [];
  const chance = shareOf(line.column.length - 1, (i) => line.column[i] < TIPS_FIRST);
  const half = factor.tolerance ?? Number.POSITIVE_INFINITY;
  const severity: Severity =
    factor.value + half < TIPS_FIRST ? 'over' : factor.value - half < TIPS_FIRST ? 'unproven' : 'fine';
  const { cgHeight, cgLift } = setup.rig;
  const weighed = cgLift !== null || cgHeight.origin === 'measured';
  const remedies: Remedy[] = severity === 'fine' ? [] : [{ code: 'load-low' }];
  if (!weighed && severity !== 'fine') remedies.unshift({ code: 'raise-one-axle' });
  return [
    {
      id: 'stability-factor.rig',
      code: 'stability-factor',
      severity,
      place: 'rig',
      value: factor,
      limit: exact('ratio', TIPS_FIRST),
      likelihood: chance,
      facts: { factor, height, verdict: severity },
      because: [cgHeight.key, setup.ends.front.base.track.key, setup.ends.rear.base.track.key],
      remedies,
    },
  ];
}

function slopeFinding(
  setup: Setup,
  { lowerSide }: SampledLines,
  figure: FigureOf,
  { rollCentres }: LineOptions,
): readonly Finding[] {
  const [tips, firstLift, rigid, lean] = (
    ['slope-tips', 'slope-first-lift', 'slope-rigid', 'slope-lean'] as const
  ).map((id) => figure(id));
  if (!tips || !firstLift || !rigid || !lean) return [];
  const assumed = ENDS.filter((end) => rollCentres[end].origin === 'assumed');
  return [
    {
      id: 'stability-side-slope.rig',
      code: 'stability-side-slope',
      severity: 'note',
      place: 'rig',
      value: tips,
      facts: { tips, firstLift, rigid, lean, lower: lowerSide, assumed: assumed.join(' and ') || 'none' },
      because: [setup.rig.cgHeight.key, ...ENDS.map((end) => rollCentres[end].key)],
      remedies: [],
    },
  ];
}

/** The axle that takes more of the load transfer than of the weight is the first to run out of grip. */
function rearHeavyFinding(
  setup: Setup,
  line: SampledLine | undefined,
  gradient: Figure | null,
): readonly Finding[] {
  const transfer = line && figureOfLine(line);
  if (!transfer || !gradient) return [];
  const { cornerMass } = setup.rig;
  const rear = cornerMass.rearLeft.value + cornerMass.rearRight.value;
  const weight = rear / (rear + cornerMass.frontLeft.value + cornerMass.frontRight.value);
  if (transfer.value - (transfer.tolerance ?? 0) <= weight + REAR_HEAVY) return [];
  const { base, antiRollBar } = setup.ends.front;
  const remedies: Remedy[] =
    base.antiRollBar && !antiRollBar ? [{ code: 'connect-bar', target: 'front' }] : [];
  return [
    {
      id: 'stability-rear-heavy.rig',
      code: 'stability-rear-heavy',
      severity: 'note',
      place: 'rig',
      value: transfer,
      facts: { transfer, weight: exact('ratio', weight), gradient },
      because: [setup.ends.rear.spring.rate.key, setup.ends.front.spring.rate.key],
      remedies,
    },
  ];
}

function pitchFinding(line: SampledLine | undefined, figure: FigureOf, speed: number): readonly Finding[] {
  const ratio = line && figureOfLine(line);
  const [front, rear, wanted] = [
    figure('ride-frequency', 'front'),
    figure('ride-frequency', 'rear'),
    figure('flat-ride-wanted'),
  ];
  if (!ratio || !front || !rear || ratio.value + (ratio.tolerance ?? 0) >= 1) return [];
  return [
    {
      id: 'stability-pitches.rig',
      code: 'stability-pitches',
      severity: 'note',
      place: 'rig',
      value: ratio,
      limit: exact('ratio', 1),
      facts: { front, rear, ...(wanted && { wanted }), speed: exact('speed', speed) },
      because: ['rear.spring.rate', 'front.spring.rate'],
      remedies: [],
    },
  ];
}

function packFindings(setup: Setup, end: End, figure: FigureOf, options: LineOptions): readonly Finding[] {
  return options.washboards.flatMap((washboard): readonly Finding[] => {
    const { name, spacing, height, speed } = washboard;
    const [sinks, swing] = [figure('washboard-sinks', end, name), figure('washboard-swing', end, name)];
    if (!sinks || !swing) return [];
    const freeBump = freeBumpAt(setup, end, options.rollCentres);
    const touches = sinks.value + swing.value >= freeBump;
    if (sinks.value < NOTICED && !touches) return [];
    return [
      {
        id: `stability-packs-down.${end}${name && `.${name}`}`,
        code: 'stability-packs-down',
        severity: 'note',
        place: end,
        value: sinks,
        facts: {
          sinks,
          swing,
          freeBump: exact('length', freeBump),
          left: exact('length', Math.max(0, freeBump - sinks.value)),
          spacing: exact('length', spacing),
          height: exact('length', height),
          speed: exact('speed', speed),
          stop: touches ? 'touches' : 'clear',
        },
        because: [setup.ends[end].spring.rate.key, setup.ends[end].base.shock.ratio.key],
        remedies: [{ code: 'softer-rebound-damping', target: end }],
      },
    ];
  });
}
