import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import type { BracketAnswer, BracketCase, BracketsAnswer } from './bracket-answer.ts';

const exactly = (dimension: 'ratio' | 'length' | 'speed', value: number) => ({
  dimension,
  value,
  tolerance: 0,
});

/** Whoever welds or bolts a bracket on has it looked at. */
const INSPECT: Remedy = { code: 'inspect-bracket' };
/** A part that lasts fewer passes than this is not a part for trips. */
const FEW_PASSES = 1000;

/** What the brackets say, each by its weakest part. */
export function bracketFindings({ brackets }: Omit<BracketsAnswer, 'findings'>): readonly Finding[] {
  const found = brackets.flatMap((one) => [...strength(one), ...metal(one), ...cracks(one), notChecked(one)]);
  const order: readonly Severity[] = ['over', 'unproven', 'note', 'fine'];
  return [...found].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
}

const about = (one: BracketAnswer) => ({ place: one.end, because: [`${one.end}.bracket.${one.mount}`] });

const worst = ({ lines }: BracketCase) => lines[0];

function strength(one: BracketAnswer): readonly Finding[] {
  const line = worst(one.ride);
  if (line === undefined) return [];
  const { factor, needs, verdict, part } = line;
  const code = verdict === 'holds' ? 'bracket-holds' : verdict === 'open' ? 'bracket-open' : 'bracket-short';
  const remedies: Remedy[] = one.changes
    .filter((change) => change.factor >= change.needs)
    .map(({ change, step }) => ({
      code: 'build-bracket',
      target: change,
      amount: exactly('length', step),
    }));
  return [
    {
      id: `${code}.${one.end}.${one.mount}`,
      code,
      severity: verdict === 'holds' ? 'fine' : verdict === 'open' ? 'unproven' : 'over',
      ...about(one),
      value: factor,
      limit: exactly('ratio', needs),
      facts: {
        mount: one.mount,
        part,
        factor,
        force: one.ride.force,
        demand: one.ride.hit.demand,
        bends: factor.value < 1 ? 'yes' : 'no',
      },
      remedies: verdict === 'holds' ? [] : [...remedies, INSPECT],
    },
  ];
}

function metal(one: BracketAnswer): readonly Finding[] {
  if (one.metal === null) return [];
  const line = worst(one.metal);
  if (line === undefined) return [];
  const isAsked = one.metal.speedShare === 1;
  const isShort = line.factor.value < line.needs;
  return [
    {
      id: `bracket-metal.${one.end}.${one.mount}`,
      code: 'bracket-metal',
      severity: isShort ? (isAsked ? 'over' : 'note') : isAsked ? 'note' : 'fine',
      ...about(one),
      value: line.factor,
      limit: exactly('ratio', line.needs),
      facts: {
        mount: one.mount,
        part: line.part,
        factor: line.factor,
        force: one.metal.force,
        demand: one.metal.hit.demand,
        share: exactly('ratio', one.metal.speedShare),
        asked: isAsked ? 'yes' : 'no',
        bends: line.factor.value < 1 ? 'yes' : 'no',
      },
      remedies: isShort ? [{ code: 'softer-stop' }, { code: 'slow-down' }] : [],
    },
  ];
}

function cracks(one: BracketAnswer): readonly Finding[] {
  return one.life.flatMap(({ demand, part, detail, passes }): readonly Finding[] => {
    if (passes.least === null || passes.least >= FEW_PASSES) return [];
    return [
      {
        id: `bracket-cracks.${one.end}.${one.mount}.${demand}`,
        code: 'bracket-cracks',
        severity: 'unproven',
        ...about(one),
        facts: {
          mount: one.mount,
          part,
          demand,
          detail,
          fewest: twoDigits(passes.least),
          most: passes.most === null ? 'more than can be told' : twoDigits(passes.most),
        },
        remedies: [INSPECT],
      },
    ];
  });
}

const twoDigits = (passes: number): string => String(Number(passes.toPrecision(2)));

const notChecked = (one: BracketAnswer): Finding => ({
  id: `bracket-not-checked.${one.end}.${one.mount}`,
  code: 'bracket-not-checked',
  severity: 'note',
  ...about(one),
  facts: { mount: one.mount, what: one.notChecked.join(',') },
  remedies: [],
});
