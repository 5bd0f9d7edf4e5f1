import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Result, resolveSetup, travelOf } from '@lastinch/core';
import { readRig } from '@lastinch/core/rigfile';
import { columnScene, svgOf } from '@lastinch/picture';

const RIG = 'examples/ochre/ochre.rig.yaml';
const FAILS = 'soft-stop-bolted-in';
const WORKS = 'soft-stop-seat-down';

/** The picture of the README: travel columns of the demo rig, the proposal that fails beside the one that works. */
export function demoPicture(root: string): string {
  const rig = must(readRig(readFileSync(join(root, RIG), 'utf8'), { file: RIG }));
  const travel = (setup: string) => travelOf(must(resolveSetup(rig, setup)));
  const scene = columnScene(travel(WORKS), { width: 1120, system: 'shop', against: travel(FAILS) });
  return `${svgOf(scene, {
    title: `Travel columns of the demo rig: ${FAILS} beside ${WORKS}`,
    description:
      'Four corners, two columns each, to scale from metal contact down to the end of droop: free bump travel, crush of the stop, what is left before metal, and the band of the tolerances.',
    idPrefix: 'demo',
  })}\n`;
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`The demo rig cannot be drawn: ${JSON.stringify(result.problems)}`);
  return result.value;
}
