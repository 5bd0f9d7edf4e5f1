import { type ExitCode, refuse } from '../asked.ts';
import { type DesignOptions, designAsked, designed } from '../design-asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { stopDesignJson } from '../json/stop-design-json.ts';
import { materialName } from '../printed-asked.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopDesignPage } from '../terminal/stop-design-page.ts';

export interface StopDesignOptions extends DesignOptions {
  readonly json?: boolean;
}

/** `lastinch stop design`: the density along the height of a printed stop, or the curve of given densities. */
export async function stopDesigned(options: StopDesignOptions): Promise<ExitCode> {
  const asked = await designAsked(options);
  if (!asked.ok) return refuse(asked.problems);
  const answer = await designed(asked.value, options);
  if (!answer.ok) return refuse(answer.problems);
  const { system } = asked.value;
  const material = materialName(asked.value.material);
  const { design, need } = answer.value;
  if (options.json) writeJson(stopDesignJson({ material, design, need }, system));
  else writeLines(stopDesignPage({ material, design, need }, paperFor(process.stdout, process.env, system)));
  return need !== null && need.breaks.middle.length > 0 ? 1 : 0;
}
