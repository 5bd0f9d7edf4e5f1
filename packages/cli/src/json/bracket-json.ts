import type { Rig, UnitSystem } from '@lastinch/core';
import type { BracketCase, BracketsAnswer } from '@lastinch/core/bracket';
import { assumptionsJson, figureJson, findingJson, finite } from './figure-json.ts';

/** The answer of `bracket --json`: `lastinch/bracket/1`. SI numbers. */
export function bracketJson(rig: Rig, answer: BracketsAnswer, system: UnitSystem) {
  return {
    schema: 'lastinch/bracket/1',
    units: 'SI',
    rig: answer.rig,
    setup: answer.setup,
    demands: answer.demands,
    force: answer.force,
    wanted: answer.wanted,
    brackets: answer.brackets.map(({ ride, metal, ...rest }) => ({
      ...rest,
      ride: caseJson(ride),
      metal: metal && { ...caseJson(metal), speedShare: metal.speedShare },
    })),
    findings: answer.findings.map((finding) => findingJson(finding, system)),
    assumptions: assumptionsJson(rig),
  };
}

const caseJson = ({ hit, force, swing, load, lines }: BracketCase) => ({
  demand: hit.demand,
  lasted: finite(hit.lasted),
  force: figureJson(force),
  swing,
  load,
  lines: lines.map(({ factor, ...line }) => ({ ...line, factor: figureJson(factor) })),
});
