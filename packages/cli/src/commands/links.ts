import { AS_MEASURED, linksRig, unitsOfRig } from '@lastinch/core';
import { type ExitCode, knownSetups, readRigFile, refuse, speedAsked, unitsAsked } from '../asked.ts';
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
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const speed = speedAsked(options.speed);
  if (!speed.ok) return refuse(speed.problems);
  const rig = await readRigFile(file);
  if (!rig.ok) return refuse(rig.problems);
  const known = knownSetups(rig.value, [options.setup, options.against]);
  if (!known.ok) return refuse(known.problems);
  const answer = linksRig(rig.value, {
    setup: options.setup ?? AS_MEASURED,
    ...(options.against !== undefined && { against: options.against }),
    ...(speed.value !== null && { roadSpeed: speed.value }),
  });
  if (!answer.ok) return refuse(answer.problems);
  const system = units.value ?? unitsOfRig(rig.value);
  if (options.json) writeJson(linksJson(rig.value, answer.value, system));
  else writeLines(linksPage(rig.value, answer.value, paperFor(process.stdout, process.env, system)));
  return exitFor(answer.value.findings);
}
