import type { ProblemCode } from '../finding/codes.ts';
import type { Problem, Where } from '../finding/problem.ts';

/**
 * One line for a problem: where, what stands there, what is accepted: `ochre.rig.yaml:31: front.stop.gap: …`.
 *
 * @invariant one line, ends with a full stop, whatever was typed
 */
export function problemText(problem: Problem): string {
  const said = PHRASES[problem.code](quoted(problem.found), problem.accepted);
  return `${placeText(problem.where)}${said}`.replace(/\s+/g, ' ').trim();
}

/** `file:line: key: `, as far as it is known. */
function placeText({ file, line, key }: Where): string {
  const fileAndLine = [file, file !== undefined || line === undefined ? line : `line ${line}`]
    .filter((part) => part !== undefined && part !== '')
    .join(':');
  return [fileAndLine, key]
    .filter((part) => part !== undefined && part !== '')
    .map((part) => `${part}: `)
    .join('');
}

const quoted = (found: string): string => (found === '' ? 'nothing' : `“${found}”`);

type Phrase = (found: string, accepted: string) => string;

const PHRASES: Readonly<Record<ProblemCode, Phrase>> = {
  'quantity-empty': (_, accepted) => `a value is missing. Accepted: ${accepted}.`,
  'quantity-not-understood': (found, accepted) => `${found} was not understood. Accepted: ${accepted}.`,
  'quantity-unit-missing': (found, accepted) => `${found} has no unit. Accepted: ${accepted}.`,
  'quantity-unit-unknown': (found, accepted) =>
    `${found} has a unit that is not known. Accepted: ${accepted}.`,
  'quantity-unit-wrong-kind': (found, accepted) =>
    `${found} has a unit of another kind of quantity. Accepted: ${accepted}.`,
  'quantity-tolerance-crossed': (found, accepted) =>
    `${found} has a tolerance that cannot be. Accepted: ${accepted}.`,
  'quantity-out-of-range': (found, accepted) => `${found} is out of range. Accepted: ${accepted}.`,
  'quantity-too-long': (found, accepted) => `${found} is too long for a value. Accepted: ${accepted}.`,

  'file-not-found': (found, accepted) => `there is no file ${found}. Accepted: ${accepted}.`,
  'file-is-folder': (found, accepted) => `${found} is a folder. Accepted: ${accepted}.`,
  'file-no-typesetter': (found, accepted) => `cannot make ${found}. Accepted: ${accepted}.`,
  'file-no-permission': (found, accepted) => `no permission for ${found}. Accepted: ${accepted}.`,
  'file-not-text': (found, accepted) => `this is not a text file: ${found}. Accepted: ${accepted}.`,
  'file-too-large': (found, accepted) => `this file is too large: ${found}. Accepted: ${accepted}.`,
  'file-not-yaml': (found, accepted) => `this cannot be read as YAML: ${found}. Accepted: ${accepted}.`,
  'file-duplicate-key': (found, accepted) => `the key stands twice: ${found}. Accepted: ${accepted}.`,
  'file-alias-refused': (found, accepted) =>
    `anchors and aliases are not read: ${found}. Accepted: ${accepted}.`,
  'file-exists': (found, accepted) => `${found} is already there and was not touched. Accepted: ${accepted}.`,
  'file-more-problems': (found, accepted) => `and ${found} problems. Put right first: ${accepted}.`,

  'rig-key-missing': (_, accepted) => `this key is missing. Accepted: ${accepted}.`,
  'rig-key-unknown': (found, accepted) => `${found} is not a key here. Known, nearest first: ${accepted}.`,
  'rig-wrong-shape': (found, accepted) => `${found} does not fit here. Accepted: ${accepted}.`,
  'rig-schema-version': (found, accepted) =>
    `the version of the file should stand here, found ${found}. Accepted: ${accepted}.`,
  'rig-schema-from-the-future': (found, accepted) =>
    `the file is of version ${found}, written by a newer program; this one leaves it untouched. Accepted: ${accepted}.`,
  'rig-negative': (found, accepted) => `${found} cannot be. Accepted: ${accepted}.`,
  'rig-ratio-zero': (found, accepted) =>
    `a travel ratio of ${found} would mean that it never moves. Accepted: ${accepted}.`,
  'rig-table-not-rising': (found, accepted) => `the table does not rise at ${found}. Accepted: ${accepted}.`,
  'rig-table-too-short': (found, accepted) =>
    `the table is too short, it has ${found}. Accepted: ${accepted}.`,
  'rig-table-start': (found, accepted) => `the table begins with ${found}. Accepted: ${accepted}.`,
  'rig-unknown-name': (found, accepted) => `${found} is not a name on this rig. Known: ${accepted}.`,
  'rig-cannot-settle': (found, accepted) =>
    `with ${found} the weight presses the coil solid. Accepted: ${accepted}.`,
  'rig-needs-reading': (_, accepted) =>
    `this reading is needed and nothing can stand in for it. Accepted: ${accepted}.`,
  'rig-course-impossible': (found, accepted) =>
    `with ${found} here this is no ground that can be driven. Accepted: ${accepted}.`,
  'rig-profile-gap': (found, accepted) =>
    `points are missing before ${found}: the profile has a gap. Accepted: ${accepted}.`,
  'rig-points-coincide': (found, accepted) => `points that are one: ${found}. Accepted: ${accepted}.`,
  'rig-point-wrong-side': (found, accepted) => `a point on the wrong side: ${found}. Accepted: ${accepted}.`,
  'links-out-of-reach': (found, accepted) =>
    `the links do not reach this ride height: ${found}. Accepted: ${accepted}.`,
  'rig-inconsistent': (found, accepted) => `${found} contradicts the rest of the rig. Accepted: ${accepted}.`,

  'links-missing': (_, accepted) => `this link is missing. Accepted: ${accepted}.`,
  'links-unknown': (found, accepted) => `${found} is no link here, or stands twice. Accepted: ${accepted}.`,
  'links-no-length': (found, accepted) => `this link has no length: ${found}. Accepted: ${accepted}.`,
  'links-wrong-side': (found, accepted) =>
    `this joint is on the wrong side: ${found}. Accepted: ${accepted}.`,
  'links-ends-exchanged': (found, accepted) =>
    `the ends of this link look exchanged: ${found}. Accepted: ${accepted}.`,
  'links-axle-loose': (found, accepted) =>
    `1 mm of play in the joints lets the axle move ${found}. Accepted: ${accepted}.`,

  'ask-unknown-setup': (found, accepted) => `the rig has no setup ${found}. Known: ${accepted}.`,
  'ask-unknown-course': (found, accepted) => `the rig has no course ${found}. Known: ${accepted}.`,
  'ask-speed-absurd': (found, accepted) =>
    `a speed of ${found} cannot be ridden here. Accepted: ${accepted}.`,
  'ask-sweep-range': (found, accepted) => `${found} is no range of speeds. Accepted: ${accepted}.`,
  'ask-sweep-step': (found, accepted) =>
    `a step of ${found} does not go through this range of speeds. Accepted: ${accepted}.`,
  'ask-sweep-no-speed': (found, accepted) =>
    `the course ${found} knows no speed: on it a rig is let go. Accepted: ${accepted}.`,
  'ask-plate': (found, accepted) => `${found}: this cannot be cut. Accepted: ${accepted}.`,
  'ask-option': (found, accepted) => `${found} was not understood. Accepted: ${accepted}.`,
  'ask-port-taken': (found, accepted) => `port ${found} is in use or reserved. Accepted: ${accepted}.`,

  'stop-no-room': (found, accepted) =>
    `between touch and the reserve there is ${found} to crush a stop in. Accepted: ${accepted}.`,
  'stop-press-too-short': (found, accepted) =>
    `too few readings for a curve, found ${found}. Accepted: ${accepted}.`,
  'stop-press-strokes': (found, accepted) =>
    `the travel of the press turns round once more at ${found}. Accepted: ${accepted}.`,
  'stop-press-sign': (found, accepted) =>
    `${found} counts the other way round from pressing a stop. Accepted: ${accepted}.`,
  'stop-press-units': (found, accepted) =>
    `no stop is pressed at ${found}, units were mixed up. Accepted: ${accepted}.`,
  'stop-hardness-range': (found, accepted) => `a hardness of ${found} is no use. Accepted: ${accepted}.`,
  'stop-need-none': (found, accepted) => `no stop curve does over ${found}. Accepted: ${accepted}.`,
  'stop-design-range': (found, accepted) => `a density of ${found} cannot be printed. Accepted: ${accepted}.`,
  'stop-design-target': (found, accepted) =>
    `the wanted curve cannot be followed, it has ${found}. Accepted: ${accepted}.`,
  'stop-solid-seat': (found, accepted) => `the seat does not fit, found ${found}. Accepted: ${accepted}.`,
  'stop-solid-cells': (found, accepted) =>
    `with a cell of ${found} the solid has too many walls to draw. Accepted: ${accepted}.`,
  'stop-solid-parts': (found, accepted) => `the solid falls into ${found}. Accepted: ${accepted}.`,
  'log-not-a-log': (found, accepted) => `this is ${found}, not a log of a drive. Accepted: ${accepted}.`,
  'log-no-columns': (found, accepted) => `the columns ${found} do not say enough. Wanted: ${accepted}.`,
  'log-column-unknown': (found, accepted) => `there is no column ${found}. Columns: ${accepted}.`,
  'log-broken': (found, accepted) => `the file is broken, ${found}. Accepted: ${accepted}.`,
  'stop-shape': (found, accepted) => `no stop has ${found}. Accepted: ${accepted}.`,

  'bracket-missing': (found, accepted) =>
    `this rig tells of no bracket, found ${found}. Accepted: ${accepted}.`,
  'choose-nothing': (found, accepted) =>
    `there is nothing to choose from, found ${found}. Accepted: ${accepted}.`,
  'choose-none-left': (found, accepted) =>
    `no candidate is left after the constraints: ${found}. Accepted: ${accepted}.`,
  'choose-file': (found, accepted) => `this is no file of a study: ${found}. Accepted: ${accepted}.`,
  'choose-other-study': (found, accepted) => `this is of another study: ${found}. Accepted: ${accepted}.`,
  'choose-parts-missing': (found, accepted) =>
    `parts of the study were done by nobody: ${found}. Accepted: ${accepted}.`,

  'case-not-json': (found, accepted) => `this cannot be read as JSON: ${found}. Accepted: ${accepted}.`,
  'case-wrong-shape': (found, accepted) => `${found} does not fit a ride case. Accepted: ${accepted}.`,
};
