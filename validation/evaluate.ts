import type { Check } from './check-file.ts';
import { compare, type Outcome } from './compare.ts';
import type { Runner } from './runner.ts';
import { bracket } from './runners/bracket.ts';
import { choose } from './runners/choose.ts';
import { course } from './runners/course.ts';
import { elements } from './runners/elements.ts';
import { exposure } from './runners/exposure.ts';
import { flex } from './runners/flex.ts';
import { hoses } from './runners/hoses.ts';
import { interpolation } from './runners/interpolation.ts';
import { links } from './runners/links.ts';
import { printedStops } from './runners/printed-stops.ts';
import { quantities } from './runners/quantities.ts';
import { ride } from './runners/ride.ts';
import { roads } from './runners/roads.ts';
import { shaft } from './runners/shaft.ts';
import { solids } from './runners/solids.ts';
import { stability } from './runners/stability.ts';
import { statics } from './runners/statics.ts';
import { stops } from './runners/stops.ts';
import { uncertainty } from './runners/uncertainty.ts';

/** One runner a topic; the key is the folder's name under `checks/`. */
const RUNNERS: Readonly<Record<string, Runner>> = {
  bracket,
  choose,
  course,
  elements,
  exposure,
  flex,
  hoses,
  interpolation,
  links,
  quantities,
  ride,
  roads,
  shaft,
  solids,
  stability,
  statics,
  stops,
  'printed-stops': printedStops,
  uncertainty,
};

/** Runs one check: ours against theirs. Throws when no runner knows it: it is our own mistake. */
export function evaluate(check: Check): Outcome {
  const evaluator = RUNNERS[check.topic]?.[check.evaluator];
  if (evaluator === undefined)
    throw new Error(`No evaluator ${check.evaluator} in validation/runners/${check.topic}.ts`);
  return compare(check, evaluator(check.inputs));
}
