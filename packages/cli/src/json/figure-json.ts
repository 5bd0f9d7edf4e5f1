import {
  assumptionText,
  type Figure,
  type Finding,
  findingText,
  type Rig,
  remedyText,
  type UnitSystem,
} from '@lastinch/core';

/** A figure in a file: SI value and 95 % half-width, null when that is unknown. */
export interface FigureJson {
  readonly value: number;
  readonly tolerance: number | null;
}

export const figureJson = ({ value, tolerance }: Figure): FigureJson => ({ value, tolerance });

/** A finding as data, with the sentence that the terminal would show. */
export const findingJson = (finding: Finding, system: UnitSystem) => ({
  ...finding,
  text: findingText(finding, { system }),
  remedies: finding.remedies.map((remedy) => ({ ...remedy, text: remedyText(remedy, { system }) })),
});

/** What was filled in by the program, why it may be wrong, and how to measure it. */
export const assumptionsJson = (rig: Rig) =>
  rig.assumptions.map((assumption) => ({
    key: assumption.key,
    of: assumption.what,
    rule: assumption.rule,
    ...assumptionText(assumption),
  }));

/** JSON has no infinity and no NaN: null. */
export const finite = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;
