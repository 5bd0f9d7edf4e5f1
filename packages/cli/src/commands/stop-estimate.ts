import { bad, type Dimension, good, type Problem, parseQuantity, type Result } from '@lastinch/core';
import { estimatedStop, estimateFragment, isShelfName } from '@lastinch/core/rigfile';
import {
  type EstimateEnds,
  estimateStop,
  parseBulkDensity,
  parseHardness,
  type StopEstimateRequest,
} from '@lastinch/core/stops';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { writeNewFile } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { stopEstimateJson } from '../json/stop-estimate-json.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopEstimatePage } from '../terminal/stop-estimate-page.ts';

export interface StopEstimateOptions {
  readonly kind: string;
  readonly hardness?: string;
  readonly density?: string;
  readonly modulus?: string;
  readonly height?: string;
  readonly diameter?: string;
  readonly bore?: string;
  readonly ends?: string;
  readonly rod?: string;
  readonly pressure?: string;
  readonly column?: string;
  readonly stroke?: string;
  readonly name?: string;
  readonly units?: string;
  readonly out?: string;
  readonly json?: boolean;
}

const ENDS: readonly EstimateEnds[] = ['bonded', 'greased', 'dry'];

/** `lastinch stop estimate`: force against crush as a band, where nothing was pressed. */
export async function stopEstimated(options: StopEstimateOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const asked = requestOf(options);
  if (!asked.ok) return refuse(asked.problems);
  const name = options.name ?? `estimated-${options.kind}`;
  if (!isShelfName(name))
    return refuse([
      option('--name', name, 'letters, digits and dashes, a letter first, for example soft-60'),
    ]);
  const request = asked.value;
  const answer = estimateStop(request);
  if (!answer.ok) return refuse(answer.problems);
  const typed = `${options.height} ${options.diameter} ${options.rod} ${options.stroke}`;
  const system = units.value ?? (/\bin\b|"/.test(typed) ? 'shop' : 'metric');
  const fragment = estimateFragment(
    estimatedStop(request, answer.value, { name, from: fromText(request, options) }),
    system,
  );
  if (options.out !== undefined) {
    const written = writeNewFile(options.out, fragment);
    if (!written.ok) return refuse(written.problems);
  }
  if (options.json) writeJson(stopEstimateJson(name, answer.value, fragment));
  else
    writeLines(
      stopEstimatePage(
        { name, estimate: answer.value, fragment, out: options.out ?? null },
        paperFor(process.stdout, process.env, system),
      ),
    );
  return 0;
}

const option = (key: string, found: string, accepted: string): Problem => ({
  code: 'ask-option',
  where: { key },
  found,
  accepted,
});

function requestOf(options: StopEstimateOptions): Result<StopEstimateRequest> {
  const problems: Problem[] = [];
  const one = (key: keyof StopEstimateOptions, dimension: Dimension): number => {
    const read = parseQuantity(String(options[key] ?? ''), dimension, { key: `--${key}` });
    if (!read.ok) problems.push(...read.problems);
    return read.ok ? read.value.value : Number.NaN;
  };
  /** `30 mm, 20 mm`: one after the other from end to end. */
  const each = (key: 'height' | 'diameter' | 'bore'): readonly number[] =>
    (options[key] ?? '').split(',').map((text) => {
      const read = parseQuantity(text, 'length', { key: `--${key}` });
      if (!read.ok) problems.push(...read.problems);
      return read.ok ? read.value.value : Number.NaN;
    });
  const { kind } = options;
  if (kind === 'gas') {
    const request = {
      kind,
      rodDiameter: one('rod', 'length'),
      pressure: one('pressure', 'pressure'),
      column: one('column', 'length'),
      stroke: one('stroke', 'length'),
    } as const;
    return problems.length > 0 ? bad(...problems) : good(request);
  }
  if (kind !== 'rubber' && kind !== 'polyurethane' && kind !== 'foam')
    return bad(option('--kind', kind, 'rubber, polyurethane, foam, gas'));
  const hardness = kind === 'foam' ? null : parseHardness(options.hardness ?? '', { key: '--hardness' });
  if (hardness?.ok === false) problems.push(...hardness.problems);
  const density = kind === 'foam' ? parseBulkDensity(options.density ?? '', { key: '--density' }) : null;
  if (density?.ok === false) problems.push(...density.problems);
  const solid = kind === 'foam' ? solidOf(options.modulus, problems) : null;
  const heights = each('height');
  const diameters = each('diameter');
  const bores = options.bore === undefined ? heights.map(() => 0) : each('bore');
  for (const [key, list] of [
    ['--diameter', diameters],
    ['--bore', bores],
  ] as const)
    if (list.length !== heights.length)
      problems.push(
        option(key, `${list.length} of them`, `as many as heights, ${heights.length}, from end to end`),
      );
  const ends = ENDS.find((end) => end === (options.ends ?? 'dry'));
  if (ends === undefined) problems.push(option('--ends', options.ends ?? '', ENDS.join(', ')));
  if (problems.length > 0 || ends === undefined) return bad(...problems);
  const steps = heights.map((height, i) => ({ height, diameter: diameters[i]!, bore: bores[i]! }));
  if (kind === 'foam')
    return density?.ok ? good({ kind, density: density.value, solid, steps }) : bad(...problems);
  return hardness?.ok ? good({ kind, hardness: hardness.value, steps, ends }) : bad(...problems);
}

/** The modulus of the solid, `15 MPa, 30 MPa`; null when it was not told. */
function solidOf(text: string | undefined, problems: Problem[]): readonly [number, number] | null {
  if (text === undefined) return null;
  const values = text.split(',').map((each) => {
    const read = parseQuantity(each, 'pressure', { key: '--modulus' });
    if (!read.ok) problems.push(...read.problems);
    return read.ok ? read.value.value : Number.NaN;
  });
  const [least = Number.NaN, most = least, ...more] = values;
  if (more.length > 0)
    problems.push(option('--modulus', text, 'the least and the most, for example "15 MPa, 30 MPa"'));
  return [least, most];
}

function fromText(request: StopEstimateRequest, options: StopEstimateOptions): string {
  return request.kind === 'gas'
    ? 'Gas stop, by its chamber.'
    : request.kind === 'foam'
      ? `Foam of ${options.density}, ${options.height} high, ${options.diameter} across.`
      : `${options.hardness}, ${options.height} high, ${options.diameter} across, ends ${request.ends}.`;
}
