import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RemedyCode } from '../../src/finding/codes.ts';
import type { Remedy } from '../../src/finding/finding.ts';
import type { EndPatch } from '../../src/rig/setup-patch.ts';
import { travelOf } from '../../src/travel/travel.ts';
import { anyRig } from './any-rig.ts';
import { changed, type RigFacts, reading, rigOf, setupOf } from './typed-rig.ts';

/** T17: every remedy is tried out as a setup: what it says is enough, and a little less is not. */

const OPTIONS = { trials: 256 };
const exactly = (key: string, value: number) => reading(`setups.changed.front.${key}`, value);

/** The setup that an owner would type for a remedy of the front. */
function patchOf({ code }: Remedy, value: number, contact: string, ratios: Ratios): EndPatch | null {
  switch (code) {
    case 'stop-spacer':
      return { stopSpacer: exactly('stopSpacer', value) };
    case 'set-gap':
      return { stopGap: exactly('stopGap', value) };
    case 'notch-contact':
      return { notch: { [contact]: exactly(`notch.${contact}`, value) } };
    case 'seat-and-stop-drop':
      return { seatAndStopDrop: exactly('seatAndStopDrop', value) };
    case 'lift-with-spacer':
      return {
        springSpacer: exactly('springSpacer', value * ratios.spring),
        stopSpacer: exactly('stopSpacer', value * ratios.stop),
      };
    default:
      return null;
  }
}

interface Ratios {
  readonly spring: number;
  readonly stop: number;
}

const exactRatios = ({ front }: RigFacts): boolean =>
  [front!.springRatio, front!.stopRatio].every((given) => Array.isArray(given) && given[1] === 0);
const first = (given: unknown): number => (Array.isArray(given) ? given[0] : (given as number));

test('T17: a remedy makes the corner pass, and 2 mm less of it does not', () => {
  const tried = new Map<RemedyCode, number>();
  fc.assert(
    fc.property(anyRig, (facts) => {
      const { corners, findings } = travelOf(setupOf(rigOf(facts)), OPTIONS);
      const verdict = findings.find(({ place, code }) => place === 'front' && code.startsWith('travel-'))!;
      if (corners.frontLeft.verdict === 'pass') expect(verdict.remedies).toEqual([]);
      const ratios = { spring: first(facts.front!.springRatio), stop: first(facts.front!.stopRatio) };
      for (const remedy of verdict.remedies) {
        // A rigOf contact is named by its id.
        const patch = (value: number) => patchOf(remedy, value, remedy.target ?? '', ratios);
        const amount = remedy.amount?.value ?? Number.NaN;
        const enough = patch(amount);
        // A lift is a height at the axle; as a spacer it takes the error of the ratios with it.
        const inexact = remedy.code === 'lift-with-spacer' && !exactRatios(facts);
        if (!enough || inexact) continue;
        const sooner = remedy.code === 'set-gap' ? amount + 0.002 : amount - 0.002;
        const after = (change: EndPatch) => travelOf(changed(facts, change), OPTIONS).corners.frontLeft;
        expect(after(enough).verdict, `${remedy.code} ${amount}`).toBe('pass');
        tried.set(remedy.code, (tried.get(remedy.code) ?? 0) + 1);
        if (sooner > 0) {
          const less = patch(sooner);
          expect(after(less!).verdict, `${remedy.code} ${sooner}`).not.toBe('pass');
        }
      }
    }),
    { numRuns: 80, seed: 99 },
  );
  // The property would be empty if nothing was ever offered.
  for (const code of [
    'stop-spacer',
    'set-gap',
    'notch-contact',
    'seat-and-stop-drop',
    'lift-with-spacer',
  ] as const)
    expect(tried.get(code) ?? 0, code).toBeGreaterThan(3);
});

describe('what cannot help is not offered', () => {
  const offered = (facts: RigFacts, code: string) =>
    travelOf(setupOf(rigOf(facts)))
      .findings.find((finding) => finding.id === `${code}.front`)!
      .remedies.map((remedy) => remedy.code);

  test('two contacts in the way: no single notch', () => {
    const facts = { front: { contacts: { a: { gap: 0.1 }, b: { gap: 0.102 } } } };
    expect(offered(facts, 'travel-fail')).not.toContain('notch-contact');
  });

  test('a coil that binds: neither notch, nor lower seat, nor lift on the same coil', () => {
    const facts = { front: { contacts: { a: { gap: 0.3 } }, coil: { ride: 0.3, solid: 0.2 } } };
    expect(offered(facts, 'travel-fail')).toEqual(['stop-spacer', 'set-gap']);
  });

  test('no gap left to close: no stop spacer', () => {
    const facts = { front: { contacts: { a: { gap: 0.02 } }, gap: 0.01 } };
    const codes = offered(facts, 'travel-fail');
    expect(codes).not.toContain('stop-spacer');
    expect(codes).toContain('seat-and-stop-drop');
  });
});
