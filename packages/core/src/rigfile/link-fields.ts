import type { Plain } from './document.ts';
import { SINGLE_LINKS } from './link-rules.ts';

/**
 * Whether the page should not offer this way of saying where a point is: a link that stands alone is so far left of
 * the centreline, a pair so far from left to right.
 */
export function isOtherWay(path: readonly string[], root: Plain): boolean {
  const [end = '', part, link = ''] = path;
  const last = path.at(-1);
  if (part !== 'links' || (last !== 'left' && last !== 'spread')) return false;
  const alone = SINGLE_LINKS[kindAt(root, end)]?.includes(link) ?? false;
  return alone === (last === 'spread');
}

function kindAt(root: Plain, end: string): string {
  let here: Plain | undefined = root;
  for (const step of [end, 'links', 'kind'])
    here =
      typeof here === 'object' && Object.hasOwn(here, step)
        ? (here as Readonly<Record<string, Plain>>)[step]
        : undefined;
  return typeof here === 'string' ? here : '';
}
