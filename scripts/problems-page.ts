import { PROBLEM_CODES, problemText } from '@lastinch/core';

const FAMILIES: Readonly<Record<string, string>> = {
  quantity: 'A typed value',
  file: 'The file',
  rig: 'What stands in the rig file',
  links: 'Links that cannot stand so',
  ask: 'What was asked for',
  choose: 'Choosing',
  stop: 'A stop',
  log: 'A log of a drive',
  bracket: 'Brackets',
  case: 'A ride case file',
};

/** `docs/problems.md`: every message about input, as the phrase book says it. */
export function problemsPage(): string {
  const sections = Object.entries(FAMILIES).map(([family, heading]) => {
    const codes = PROBLEM_CODES.filter((code) => code.startsWith(`${family}-`));
    const rows = codes.map((code) => {
      const said = problemText({ code, where: {}, found: 'FOUND', accepted: 'ACCEPTED' });
      return `| \`${code}\` | ${said.replaceAll('|', '\\|')} |`;
    });
    return [`## ${heading}`, '', '| code | message |', '|---|---|', ...rows, ''].join('\n');
  });
  const listed = PROBLEM_CODES.filter(
    (code) => !Object.keys(FAMILIES).some((family) => code.startsWith(`${family}-`)),
  );
  if (listed.length > 0) throw new Error(`no heading for ${listed.join(', ')}`);
  return `# Problems

Made from the codes and the phrase book of the core by \`npm run generate\`; do not edit.

A problem is something wrong with what was given to the program. On the command line each is one line on standard
error and the program ends with 2; in the workbench it stands beside the field. In front of the message stands where
it is, as far as that is known: \`my.rig.yaml:31: front.stop.gap: …\` is file, line and key. \`FOUND\` below is what
stands there now, \`ACCEPTED\` what would do. No file is ever changed because of a problem.

What the model says about a rig is not a problem but a *finding*: see [the travel column](theory/travel-column.md).

${sections.join('\n')}`;
}
