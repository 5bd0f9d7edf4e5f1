import { readChecks } from './check-file.ts';
import type { Entry, Outcome } from './compare.ts';
import { evaluate } from './evaluate.ts';

const TOPICS: Readonly<Record<string, string>> = {
  quantities: 'Units and typed quantities',
  interpolation: 'Force tables between their points',
  uncertainty: 'Uncertainty and probability',
  statics: 'Weights, springs and frequencies',
  course: 'The ground',
  ride: 'The ride',
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
    '- **Used**: how much of the tolerance that entry uses. Over 100 % is a failure.',
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
  return `${lines.join('\n')}\n`;
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

function row({ check, worst, ok }: Outcome): string {
  const { tolerance, source } = check;
  const size =
    tolerance.kind === 'relative' ? `${short(tolerance.value)} of it` : `± ${short(tolerance.value)}`;
  return `| ${[
    `[${check.title}](../validation/checks/${check.topic}/${check.id}.json)${pathNote(worst)}`,
    check.unit,
    digits(worst.expected),
    digits(worst.ours),
    size,
    ok ? share(worst.used) : `**${share(worst.used)}: outside**`,
    check.provenance,
    `${source.work}, ${source.edition}, ${source.place}`,
  ]
    .map((cell) => cell.replaceAll('|', '\\|'))
    .join(' | ')} |`;
}

const pathNote = ({ path }: Entry): string => (path === '' ? '' : ` (${path})`);

/** Six digits that count: enough to see agreement, few enough to be the same on every machine. */
const digits = (value: number): string => String(Number(value.toPrecision(6)));
const short = (value: number): string => String(Number(value.toPrecision(2)));

/** Share of the tolerance in whole percent; what rounding alone makes is `< 1 %`. */
function share(used: number): string {
  const percent = Math.ceil(used * 100);
  return percent <= 1 ? '< 1 %' : `${percent} %`;
}
