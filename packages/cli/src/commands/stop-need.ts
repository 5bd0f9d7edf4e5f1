import { STOP_TRIALS, type StopNeed, stopNeed } from '@lastinch/core/stops';
import { type ExitCode, refuse } from '../asked.ts';
import { type BandOptions, bandAsked, bandProblems } from '../band-asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { stopNeedJson } from '../json/stop-need-json.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopNeedPage } from '../terminal/stop-need-page.ts';

export interface StopNeedOptions extends BandOptions {
  readonly json?: boolean;
}

const SEED = 1;

/** `lastinch stop need FILE`: the curve that an end needs, and what each stop of the rig does there. */
export async function stopNeeded(file: string, options: StopNeedOptions): Promise<ExitCode> {
  const asked = await bandAsked(file, options);
  if (!asked.ok) return refuse(asked.problems);
  const { rig, system, setup, end, demands } = asked.value;
  const progress = progressLine(process.stderr);
  const answer = stopNeed({ rig, setup, end, demands, trials: STOP_TRIALS, seed: SEED }, (share) =>
    progress.show('driving stops', share),
  );
  progress.clear();
  if (!answer.ok) return refuse(bandProblems(answer.problems));
  if (options.json) writeJson(stopNeedJson(rig, answer.value, system));
  else writeLines(stopNeedPage(answer.value, paperFor(process.stdout, process.env, system)));
  return presentFails(answer.value) ? 1 : 0;
}

/** Whether the stop that is on the end breaks a limit of the owner. */
const presentFails = ({ candidates }: StopNeed): boolean =>
  candidates.some((one) => 'verdict' in one && one.isInSetup && one.broken.length > 0);
