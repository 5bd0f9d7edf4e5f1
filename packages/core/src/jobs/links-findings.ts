import type { Finding } from '../finding/finding.ts';
import type { End } from '../finding/place.ts';
import { exactly, figureOver, severityOf } from '../linkage/margins.ts';
import type { Reach } from '../linkage/reach.ts';
import { lineFindings } from '../linkage/reach-findings.ts';
import { shaftFindings } from '../linkage/shaft-findings.ts';
import { shaftSpeed } from '../linkage/shaft-limits.ts';
import { droopThatFits, type ShaftTravel } from '../linkage/shaft-travel.ts';
import { posesOn, sampleRange } from '../linkage/travel-range.ts';
import type { Setup } from '../rig/setup.ts';
import { figureOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import type { EndInTrial } from './end-in-trial.ts';
import type { LinkColumn } from './link-columns.ts';
import type { EndLinksAnswer } from './links-answer.ts';

export interface FindingsAsked {
  readonly answer: EndLinksAnswer;
  /** Nominal first, then each trial that its links could reach. */
  readonly parts: readonly EndInTrial[];
  readonly columns: readonly LinkColumn[];
  readonly draws: Draws;
  readonly roadSpeed: number;
}

/** What the links of one end say: their own reach, shaft, hoses, stop on its pad. */
export function endFindings(setup: Setup, end: End, asked: FindingsAsked): readonly Finding[] {
  return [
    ...reachFindings(end, asked.answer),
    ...shaftSays(setup, end, asked),
    ...hoseSays(setup, end, asked),
    ...padSays(end, asked.columns),
  ];
}

function reachFindings(end: End, { curves: { unreachable } }: EndLinksAnswer): readonly Finding[] {
  if (!unreachable) return [];
  const { links, bump, roll, gap } = unreachable;
  return [
    {
      id: `links-range-ends.${end}`,
      code: 'links-range-ends',
      severity: 'over',
      place: end,
      value: exactly('length', gap),
      facts: {
        links: links.map((id) => id.replace('-', ' ')).join(', '),
        gap: exactly('length', gap),
        travel: exactly('length', Math.abs(bump)),
        way: bump < 0 ? 'droop' : 'bump',
        roll: exactly('angle', Math.abs(roll)),
      },
      because: links.map((id) => `${end}.links.${id}`),
      remedies: [{ code: 'free-links' }],
    },
  ];
}

/** Where a joint or a slip gives out, the droop at which it would not is worth its search. */
const ENDS_DROOP: readonly Finding['code'][] = ['shaft-slip-short', 'shaft-slip-apart', 'shaft-joint-binds'];

function shaftSays(
  setup: Setup,
  end: End,
  { answer, parts, draws, roadSpeed }: FindingsAsked,
): readonly Finding[] {
  if (!answer.shaft) return [];
  const { shaft } = answer.shaft;
  const travels = parts.flatMap((part): readonly ShaftTravel[] =>
    part.shaft?.travel ? [part.shaft.travel] : [],
  );
  const { base } = setup.ends[end];
  const ratio = base.points.axleRatio;
  // Trials that links cannot reach are few and are left out of both.
  const whole = travels.length === draws.trials + 1;
  const speeds = travels.map((_, i) => {
    const read = draws.trial(whole ? i : 0);
    return ratio ? shaftSpeed(roadSpeed, read(base.tyre.radius), read(ratio)) : Number.NaN;
  });
  const ask = (fits: number | null) =>
    shaftFindings(end, travels, {
      shaft,
      roadSpeed,
      shaftSpeeds: ratio ? speeds : null,
      droopThatFits: fits,
      because: [`${end}.shaft.pinion`, `${end}.shaft.case`, `${end}.shaft.slip`],
    });
  const first = ask(null);
  if (!first.some(({ code, severity }) => ENDS_DROOP.includes(code) && severity === 'over')) return first;
  const { geometry, range } = answer;
  const sampled = sampleRange(geometry, { ...range, lock: 0 }, posesOn(geometry), { across: 3 });
  const swing = figureOver('length', travels, (travel) => travel.swing);
  const usable = shaft.slip ? shaft.slip.usable - (swing.tolerance ?? 0) : Number.POSITIVE_INFINITY;
  return ask(droopThatFits(shaft, geometry, sampled, usable));
}

function hoseSays(setup: Setup, end: End, { answer, parts, draws }: FindingsAsked): readonly Finding[] {
  const { hose } = setup.ends[end].base.points;
  return answer.hoses.flatMap(({ side, tie }) => {
    const sampled = parts.flatMap((part, i): readonly { reach: Reach; free: number }[] => {
      const one = part.hoses.find((each) => each.hose.side === side);
      return one?.reach && (i === 0 || parts.length === draws.trials + 1)
        ? [{ reach: one.reach, free: one.hose.freeLength }]
        : [];
    });
    const found = lineFindings(
      end,
      sampled.map(({ reach }) => reach),
      {
        name: side === null ? 'brake hose' : `${side} brake hose`,
        freeLengths: sampled.map(({ free }) => free),
        diameter: hose?.diameter?.value ?? null,
        leastRadius: null,
        tie,
        because: [`${end}.hose.freeLength`, `${end}.hose.axle`, `${end}.hose.frame`],
      },
    );
    // A hose that is long enough wants no tie.
    const short = found.some(({ code }) => code === 'line-taut' || code === 'line-slack-minimum');
    return found.filter(({ code }) => code !== 'line-tie' || short);
  });
}

function padSays(end: End, columns: readonly LinkColumn[]): readonly Finding[] {
  const column = columns.find(({ of, place }) => of === 'stop-off-pad' && place === end);
  if (!column?.limits) return [];
  const { limits, values } = column;
  const room = figureOf(
    'length',
    values.map((value, i) => limits[i] - value),
  );
  const severity = severityOf(room);
  if (severity === 'fine') return [];
  const offset = figureOf('length', values);
  const limit = exactly('length', limits[0]);
  return [
    {
      id: `links-stop-off-pad.${end}`,
      code: 'links-stop-off-pad',
      severity,
      place: end,
      value: offset,
      limit,
      facts: { offset },
      because: [`${end}.mounts.stop.axle`, `${end}.mounts.stop.frame`, `${end}.mounts.stop.padSize`],
      remedies: [{ code: 'larger-pad' }],
    },
  ];
}
