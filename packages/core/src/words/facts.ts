import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { atLeast, atMost, durationOf, inAHundred, percent, plain, sizeOf, withTolerance } from './amounts.ts';

/** The slots of a sentence, read from a finding. A missing one is said to be unknown and hides nothing. */
export class Facts {
  readonly finding: Finding;
  readonly system: UnitSystem;

  constructor(finding: Finding, system: UnitSystem) {
    this.finding = finding;
    this.system = system;
  }

  /** With tolerance; `unit` where a standard counts in it, whatever the system. */
  figure(name: string, unit?: string): string {
    return this.#show(name, (figure) => withTolerance(figure, this.system, unit));
  }

  /** Without its sign, with tolerance: where the sentence says which way. */
  size(name: string): string {
    return this.#show(name, (figure) => sizeOf(figure, this.system));
  }

  /** Without tolerance: choices and limits. */
  plain(name: string): string {
    return this.#show(name, ({ value, dimension }) => plain(value, dimension, this.system));
  }

  /** A time in the unit that suits its size, with tolerance; beyond a day only that it is. */
  duration(name: string): string {
    return this.#show(name, (figure) => durationOf(figure, this.system));
  }

  /** To two digits: a half-width or a spread by itself. */
  rough(name: string): string {
    return this.#show(name, ({ value, dimension }) =>
      plain(Number(value.toPrecision(2)), dimension, this.system),
    );
  }

  /** A length to be cut or given up, to the safe side. */
  atLeast(name: string): string {
    return this.#show(name, (figure) => atLeast(figure, this.system));
  }

  atMost(name: string): string {
    return this.#show(name, (figure) => atMost(figure, this.system));
  }

  percent(name: string): string {
    return this.#show(name, ({ value }) => percent(value));
  }

  text(name: string): string {
    const fact = this.finding.facts[name];
    return typeof fact === 'string' && fact !== '' ? fact : 'unknown';
  }

  number(name: string): number {
    const fact = this.finding.facts[name];
    return typeof fact === 'object' ? fact.value : Number.NaN;
  }

  /** Without tolerance, from the finding itself. */
  get limit(): string {
    const { limit } = this.finding;
    return limit ? plain(limit.value, limit.dimension, this.system) : 'unknown';
  }

  get limitPercent(): string {
    const { limit } = this.finding;
    return limit ? percent(limit.value) : 'unknown';
  }

  get chance(): string {
    const { likelihood } = this.finding;
    return likelihood === undefined ? 'unknown' : inAHundred(likelihood);
  }

  #show(name: string, show: (figure: Figure) => string): string {
    const fact = this.finding.facts[name];
    return typeof fact === 'object' ? show(fact) : 'unknown';
  }
}

export type Phrase = (say: Facts) => string;
