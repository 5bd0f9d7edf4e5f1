import {
  type CheckResult,
  CORNERS,
  checkRig,
  PLACE_NAMES,
  problemText,
  type Rig,
  type Verdict,
} from '@lastinch/core';
import { commandLine } from '../command-line.ts';
import { wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { section } from './sections.ts';

/** The verdict on each setup of the file in a few words, and the command that shows two side by side. */
export function setupLines(rig: Rig, file: string, paper: Paper): string[] {
  const names = Object.keys(rig.setups);
  const lines = names.flatMap((setup) => {
    const checked = checkRig(rig, { setup });
    const said = checked.ok ? verdictText(checked.value) : checked.problems.map(problemText).join(' ');
    return wrap(`${setup}: ${said}`, paper, '  ');
  });
  const [first, last] = [names[0], names.at(-1)];
  if (first !== undefined && last !== undefined && first !== last) {
    // Not wrapped: it is there to be copied.
    lines.push('  Side by side:', `    ${commandLine('check', file, '--setup', last, '--against', first)}`);
  }
  return section('SETUPS IN THE FILE', lines, paper);
}

function verdictText({ travel }: CheckResult): string {
  const at = (verdict: Verdict): string =>
    CORNERS.filter((corner) => travel.corners[corner].verdict === verdict)
      .map((corner) => PLACE_NAMES[corner].toLowerCase())
      .join(', ');
  const failed = at('fail');
  const open = at('not-proven');
  if (failed === '' && open === '') return 'passes at all four corners.';
  return [failed === '' ? '' : `fails at ${failed}.`, open === '' ? '' : `Not proven at ${open}.`]
    .join(' ')
    .trim();
}
