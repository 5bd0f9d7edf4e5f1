/** An element of a parsed document. */
export interface Element {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

const ENTITY: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/**
 * A strict reader of the part of XML that a picture may use: elements, attributes in double quotes, text, the five
 * entities. Throws at the first thing that is not well formed.
 */
export const parseXml = (source: string): Element => {
  let at = 0;
  const fail = (what: string): never => {
    throw new Error(`${what} at ${at}: ${source.slice(at, at + 60)}`);
  };
  const decode = (raw: string): string => {
    if (/[<]/.test(raw)) fail('bare < in text');
    return raw.replace(/&([^;]*);?/g, (whole, entity: string) => {
      const sign = ENTITY[entity];
      if (sign === undefined || !whole.endsWith(';')) fail(`unknown entity ${whole}`);
      return sign ?? '';
    });
  };
  const element = (): Element => {
    const open = /^<([A-Za-z][\w-]*)((?:\s+[A-Za-z][\w:-]*="[^"]*")*)\s*(\/?)>/.exec(source.slice(at));
    if (open === null) return fail('no element');
    at += open[0].length;
    const tag = open[1]!;
    const attributes: Record<string, string> = {};
    for (const [, name, value] of (open[2] ?? '').matchAll(/([A-Za-z][\w:-]*)="([^"]*)"/g)) {
      if (name! in attributes) fail(`attribute ${name} twice`);
      attributes[name!] = decode(value!);
    }
    const children: Element[] = [];
    let text = '';
    if (open[3] === '/') return { tag, attributes, children, text };
    for (;;) {
      const next = source.indexOf('<', at);
      if (next < 0) return fail(`${tag} not closed`);
      text += decode(source.slice(at, next));
      at = next;
      if (source.startsWith('</', at)) {
        if (!source.startsWith(`</${tag}>`, at)) fail(`${tag} closed by another`);
        at += tag.length + 3;
        return { tag, attributes, children, text };
      }
      children.push(element());
    }
  };
  const root = element();
  if (at !== source.length) fail('something after the root');
  return root;
};

export const allOf = (root: Element): readonly Element[] => [root, ...root.children.flatMap(allOf)];
