import {
  bad,
  FASTEST,
  formatValue,
  good,
  type Problem,
  parseQuantity,
  problemText,
  type Result,
  type Rig,
  SLOWEST,
  setupNames,
  TYRE_FEELS,
  type TyreFeel,
  type UnitSystem,
  USUAL_FEEL,
  unitsOfRig,
} from '@lastinch/core';
import { nearest, readRig } from '@lastinch/core/rigfile';
import { PAPER_SIZES, type PaperSize } from '@lastinch/paper';
import { printable } from '@lastinch/picture';
import { readBeside, readRigText } from './hosts/files.ts';

/** What a run of the program ends with: 0 fine, 1 findings above the owner's limits, 2 bad input, 130 interrupted. */
export type ExitCode = 0 | 1 | 2 | 130;

/** Says each problem on its own line of standard error. */
export function refuse(problems: readonly Problem[]): 2 {
  for (const problem of problems) process.stderr.write(`${printable(problemText(problem), true)}\n`);
  return 2;
}

/** The rig in a file, or in standard input for `-`. */
export async function readRigFile(file: string): Promise<Result<Rig>> {
  const read = await readRigText(file);
  if (!read.ok) return read;
  return readRig(read.value.text, { file: read.value.file, readBeside: readBeside(file) });
}

/** A name that the rig does not have; the known ones with the nearest first. */
export function unknownName(
  code: 'ask-unknown-setup' | 'ask-unknown-course',
  found: string,
  known: readonly string[],
): Problem {
  const meant = nearest(found, known);
  const names = [
    ...(meant === null ? [] : [`${meant} (the nearest)`]),
    ...known.filter((name) => name !== meant),
  ];
  return {
    code,
    where: {},
    found,
    accepted: names.length > 0 ? names.join(', ') : 'none, the file has none yet',
  };
}

/** Each name of a setup that is asked for must be one of the rig. */
export function knownSetups(rig: Rig, asked: readonly (string | undefined)[]): Result<null> {
  const known = setupNames(rig);
  const problems = asked
    .filter((name) => name !== undefined && !known.includes(name))
    .map((name) => unknownName('ask-unknown-setup', name ?? '', known));
  return problems.length > 0 ? bad(...problems) : good(null);
}

/** The option `--units`; null when it was not given. */
export function unitsAsked(text: string | undefined): Result<UnitSystem | null> {
  if (text === undefined) return good(null);
  if (text === 'shop' || text === 'metric') return good(text);
  return bad({ code: 'ask-option', where: { key: '--units' }, found: text, accepted: 'shop, metric' });
}

/** The option `--tyres`: how they read the ground. */
export function tyresAsked(text: string | undefined): Result<TyreFeel> {
  const feel = TYRE_FEELS.find((one) => one === (text ?? USUAL_FEEL));
  if (feel !== undefined) return good(feel);
  return bad({
    code: 'ask-option',
    where: { key: '--tyres' },
    found: text ?? '',
    accepted: TYRE_FEELS.join(', '),
  });
}

/** The option `--speed` [m/s]; null when it was not given. */
export function speedAsked(text: string | undefined): Result<number | null> {
  if (text === undefined) return good(null);
  const typed = parseQuantity(text, 'speed', { key: '--speed' });
  if (!typed.ok) return typed;
  const { value } = typed.value;
  return value >= SLOWEST && value <= FASTEST ? good(value) : bad(absurdSpeed('--speed', text));
}

/** A speed that no rig is driven at, where it was asked for. */
export function absurdSpeed(key: string, found: string): Problem {
  const [slowest, fastest] = [SLOWEST, FASTEST].map((limit) =>
    formatValue(limit, 'speed', { system: 'shop' }),
  );
  return {
    code: 'ask-speed-absurd',
    where: { key },
    found,
    accepted: `${slowest} to ${fastest}, for example "30 mph" or "45 km/h"`,
  };
}

/** What most commands begin with, understood. */
export interface RigAsked {
  readonly rig: Rig;
  /** Units to answer in: those asked for, else those of the file. */
  readonly system: UnitSystem;
  /** `--speed` [m/s]; null when it was not given. */
  readonly speed: number | null;
}

/** The file with the options that most commands share: `--units`, `--speed`, and setups that must be of the rig. */
export async function rigAsked(
  file: string,
  options: { readonly units?: string; readonly speed?: string },
  setups: readonly (string | undefined)[],
): Promise<Result<RigAsked>> {
  const units = unitsAsked(options.units);
  if (!units.ok) return units;
  const speed = speedAsked(options.speed);
  if (!speed.ok) return speed;
  const read = await readRigFile(file);
  if (!read.ok) return read;
  const rig = read.value;
  const known = knownSetups(rig, setups);
  if (!known.ok) return known;
  return good({ rig, system: units.value ?? unitsOfRig(rig), speed: speed.value });
}

/** The option `--paper`; A4 where nothing was said. */
export function paperAsked(text = 'a4'): Result<PaperSize> {
  const size = Object.keys(PAPER_SIZES).find((one) => one === text.toLowerCase());
  if (size !== undefined) return good(size as PaperSize);
  return bad({
    code: 'ask-option',
    where: { key: '--paper' },
    found: text,
    accepted: Object.keys(PAPER_SIZES).join(', '),
  });
}

/** An option that is a whole number from 0 on; what is usual when it was not given. */
export function wholeAsked(key: string, text: string | undefined, usual: number): Result<number> {
  if (text === undefined) return good(usual);
  if (/^\d{1,9}$/.test(text.trim())) return good(Number(text));
  return bad({ code: 'ask-option', where: { key }, found: text, accepted: 'a whole number from 0 on' });
}
