import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { FindingCode, RemedyCode } from '../../../src/finding/codes.ts';
import type { Finding } from '../../../src/finding/finding.ts';
import type { Problem, Result } from '../../../src/finding/problem.ts';
import { checkRig } from '../../../src/jobs/check.ts';
import type { CheckResult } from '../../../src/jobs/protocol.ts';
import { editRig, type RigFileEdit, readRig } from '../../../src/rigfile/index.ts';

/** A rig file beside this one, with some of its typed texts changed: `{ 'front.stop.gap': '90 mm' }`. */
export function storyText(name: string, changes: Readonly<Record<string, string | null>> = {}): string {
  const text = readFileSync(new URL(`./${name}.rig.yaml`, import.meta.url), 'utf8');
  const edits = Object.entries(changes).map(
    ([key, typed]): RigFileEdit => ({ path: key.split('.'), text: typed }),
  );
  return must(editRig(text, edits));
}

export function check(text: string, setup = 'as-measured'): CheckResult {
  return must(checkRig(must(readRig(text)), { setup }));
}

export const problemsOf = (text: string): readonly Problem[] => {
  const result = readRig(text);
  return result.ok ? [] : result.problems;
};

export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1));
  return result.value;
}

/** The finding of a code at the front; a story fails when it is not there. */
export function found({ findings }: CheckResult, code: FindingCode, place = 'front'): Finding {
  const finding = findings.find((each) => each.code === code && each.place === place);
  expect(finding, `${code} at ${place} among ${findings.map(({ id }) => id).join(', ')}`).toBeDefined();
  return finding!;
}

export const codes = ({ findings }: CheckResult, place = 'front'): readonly FindingCode[] =>
  findings.filter((finding) => finding.place === place).map(({ code }) => code);

/** Amount of a remedy in mm. */
export function amount({ remedies }: Finding, code: RemedyCode): number {
  const remedy = remedies.find((each) => each.code === code);
  expect(remedy?.amount, `${code} among ${remedies.map((each) => each.code).join(', ')}`).toBeDefined();
  return 1000 * remedy!.amount!.value;
}

export const mm = (figure: { readonly value: number } | undefined): number => 1000 * figure!.value;
