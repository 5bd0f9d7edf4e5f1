import {
  AS_MEASURED,
  type CheckComparison,
  type CheckResult,
  checkRig,
  compareSetups,
  good,
  type Result,
  type Rig,
  unitsOfRig,
} from '@lastinch/core';
import { type ExitCode, knownSetups, readRigFile, refuse, unitsAsked } from '../asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { checkJson } from '../json/check-json.ts';
import { exitFor } from '../json/severity.ts';
import { checkPage } from '../terminal/check-page.ts';
import { paperFor } from '../terminal/paper.ts';

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
  const known = knownSetups(rig.value, [options.setup, options.against]);
  if (!known.ok) return refuse(known.problems);
  const checked = checkedWith(rig.value, options.setup ?? AS_MEASURED, options.against);
  if (!checked.ok) return refuse(checked.problems);
  const { result, comparison } = checked.value;
  const system = units.value ?? unitsOfRig(rig.value);
  if (options.json) writeJson(checkJson(rig.value, result, comparison, system));
  else {
    const paper = paperFor(process.stdout, process.env, system);
    writeLines(checkPage(rig.value, result, comparison, paper));
  }
  return exitFor(result.findings);
}

interface Checked {
  readonly result: CheckResult;
  /** Null when the setup was held against nothing. */
  readonly comparison: CheckComparison | null;
}

function checkedWith(rig: Rig, setup: string, against: string | undefined): Result<Checked> {
  if (against === undefined) {
    const alone = checkRig(rig, { setup });
    return alone.ok ? good({ result: alone.value, comparison: null }) : alone;
  }
  const both = compareSetups(rig, { setup, against });
  return both.ok ? good({ result: both.value.after, comparison: both.value }) : both;
}
