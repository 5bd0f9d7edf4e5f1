import type { Dimension } from '../finding/figure.ts';
import { SIDES } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import { acceptedUnits } from '../quantity/unit-name.ts';
import type { Assumption } from '../rig/assumptions.ts';
import type { Reading, Sided } from '../rig/reading.ts';
import { type Plain, type RigDocument, whereOf } from './document.ts';
import { neededKeys } from './needed.ts';
import type { TypedQuantities } from './typed.ts';
import { type Tool, usualTolerance } from './usual-tolerance.ts';
import type { Usual } from './usual-value.ts';

/** How one key becomes a reading. */
export interface ReadingSpec {
  readonly dimension: Dimension;
  /** What it is normally measured with: gives the tolerance that was not typed. */
  readonly tool: Tool;
}

/**
 * Makes readings out of what was typed, fills the gaps and keeps the books: every assumption is noted, everything
 * that must be asked for becomes a problem. After a problem the rig is thrown away, so a placeholder may stand in.
 */
export class Gaps {
  readonly assumptions: Assumption[] = [];
  readonly problems: Problem[] = [];
  /** Every reading made, by key: what the Measure step shows. */
  readonly readings = new Map<string, Reading>();
  private readonly asked = new Set<string>();

  constructor(
    readonly document: RigDocument,
    private readonly typed: TypedQuantities,
  ) {}

  /** What the file says at a path, or undefined. */
  at(path: string): Plain | undefined {
    let here: Plain | undefined = this.document.plain;
    for (const step of path.split('.')) {
      if (typeof here !== 'object' || !Object.hasOwn(here, step)) return undefined;
      here = (here as Readonly<Record<string, Plain>>)[step];
    }
    return here;
  }

  text(path: string): string | undefined {
    const found = this.at(path);
    return typeof found === 'string' || typeof found === 'number' ? String(found) : undefined;
  }

  /** Names below a path in the order of the file. */
  names(path: string): readonly string[] {
    const found = this.at(path);
    return typeof found === 'object' && !Array.isArray(found) ? Object.keys(found) : [];
  }

  /** The SI value as typed, without making a reading of it. */
  value(path: string): number | null {
    return this.typed.good.get(path)?.value ?? null;
  }

  /** A reading that was typed, or null. */
  typedReading(key: string, { dimension, tool }: ReadingSpec): Reading | null {
    const known = this.readings.get(key);
    if (known) return known;
    const quantity = this.typed.good.get(key);
    if (!quantity) return null;
    const origin = quantity.assumed ? 'guessed' : 'measured';
    const missing = quantity.plus === null || quantity.minus === null;
    const { rule, halfWidth } = usualTolerance(quantity, tool);
    if (missing && rule) this.assumptions.push({ key, what: 'tolerance', rule });
    return this.keep({
      key,
      dimension,
      value: quantity.value,
      plus: quantity.plus ?? halfWidth,
      minus: quantity.minus ?? halfWidth,
      origin,
      toleranceOrigin: missing && rule ? 'assumed' : origin,
      text: quantity.text,
    });
  }

  /** A reading that was typed, or what is usual. */
  readingOr(key: string, spec: ReadingSpec, usual: Usual): Reading {
    const typed = this.typedReading(key, spec);
    if (typed) return typed;
    if (!this.typed.paths.has(key)) this.assumptions.push({ key, what: 'value', rule: usual.rule });
    return this.keep({
      key,
      dimension: spec.dimension,
      value: usual.value,
      plus: usual.halfWidth,
      minus: usual.halfWidth,
      origin: 'assumed',
      toleranceOrigin: 'assumed',
      text: '',
    });
  }

  /** A reading worked out from a table that was measured: as good as a press is. */
  worked(key: string, dimension: Dimension, value: number): Reading {
    const { halfWidth } = usualTolerance(
      { dimension, value, plus: null, minus: null, assumed: false, text: '' },
      'press-rate-tolerance',
    );
    this.assumptions.push({ key, what: 'tolerance', rule: 'press-rate-tolerance' });
    const origin = 'measured';
    return this.keep({
      key,
      dimension,
      value,
      plus: halfWidth,
      minus: halfWidth,
      origin,
      toleranceOrigin: 'assumed',
      text: '',
    });
  }

  /** A reading worked out from others, with the half-width that they give it. */
  derived(key: string, dimension: Dimension, value: number, halfWidth: number): Reading {
    return this.keep({
      key,
      dimension,
      value,
      plus: halfWidth,
      minus: halfWidth,
      origin: 'measured',
      toleranceOrigin: 'measured',
      text: '',
    });
  }

  /** A reading that must be there: no sound estimate exists. */
  needed(key: string, spec: ReadingSpec): Reading {
    const typed = this.typedReading(key, spec);
    if (typed) return typed;
    if (!this.typed.paths.has(key)) this.ask(key, acceptedUnits(spec.dimension));
    return this.standIn(key, spec.dimension);
  }

  /** In the place of one that was asked for, so that the rest of the file is read in the same pass. */
  standIn(key: string, dimension: Dimension): Reading {
    return { ...PLACEHOLDER, key, dimension };
  }

  /** One for both sides, or one for each; the same object twice in the first case. */
  neededSides(key: string, spec: ReadingSpec): Sided<Reading> {
    if (!SIDES.some((side) => this.at(`${key}.${side}`) !== undefined)) {
      const both = this.needed(key, spec);
      return { left: both, right: both };
    }
    return { left: this.needed(`${key}.left`, spec), right: this.needed(`${key}.right`, spec) };
  }

  /** Asks for a reading; when a whole branch is missing, once for the branch. */
  ask(key: string, accepted: string): void {
    const missing = this.shallowestMissing(key);
    if (this.asked.has(missing) || this.standsWrong(key)) return;
    this.asked.add(missing);
    const below = missing === key ? '' : neededKeys(missing.split('.'), this.document.plain).join(', ');
    const asked = below === '' ? accepted : below;
    this.problems.push({
      code: 'rig-needs-reading',
      where: whereOf(this.document, missing),
      found: '',
      accepted: asked,
    });
  }

  /** A key without which its neighbours mean nothing. */
  missing(key: string, accepted: string): void {
    this.problem('rig-key-missing', key, '', accepted);
  }

  problem(code: Problem['code'], key: string, found: string, accepted: string): void {
    this.problems.push({ code, where: whereOf(this.document, key), found, accepted });
  }

  /** True when something does stand there, or above it, that was refused for its shape: that has its problem already. */
  private standsWrong(key: string): boolean {
    const path = key.split('.');
    return path.some((_, depth) => {
      const here = path.slice(0, depth + 1).join('.');
      const value = this.at(here);
      return (
        this.document.refused.has(here) ||
        (value !== undefined && (typeof value !== 'object' || Array.isArray(value)))
      );
    });
  }

  private shallowestMissing(key: string): string {
    const path = key.split('.');
    for (let depth = 1; depth < path.length; depth++) {
      const above = path.slice(0, depth).join('.');
      if (this.at(above) === undefined) return above;
    }
    return key;
  }

  private keep(reading: Reading): Reading {
    this.readings.set(reading.key, reading);
    return reading;
  }
}

/** Stands in for a reading that was asked for, so that the rest of the file is read in the same pass. */
const PLACEHOLDER: Omit<Reading, 'key' | 'dimension'> = {
  value: 1,
  plus: 0,
  minus: 0,
  origin: 'assumed',
  toleranceOrigin: 'assumed',
  text: '',
};
