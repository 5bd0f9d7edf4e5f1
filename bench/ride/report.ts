import { NAMES, type Name } from './contestants.ts';
import { type Operations, type Peak, perEvaluation } from './limit.ts';
import { type Front, frontLines, frontOf, geometricMean, type Tried, type Work } from './precision.ts';

/** One case: the best setting of everybody at the error allowed, and all that were tried. */
export interface Benched {
  readonly name: string;
  /** Of the ride [s]. */
  readonly duration: number;
  readonly best: Readonly<Record<Name, Tried | null>>;
  readonly work: Work;
  readonly operations: Operations;
}

export interface Report {
  readonly machine: {
    readonly cpu: string;
    readonly cores: number;
    readonly node: string;
    readonly load: number;
  };
  readonly peak: Peak;
  readonly cases: readonly Benched[];
}

const RIVALS = ['cRk4', 'cvode', 'scipy'] as const;

function ratio({ best }: Benched, rival: Name): number | null {
  return best.ours && best[rival] ? best.ours.simulatedPerSecond / best[rival].simulatedPerSecond : null;
}

const meanRatios = ({ cases }: Report): Readonly<Record<(typeof RIVALS)[number], number | null>> => ({
  cRk4: geometricMean(cases.map((one) => ratio(one, 'cRk4'))),
  cvode: geometricMean(cases.map((one) => ratio(one, 'cvode'))),
  scipy: geometricMean(cases.map((one) => ratio(one, 'scipy'))),
});

/** Operations a second that go into evaluating the model; what stepping takes beside it is not counted. */
function operationRate({ best, operations, duration }: Benched, name: Name): number | null {
  const one = best[name];
  return one ? (perEvaluation(operations) * one.evaluations * one.simulatedPerSecond) / duration : null;
}

export function jsonOf(report: Report) {
  const { machine, peak, cases } = report;
  const speed = (one: Tried | null): number | null => one?.simulatedPerSecond ?? null;
  return {
    schema: 'lastinch/bench-ride/1',
    machine,
    cases: cases.map(({ name, best, work, operations }) => ({
      name,
      ours: speed(best.ours),
      cRk4: speed(best.cRk4),
      cvode: speed(best.cvode),
      scipy: speed(best.scipy),
      error: best.ours?.error ?? null,
      settings: best,
      operations,
      work,
    })),
    geometricMeanRatio: meanRatios(report),
    precision: frontOf(cases.map(({ work }) => work)),
    peak,
  };
}

/** What is kept over commits: small, and enough for the picture. */
export interface Results {
  readonly schema: 'lastinch/bench-ride-results/1';
  readonly machine: Report['machine'];
  readonly cases: readonly (Readonly<Record<Name, number | null>> & { readonly name: string })[];
  readonly geometricMeanRatio: Readonly<Record<string, number | null>>;
  readonly precision: readonly Front[];
}

export function resultsOf(report: Report): Results {
  const { machine, cases, geometricMeanRatio, precision } = jsonOf(report);
  const figure = (value: number | null): number | null => (value === null ? null : +value.toPrecision(4));
  const rounded = <T extends Readonly<Record<string, number | null>>>(values: T): T =>
    Object.fromEntries(Object.entries(values).map(([key, value]) => [key, figure(value)])) as T;
  return {
    schema: 'lastinch/bench-ride-results/1',
    machine: { ...machine, load: +machine.load.toFixed(1) },
    cases: cases.map(({ name, ours, cRk4, cvode, scipy }) => ({
      name,
      ...rounded({ ours, cRk4, cvode, scipy }),
    })),
    geometricMeanRatio: rounded(geometricMeanRatio),
    precision: precision.map(({ error, speed }) => ({ error, speed: rounded(speed) })),
  };
}

export function printReport(report: Report): void {
  const { machine, cases, peak } = report;
  console.log(
    `\n${machine.cpu}, ${machine.cores} cores, ${machine.node}; load before: ${machine.load.toFixed(1)}`,
  );
  console.log(
    'simulated seconds a second at ≤ 0.1 % error in peak crush and r.m.s. acceleration; ours ÷ theirs',
  );
  for (const one of cases) {
    console.log(`\n${one.name}`);
    for (const name of NAMES) console.log(caseLine(one, name));
  }
  console.log('\ngeometric mean, ours ÷ theirs:');
  const means = meanRatios(report);
  for (const rival of RIVALS) console.log(`  ${rival.padEnd(6)} ${means[rival]?.toFixed(2) ?? '–'} ×`);
  console.log(
    '\nwork against precision: simulated seconds a second within an error, geometric mean of all cases',
  );
  console.log(`${'error'.padStart(9)} ${NAMES.map((name) => name.padStart(8)).join(' ')}`);
  for (const line of frontLines(frontOf(cases.map(({ work }) => work)))) console.log(line);
  printLimit(cases, peak);
}

function caseLine(one: Benched, name: Name): string {
  const entry = one.best[name];
  if (entry === null) return `  ${name.padEnd(6)} never reached`;
  const against = name === 'ours' ? null : ratio(one, name);
  return [
    `  ${name.padEnd(6)} ${entry.simulatedPerSecond.toFixed(0).padStart(8)}`,
    `error ${(100 * entry.error).toFixed(3)} %`,
    `${String(entry.evaluations).padStart(7)} evaluations`,
    against === null ? '       ' : `${against.toFixed(2).padStart(5)} ×`,
    `(${entry.setting})`,
  ].join('  ');
}

/** How far everybody is from what the core can do at all. */
function printLimit(cases: readonly Benched[], peak: Peak): void {
  const giga = (rate: number): string => (rate / 1e9).toFixed(2);
  console.log('\ndistance to the limit of one core');
  console.log(
    `  peak of a loop of multiply-and-add in registers: ${giga(peak.vectorFused)} Gflop/s in vectors of ${peak.lanes} doubles, ${giga(peak.scalarFused)} double by double; ${giga(peak.scalarApart)} with the two apart, as JavaScript does`,
  );
  console.log(
    '  operations counted by running the C model with a number that counts; stepping is not in them',
  );
  for (const one of cases) {
    const { operations } = one;
    console.log(
      `  ${one.name}: ${perEvaluation(operations).toFixed(0)} operations an evaluation (${operations.sums.toFixed(0)} sums, ${operations.products.toFixed(0)} products), and ${operations.comparisons.toFixed(0)} comparisons`,
    );
    for (const name of ['ours', 'cRk4', 'cvode'] as const) {
      const rate = operationRate(one, name);
      if (rate === null) continue;
      const share = (of: number): string => `${((100 * rate) / of).toFixed(1)} %`;
      console.log(
        `    ${name.padEnd(6)} ${giga(rate)} Gflop/s: ${share(peak.scalarFused)} of double by double, ${share(peak.vectorFused)} of the vectors`,
      );
    }
  }
}
