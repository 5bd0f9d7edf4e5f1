import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';

const SKIP = new Set(['node_modules', 'dist', 'artifacts', '.git']);

/** Every Markdown page of the house, as paths from its root. */
export function markdownPages(root: string): string[] {
  const found: string[] = [];
  const walk = (folder: string): void => {
    for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (entry.isDirectory() && !SKIP.has(entry.name)) walk(path);
      else if (entry.name.endsWith('.md')) found.push(path);
    }
  };
  walk('');
  return found.sort();
}

/** Text without what is shown as code: links in there are examples. Lines keep their numbers. */
function withoutCode(text: string): string {
  const blank = (part: string): string => part.replace(/[^\n]/g, ' ');
  return text
    .replace(/^( {0,3})(`{3,}|~{3,})[^\n]*\n[\s\S]*?^\1\2[^\n]*$/gm, blank)
    .replace(/`[^`\n]+`/g, blank);
}

/** Anchors of a page: headings as GitHub slugs them (second and later of a name get `-1`, `-2`), and explicit ids. */
export function anchorsOf(text: string): Set<string> {
  const anchors = new Set<string>();
  const fenced = text.replace(/^( {0,3})(`{3,}|~{3,})[^\n]*\n[\s\S]*?^\1\2[^\n]*$/gm, '');
  for (const [, heading = ''] of fenced.matchAll(/^#{1,6}\s+(.+?)\s*#*$/gm)) {
    const slug = heading
      .replace(/!?\[([^\]]*)\]\([^)]*\)/g, '$1')
      .replace(/<[^>]+>/g, '')
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\p{M}\s_-]/gu, '')
      .replace(/\s/g, '-');
    let name = slug;
    for (let again = 1; anchors.has(name); again += 1) name = `${slug}-${again}`;
    anchors.add(name);
  }
  for (const [, id = ''] of fenced.matchAll(/<[^>]+\s(?:id|name)="([^"]+)"/g)) anchors.add(id);
  return anchors;
}

interface Link {
  readonly target: string;
  readonly line: number;
}

export function linksOf(text: string): Link[] {
  const shown = withoutCode(text);
  const patterns = [
    /\]\(\s*<?([^)\s>]+)>?(?:\s+"[^"]*")?\s*\)/g,
    /^\s*\[[^\]]+\]:\s*<?(\S+?)>?\s*$/gm,
    /\s(?:href|src)="([^"]+)"/g,
  ];
  return patterns.flatMap((pattern) =>
    [...shown.matchAll(pattern)].map((match) => ({
      target: match[1] ?? '',
      line: shown.slice(0, match.index).split('\n').length,
    })),
  );
}

/** One line for each relative link or anchor in the house's pages that leads nowhere. */
export function brokenLinks(root: string): string[] {
  const faults: string[] = [];
  for (const page of markdownPages(root)) {
    const text = readFileSync(join(root, page), 'utf8');
    for (const { target, line } of linksOf(text)) {
      if (/^[a-z][a-z0-9+.-]*:/i.test(target) || target.startsWith('//')) continue;
      const [path = '', anchor] = target.split('#', 2);
      const file = path === '' ? join(root, page) : resolve(root, dirname(page), decodeURI(path));
      const shown = relative(root, file);
      if (shown.startsWith('..')) faults.push(`${page}:${line}: ${target} leads out of the house`);
      else if (!existsSync(file)) faults.push(`${page}:${line}: ${target}: no such file`);
      else if (anchor && !statSync(file).isFile())
        faults.push(`${page}:${line}: ${target}: an anchor needs a file, this is a folder`);
      else if (
        anchor &&
        file.endsWith('.md') &&
        !anchorsOf(readFileSync(file, 'utf8')).has(decodeURI(anchor))
      )
        faults.push(`${page}:${line}: ${target}: no heading #${anchor} in ${shown}`);
    }
  }
  return faults;
}
