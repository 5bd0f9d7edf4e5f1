import { AS_MEASURED, linksRig } from '@lastinch/core';
import { type ExitCode, refuse, rigAsked } from '../asked.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { linksJson } from '../json/links-json.ts';
import { exitFor } from '../json/severity.ts';
import { linksPage } from '../terminal/links-page.ts';
import { paperFor } from '../terminal/paper.ts';

export interface LinksOptions {
  readonly setup?: string;
  readonly against?: string;
  readonly speed?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** `lastinch links FILE`: what a setup does to links and to everything that moves with them. */
export async function links(file: string, options: LinksOptions): Promise<ExitCode> {
  const asked = await rigAsked(file, options, [options.setup, options.against]);
  if (!asked.ok) return refuse(asked.problems);
  const { rig, system, speed } = asked.value;
  const answer = linksRig(rig, {
    setup: options.setup ?? AS_MEASURED,
    ...(options.against !== undefined && { against: options.against }),
    ...(speed !== null && { roadSpeed: speed }),
  });
  if (!answer.ok) return refuse(answer.problems);
  if (options.json) writeJson(linksJson(rig, answer.value, system));
  else writeLines(linksPage(rig, answer.value, paperFor(process.stdout, process.env, system)));
  return exitFor(answer.value.findings);
}
