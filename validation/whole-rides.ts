import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type CaseLine, type CaseOutcome, compareCase } from './ride-case/compare.ts';
import { readRideCase } from './ride-case/read.ts';

const FOLDER = fileURLToPath(new URL('./ride-cases/', import.meta.url));

/** Every reference ride of this folder, by the same function as `npm run case`. */
export function wholeRides(): readonly CaseOutcome[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => compareCase(readRideCase(readFileSync(`${FOLDER}${file}`, 'utf8'))));
}

/** How much of its tolerance a line uses; infinite when nothing is allowed and something is off. */
export function usedBy({ difference, allowed, theirs }: CaseLine): number {
  if (difference === 0) return 0;
  return (
    Math.abs(difference) / (allowed.kind === 'absolute' ? allowed.value : allowed.value * Math.abs(theirs))
  );
}

/** For each quantity of a ride the line that uses most of its tolerance; too small ones are left out. */
export function worstLines({ lines }: CaseOutcome): readonly CaseLine[] {
  const worst = new Map<string, CaseLine>();
  for (const line of lines) {
    if (!line.compared) continue;
    const quantity = line.quantity.split('.')[0];
    const known = worst.get(quantity);
    if (known === undefined || usedBy(line) > usedBy(known)) worst.set(quantity, line);
  }
  return [...worst.values()];
}
