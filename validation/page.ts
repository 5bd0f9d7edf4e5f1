import { readChecks } from './check-file.ts';
import type { Entry, Outcome } from './compare.ts';
import { evaluate } from './evaluate.ts';
import { usedBy, wholeRides, worstLines } from './whole-rides.ts';

const TOPICS: Readonly<Record<string, string>> = {
  quantities: 'Units and typed quantities',
  interpolation: 'Force tables between their points',
  uncertainty: 'Uncertainty and probability',
  statics: 'Weights, springs and frequencies',
  links: 'Poses of linked axles and what follows from them',
  flex: 'Flex of axles and the ramp',
  stability: 'Stability and road manners',
  elements: 'Force laws of the parts',
  solids: 'Solids: sheet lattices and printed stops',
  stops: 'Stops: rubber, cells, graded columns',
  'printed-stops': 'Printed stops and foam: skin, held ends, air, whole designs',
  bracket: 'Brackets and joints',
  shaft: 'Driveshafts',
  hoses: 'Hoses',
  course: 'The ground',
  roads: 'Random roads and the roughness index',
  ride: 'The ride',
  exposure: 'What the seat takes',
  choose: 'Fronts with known answers',
};

/**
 * The page `docs/validation.md`: every outside check, ours against theirs, worked out when the page is made.
 * Numbers are rounded so that the page is the same on every machine.
 */
export function validationPage(): string {
  const outcomes = readChecks().map(evaluate);
  const topics = Object.keys(TOPICS).filter((topic) => outcomes.some(({ check }) => check.topic === topic));
  const failed = outcomes.filter(({ ok }) => !ok);
  const lines = [
    '<!-- Made by `npm run generate` from validation/. Do not edit by hand. -->',
    '',
    '# Validation: ours against theirs',
    '',
    'Every computation is held against something that we did not write: a standard, a worked example of a',
    'textbook, a closed form, or a general library in another language. Each line below is one file in',
    '[`validation/checks/`](../validation/checks), run by `npm test`; this page is worked out from the same files.',
    '',
    '- **Theirs, ours**: the one entry of the check that uses most of its tolerance.',
    '- **Used**: how much of the tolerance that entry uses, rounded up. Over 100 % is a failure.',
    '- **Known by**: *read* in the source (or in the copy named in the file), *computed* by a script in',
    '  [`validation/make/`](../validation/make), or *from memory*: then nobody here has opened the source.',
    '',
    'What stands behind each source is in [`validation/sources.md`](../validation/sources.md).',
    '',
    failed.length === 0
      ? `**${outcomes.length} checks, ${count(outcomes)} numbers, all within their tolerance.**`
      : `**${failed.length} of ${outcomes.length} checks are outside their tolerance.**`,
    '',
    ...summary(topics, outcomes),
  ];
  for (const topic of topics) {
    lines.push('', `## ${TOPICS[topic]}`, '', HEADER, RULE);
    for (const outcome of outcomes) if (outcome.check.topic === topic) lines.push(row(outcome));
  }
  lines.push(...rides());
  return `${lines.join('\n')}\n`;
}

/** Whole rides against two other solvers: for each quantity the corner that uses most of its tolerance. */
function rides(): string[] {
  const lines = [
    '',
    '## Whole rides',
    '',
    'Rides with everything that switches (stop, metal, droop limit, coil that comes loose, tyre in the air) against',
    'solutions made outside this house by two other solvers that agree with each other: fixed-step RK4 at 2 µs and',
    'CVODE Adams at rtol 1e-11. Those whose name begins with `own` were solved by SciPy from the equations written again',
    '([`ride_cases.py`](../validation/make/ride_cases.py)), which gives the peaks of the others too, to 2·10⁻⁵ or better.',
    'The vehicles are invented. `npm run -s case -- validation/ride-cases/*.json` prints every number. Peaks below 1 mm or',
    '100 N are not compared, as the format says.',
    '',
    '| ride | quantity | theirs | ours | tolerance | used |',
    '|---|---|---|---|---|---|',
  ];
  for (const ride of wholeRides())
    for (const line of worstLines(ride)) {
      const { kind, value } = line.allowed;
      const size = kind === 'relative' ? `${short(value)} of it` : `± ${short(value)}`;
      const used = line.ok ? share(usedBy(line)) : `**${share(usedBy(line))}: outside**`;
      const name = `[${ride.name}](../validation/ride-cases/${ride.name}.json)`;
      lines.push(
        `| ${[name, line.quantity, digits(line.theirs), digits(line.ours), size, used].join(' | ')} |`,
      );
    }
  return lines;
}

const HEADER = '| check | unit | theirs | ours | tolerance | used | known by | source |';
const RULE = '|---|---|---|---|---|---|---|---|';

function summary(topics: readonly string[], outcomes: readonly Outcome[]): string[] {
  const lines = ['| topic | checks | numbers | most of a tolerance used |', '|---|---|---|---|'];
  for (const topic of topics) {
    const here = outcomes.filter(({ check }) => check.topic === topic);
    const worst = Math.max(...here.map((outcome) => outcome.worst.used));
    lines.push(`| ${TOPICS[topic]} | ${here.length} | ${count(here)} | ${share(worst)} |`);
  }
  return lines;
}

const count = (outcomes: readonly Outcome[]): number =>
  outcomes.reduce((sum, { entries }) => sum + entries.length, 0);

/** The entry to show: the one nearest to its limit, or the largest where rounding alone tells them apart. */
function shown({ worst, entries }: Outcome): Entry {
  if (worst.used > 0.01) return worst;
  return entries.reduce((a, b) => (Math.abs(b.expected) > Math.abs(a.expected) ? b : a));
}

function row(outcome: Outcome): string {
  const { check, worst, ok } = outcome;
  const { tolerance, source } = check;
  const entry = shown(outcome);
  const size =
    tolerance.kind === 'relative' ? `${short(tolerance.value)} of it` : `± ${short(tolerance.value)}`;
  return `| ${[
    `[${check.title}](../validation/checks/${check.topic}/${check.id}.json)${pathNote(entry)}`,
    check.unit,
    digits(entry.expected),
    digits(entry.ours),
    size,
    ok ? share(worst.used) : `**${share(worst.used)}: outside**`,
    check.provenance,
    `${source.work}, ${source.edition}, ${source.place}`,
  ]
    .map((cell) => cell.replaceAll('|', '\\|'))
    .join(' | ')} |`;
}

const pathNote = ({ path }: Entry): string => (path === '' ? '' : ` (${path})`);

/** Five digits that count: enough to see agreement, few enough to be the same on every machine. */
const digits = (value: number): string => String(Number(value.toPrecision(5)));
const short = (value: number): string => String(Number(value.toPrecision(2)));

/** Share of the tolerance, rounded up to a step, so that the last bits of a machine do not show. */
function share(used: number): string {
  const step = [0.01, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.75, 1].find((each) => used <= each);
  return step === undefined ? `${(100 * used).toPrecision(3)} %` : `≤ ${100 * step} %`;
}
