import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { bad, good, type Problem, type Result, type UnitSystem, unitsOfRig } from '@lastinch/core';
import {
  type ChooseAnswer,
  type ChooseOptions,
  type ChooseRequest,
  type ChooseStudy,
  type ChosenMember,
  chooseAnswer,
  constraintText,
  openStudy,
  otherStudies,
  type PartAnswer,
  type PartsFile,
  partsFile,
  readPartsFile,
  startChoose,
  USUAL_CHOOSE_TRIALS,
} from '@lastinch/core/choose';
import manifest from '../../package.json' with { type: 'json' };
import { type ExitCode, readRigFile, refuse, unitsAsked, wholeAsked } from '../asked.ts';
import { readTextFile, writeOver } from '../hosts/files.ts';
import { onInterrupt } from '../hosts/interrupt.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { crewHere } from '../hosts/worker-threads.ts';
import { chooseJson } from '../json/choose-json.ts';
import { chooseMemberPage } from '../terminal/choose-member-page.ts';
import { choosePage, markOf } from '../terminal/choose-page.ts';
import { paperFor } from '../terminal/paper.ts';

export interface ChooseShownOptions {
  readonly show?: string;
  readonly units?: string;
  readonly json?: boolean;
}

export interface ChooseCommandOptions extends ChooseShownOptions {
  readonly samples?: string;
  readonly seed?: string;
  readonly shard?: string;
  readonly out?: string;
}

/** Parts with the answers of many candidates in all trials: megabytes, not more. */
const LARGEST_PARTS = 400_000_000;

/** `lastinch choose FILE`: the best few setups out of what the file lists, and why. */
export async function choose(file: string, options: ChooseCommandOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  const samples = wholeAsked('--samples', options.samples, USUAL_CHOOSE_TRIALS);
  const seed = wholeAsked('--seed', options.seed, 1);
  const share = shardAsked(options);
  const asked = [units, samples, seed, share].flatMap((one) => (one.ok ? [] : one.problems));
  if (!units.ok || !samples.ok || !seed.ok || !share.ok) return refuse(asked);
  const read = await readRigFile(file);
  if (!read.ok) return refuse(read.problems);
  const request: ChooseRequest = { rig: read.value, trials: samples.value, seed: seed.value };
  const study = openStudy(request);
  if (!study.ok) return refuse(study.problems.map((one) => ({ ...one, where: { file, ...one.where } })));

  const keeper = keeperOf(options.out, request);
  if (!keeper.ok) return refuse(keeper.problems);
  const answers = await judged(request, share.value, keeper.value);
  if (answers === null) return INTERRUPTED;
  if (share.value !== null) return 0;
  return say(study.value, answers, options, units.value ?? unitsOfRig(request.rig));
}

/** `lastinch choose merge FILES`: the answer of a study that was done in shards. */
export async function chooseMerge(files: readonly string[], options: ChooseShownOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const read: { readonly file: string; readonly parts: PartsFile }[] = [];
  for (const file of files) {
    const text = readTextFile(file, LARGEST_PARTS);
    if (!text.ok) return refuse(text.problems);
    const parts = readPartsFile(text.value.text, file);
    if (!parts.ok) return refuse(parts.problems);
    read.push({ file, parts: parts.value });
  }
  const others = otherStudies(read);
  if (others.length > 0) return refuse(others);
  const { request, study } = read[0].parts;
  if (study !== fingerprint(request)) return refuse([otherVersion(read[0].file)]);
  const opened = openStudy(request);
  if (!opened.ok) return refuse(opened.problems);
  const answers = read.flatMap(({ parts }) => parts.done);
  return say(opened.value, answers, options, units.value ?? unitsOfRig(request.rig));
}

const INTERRUPTED = 130;

/** Judges what was asked for; null when it was interrupted: what was done by then is kept. */
async function judged(
  request: ChooseRequest,
  share: ChooseOptions['share'] | null,
  keeper: Keeper,
): Promise<readonly PartAnswer[] | null> {
  const crew = crewHere();
  const progress = progressLine(process.stderr);
  const work = startChoose(request, crew, {
    done: keeper.done,
    onPart: keeper.keep,
    ...(share && { share }),
    onProgress: (done) => progress.show('judging candidates', done),
  });
  const forget = onInterrupt(() => work.cancel());
  const outcome = await work.outcome;
  forget();
  progress.clear();
  crew.close();
  if (outcome.kind === 'done') return outcome.answer;
  if (outcome.kind === 'cancelled') {
    const said = `stopped with ${Math.floor(100 * outcome.share)} % done`;
    process.stderr.write(
      `${said}${keeper.file === null ? '; with -o FILE a study can be taken up again' : `: the same command goes on from ${keeper.file}`}.\n`,
    );
    return null;
  }
  throw new Error(
    `the study was ${outcome.kind}: ${outcome.kind === 'broken' ? outcome.message : JSON.stringify(outcome.problems)}`,
  );
}

/** Keeps parts in a file as they come in, beside those that it held already. */
interface Keeper {
  readonly file: string | null;
  readonly done: readonly PartAnswer[];
  readonly keep: (answer: PartAnswer) => void;
}

function keeperOf(file: string | undefined, request: ChooseRequest): Result<Keeper> {
  if (file === undefined) return good({ file: null, done: [], keep: () => {} });
  const study = fingerprint(request);
  const known = new Map<number, PartAnswer>();
  if (existsSync(file)) {
    const text = readTextFile(file, LARGEST_PARTS);
    if (!text.ok) return text;
    const before = readPartsFile(text.value.text, file);
    if (!before.ok) return before;
    if (before.value.study !== study) return bad(otherVersion(file));
    for (const answer of before.value.done) known.set(answer.unit, answer);
  }
  const save = (): Result<string> =>
    writeOver(file, JSON.stringify(partsFile(study, request, [...known.values()])));
  // At once, so that a place that cannot be written is told before hours of work.
  const saved = save();
  if (!saved.ok) return saved;
  return good({
    file,
    done: [...known.values()],
    keep(answer) {
      known.set(answer.unit, answer);
      const again = save();
      if (!again.ok) throw new Error(`${file} could not be written any more`);
    },
  });
}

/** Of everything that decides the answer: rig, samples, seed and program. */
const fingerprint = (request: ChooseRequest): string =>
  createHash('sha256')
    .update(`${manifest.version}\n${JSON.stringify(request)}`)
    .digest('hex')
    .slice(0, 32);

const otherVersion = (file: string): Problem => ({
  code: 'choose-other-study',
  where: { file },
  found: 'another rig file, other samples, another seed or another version',
  accepted: 'parts of this study, or the name of a new file',
});

/** `--shard i/n`, which needs a place for its part. */
function shardAsked({ shard, out }: ChooseCommandOptions): Result<ChooseOptions['share'] | null> {
  if (shard === undefined) return good(null);
  const match = /^(\d{1,5})\/(\d{1,5})$/.exec(shard.trim());
  const [i, n] = [Number(match?.[1]), Number(match?.[2])];
  if (!(i >= 1 && i <= n))
    return bad({
      code: 'ask-option',
      where: { key: '--shard' },
      found: shard,
      accepted: '1/4, 2/4, 3/4, 4/4',
    });
  if (out === undefined)
    return bad({
      code: 'ask-option',
      where: { key: '-o' },
      found: '',
      accepted: 'a file for this shard, -o part1.json',
    });
  return good({ shard: i - 1, of: n });
}

function say(
  study: ChooseStudy,
  answers: readonly PartAnswer[],
  options: ChooseShownOptions,
  system: UnitSystem,
): ExitCode {
  const answer = chooseAnswer(study, answers);
  if ('missing' in answer) {
    const { length } = study.layout.scouts;
    const parts = answer.missing.map((unit) =>
      unit < length ? `scout ${unit + 1}` : `part ${unit - length + 1}`,
    );
    return refuse([
      {
        code: 'choose-parts-missing',
        where: {},
        found:
          parts.length > 8
            ? `${parts.slice(0, 8).join(', ')} and ${parts.length - 8} more`
            : parts.join(', '),
        accepted: 'the files of all shards 1/n to n/n, each done to its end',
      },
    ]);
  }
  if (answer.members.length === 0) return refuse([noneLeft(answer)]);
  const shown = memberAsked(answer, options.show);
  if (!shown.ok) return refuse(shown.problems);
  const paper = paperFor(process.stdout, process.env, system);
  if (options.json) writeJson(chooseJson(answer, system));
  else if (shown.value !== null) writeLines(chooseMemberPage(answer, shown.value, paper));
  else writeLines(choosePage(answer, paper));
  return 0;
}

/** `--show B`: the member with that letter. */
function memberAsked({ members }: ChooseAnswer, show: string | undefined): Result<ChosenMember | null> {
  if (show === undefined) return good(null);
  const marks = members.map((_, k) => markOf(k));
  const place = marks.indexOf(show.trim().toUpperCase());
  if (place >= 0) return good(members[place]);
  return bad({ code: 'ask-option', where: { key: '--show' }, found: show, accepted: marks.join(', ') });
}

const noneLeft = ({ tally }: ChooseAnswer): Problem => ({
  code: 'choose-none-left',
  where: { key: 'choices' },
  found: tally.barredBy
    .filter(({ candidates }) => candidates > 0)
    .map(
      ({ constraint, candidates }) =>
        `${candidates} of ${tally.candidates} break ${constraintText(constraint)}`,
    )
    .join('; '),
  accepted: 'wider limits, or other choices',
});
