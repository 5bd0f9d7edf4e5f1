import { AS_MEASURED, type CheckResult, checkRig, good, type Result, type Rig } from '@lastinch/core';
import { type ExitCode, knownSetups, readRigFile, refuse, unitsAsked } from '../asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { checkJson } from '../json/check-json.ts';
import { exitFor } from '../json/severity.ts';
import { checkPage } from '../terminal/check-page.ts';
import { paperFor } from '../terminal/paper.ts';
import { unitsOfRig } from '../units-of-rig.ts';

export interface CheckOptions {
  readonly setup?: string;
  readonly against?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** `lastinch check FILE`: statics and travel of one setup, held against another one if asked. */
export async function check(file: string, options: CheckOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const rig = await readRigFile(file);
  if (!rig.ok) return refuse(rig.problems);
  const checked = checkBoth(rig.value, options.setup ?? AS_MEASURED, options.against);
  if (!checked.ok) return refuse(checked.problems);
  const { result, against } = checked.value;
  const system = units.value ?? unitsOfRig(rig.value);
  if (options.json) writeJson(checkJson(rig.value, result, against, system));
  else {
    const paper = paperFor(process.stdout, process.env, system);
    writeLines(checkPage(rig.value, result, against, paper));
  }
  return exitFor(result.findings);
}

export interface CheckedBoth {
  readonly result: CheckResult;
  readonly against: CheckResult | null;
}

/** Checks a setup, and the one it is held against, under the same samples. */
export function checkBoth(rig: Rig, setup: string, against: string | undefined): Result<CheckedBoth> {
  const known = knownSetups(rig, [setup, against]);
  if (!known.ok) return known;
  const result = checkRig(rig, { setup });
  if (!result.ok) return result;
  if (against === undefined) return good({ result: result.value, against: null });
  const other = checkRig(rig, { setup: against });
  return other.ok ? good({ result: result.value, against: other.value }) : other;
}
