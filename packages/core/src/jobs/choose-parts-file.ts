import type { PartAnswer } from '../choose/parts.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import type { ChooseRequest } from './choose-study.ts';

/** Parts of a study that were done, with the study itself: enough to go on anywhere. Plain data. */
export interface PartsFile {
  readonly schema: typeof PARTS_SCHEMA;
  /** Fingerprint of the request and of the program: only parts of one study are put together. */
  readonly study: string;
  readonly request: ChooseRequest;
  /** By unit, rising. */
  readonly done: readonly PartAnswer[];
}

export const PARTS_SCHEMA = 'lastinch/choose-parts/1';
const ACCEPTED = 'a file that `lastinch choose FILE -o …` wrote with this version';

/** @param study – fingerprint of the request, made by who can hash */
export const partsFile = (study: string, request: ChooseRequest, done: readonly PartAnswer[]): PartsFile => ({
  schema: PARTS_SCHEMA,
  study,
  request,
  done: [...done].sort((a, b) => a.unit - b.unit),
});

/**
 * Reads such a file back.
 * @failure `choose-file` for text that is none
 */
export function readPartsFile(text: string, file: string): Result<PartsFile> {
  const wrong = (found: string): Result<PartsFile> =>
    bad({ code: 'choose-file', where: { file }, found, accepted: ACCEPTED });
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return wrong('text that is not JSON');
  }
  if (!isRecord(read) || read.schema !== PARTS_SCHEMA)
    return wrong(isRecord(read) ? `schema ${JSON.stringify(read.schema) ?? 'none'}` : 'no keys');
  const { study, request, done } = read;
  if (typeof study !== 'string' || !isRecord(request) || !Array.isArray(done) || !done.every(isAnswer))
    return wrong('a file that was changed or cut off');
  return good(read as unknown as PartsFile);
}

function isAnswer(value: unknown): boolean {
  if (!isRecord(value)) return false;
  const { unit, tally, front, always } = value;
  return Number.isInteger(unit) && isRecord(tally) && [front, always].every(isJudgedList);
}

const isJudgedList = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.every(
    (one) =>
      isRecord(one) &&
      Number.isInteger(one.index) &&
      Array.isArray(one.objectives) &&
      Array.isArray(one.samples) &&
      one.samples.every((sample) => typeof sample === 'number'),
  );

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What is wrong with parts that should be of one study; the first file says which. */
export function otherStudies(
  files: readonly { readonly file: string; readonly parts: PartsFile }[],
): readonly Problem[] {
  const [first, ...others] = files;
  return others
    .filter(({ parts }) => parts.study !== first.parts.study)
    .map(({ file, parts }) => ({
      code: 'choose-other-study',
      where: { file },
      found: `${parts.request.rig.name}, ${parts.request.trials} samples, seed ${parts.request.seed}`,
      accepted: `parts of the study in ${first.file}: the same rig file, samples, seed and version`,
    }));
}
