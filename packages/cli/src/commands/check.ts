import {
  AS_MEASURED,
  type CheckComparison,
  type CheckResult,
  checkRig,
  compareSetups,
  good,
  type Result,
  type Rig,
} from '@lastinch/core';
import { type ExitCode, refuse, rigAsked } from '../asked.ts';
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
  const asked = await rigAsked(file, { units: options.units }, [options.setup, options.against]);
  if (!asked.ok) return refuse(asked.problems);
  const { rig, system } = asked.value;
  const checked = checkedWith(rig, options.setup ?? AS_MEASURED, options.against);
  if (!checked.ok) return refuse(checked.problems);
  const { result, comparison } = checked.value;
  if (options.json) writeJson(checkJson(rig, result, comparison, system));
  else {
    const paper = paperFor(process.stdout, process.env, system);
    writeLines(checkPage(rig, result, comparison, paper));
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
