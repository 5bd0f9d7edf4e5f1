import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** Lines of prose that stand twice: what two branches that were merged line by line leave behind. */
function toldTwice(text: string): readonly string[] {
  const seen = new Set<string>();
  return text.split('\n').filter((line) => {
    const again = line.trim().length > 24 && seen.has(line);
    seen.add(line);
    return again;
  });
}

/** Titles of a changelog, as far as the colon: `- **Title**: …` */
const titles = (text: string) => [...text.matchAll(/^- \*\*(.+?)\*\*/gm)].map((match) => match[1]);

describe.each(['README.md', 'CHANGELOG.md', 'CONTRIBUTING.md'])('%s', (file) => {
  const text = readFileSync(file, 'utf8');

  it('tells nothing twice', () => {
    expect(toldTwice(text)).toEqual([]);
    expect(titles(text)).toEqual([...new Set(titles(text))]);
  });

  it('has no lines that a list lost', () => {
    expect(text).not.toMatch(/\n\n {2}\S/);
  });
});

it('finds a line that stands twice', () => {
  const line = '    lastinch links my-rig.rig.yaml';
  expect(toldTwice(`${line}\nother\n${line}\n`)).toEqual([line]);
});
