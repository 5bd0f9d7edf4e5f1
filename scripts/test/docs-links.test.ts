import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { anchorsOf, brokenLinks } from '../docs-links.ts';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'docs-links-'));
  mkdirSync(join(root, 'docs/guide'), { recursive: true });
  writeFileSync(join(root, 'docs/theory.md'), '# Theory\n\n## Stop crush: the law\n\n## Again\n\n## Again\n');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const page = (text: string): string[] => {
  writeFileSync(join(root, 'docs/guide/first.md'), text);
  return brokenLinks(root);
};

it('follows files, folders and headings', () => {
  expect(
    page(
      '[a](../theory.md) [b](../theory.md#stop-crush-the-law) [c](../theory.md#again-1) [d](#here) [e](../guide)\n\n## Here\n',
    ),
  ).toEqual([]);
});

it('leaves the net alone, and what is shown as code', () => {
  expect(page('[a](https://example.org/x) `[b](gone.md)`\n\n```\n[c](gone.md)\n```\n')).toEqual([]);
});

it.each([
  ['a missing file', '\n[a](../gone.md)', 'docs/guide/first.md:2: ../gone.md: no such file'],
  ['a missing heading', '[a](../theory.md#gone)', 'no heading #gone in docs/theory.md'],
  ['a missing heading of the same page', '[a](#gone)', 'no heading #gone'],
  ['a missing picture', '![a](gone.svg)', 'gone.svg: no such file'],
  ['a missing picture in HTML', '<img alt="" src="gone.svg">', 'gone.svg: no such file'],
  ['a missing reference', '[a][b]\n\n[b]: gone.md', 'gone.md: no such file'],
  ['a way out of the house', '[a](../../../elsewhere.md)', 'leads out of the house'],
])('reports %s', (_what, text, said) => {
  expect(page(text).join('\n')).toContain(said);
});

it('slugs headings as the usual hosts do', () => {
  expect([
    ...anchorsOf(
      '# The rig file: `front.stop`\n## What *moves* what?\n## [Link](x.md) text\n<a id="mark"></a>\n',
    ),
  ]).toEqual(['the-rig-file-frontstop', 'what-moves-what', 'link-text', 'mark']);
});
