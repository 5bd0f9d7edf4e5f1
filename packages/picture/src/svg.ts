import type { Box, Item, Scene } from './scene.ts';
import { heightAt } from './scene.ts';
import { pictureStyle } from './svg-style.ts';
import { patternsOf, TEXTURES } from './svg-texture.ts';

export interface SvgOptions {
  /** Width [px]; without it the width for which words were placed. The height follows from the scene. */
  readonly width?: number;
  /** Short name of the picture, read out by a screen reader. */
  readonly title: string;
  /** What the picture shows, in words and figures, for someone who cannot see it. */
  readonly description?: string;
  /** Begins every id, so that several pictures can stand on one page. Letters, digits and hyphens. */
  readonly idPrefix: string;
  /**
   * False leaves the style sheet out: the page holds `pictureStyle` already (needed under a strict content policy). Another
   * one, as `paperStyle`, stands in its place.
   */
  readonly style?: false | string;
  /** False leaves the paper out, so that the page shows through. */
  readonly paper?: boolean;
}

/**
 * A scene as a standalone SVG document.
 *
 * @returns well-formed XML with `role="img"`, a title and a description; all text escaped; ids begin with the prefix.
 * @invariant one pixel is `(right − left) ÷ width` metres, the same in x and y.
 */
export const svgOf = (scene: Scene, options: SvgOptions): string => {
  const width = scene.layoutWidth;
  const height = heightAt(scene, width);
  const shown = options.width ?? width;
  const prefix = options.idPrefix.replace(/[^A-Za-z0-9-]/g, '-');
  const words = options.description === undefined ? '' : ` ${prefix}-desc`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="lp" role="img" aria-labelledby="${prefix}-title${words}"`,
    ` width="${number(shown)}" height="${number(heightAt(scene, shown))}" viewBox="0 0 ${number(width)} ${number(height)}">`,
    `<title id="${prefix}-title">${escapeXml(options.title)}</title>`,
    options.description === undefined
      ? ''
      : `<desc id="${prefix}-desc">${escapeXml(options.description)}</desc>`,
    options.style === false
      ? ''
      : `<style>${(options.style ?? pictureStyle).replaceAll('<', '\\3c ')}</style>`,
    `<defs>${patternsOf(prefix)}</defs>`,
    options.paper === false ? '' : `<rect class="lp-area lp-paper" width="100%" height="100%"/>`,
    svgItems(scene, prefix),
    '</svg>',
  ].join('');
};

/**
 * Only the drawn items of a scene, without frame, style and patterns: what changes from frame to frame of an
 * animation. To be put inside a picture that `svgOf` made with the same prefix.
 */
export const svgItems = (scene: Scene, idPrefix: string): string => {
  const paper = paperOf(scene.bounds, scene.layoutWidth);
  let text = '';
  for (const item of scene.items) text += itemSvg(item, paper, idPrefix);
  return text;
};

/** How metres become pixels of the view box. */
interface Paper {
  readonly scale: number;
  readonly x: (metres: number) => string;
  readonly y: (metres: number) => string;
  readonly length: (metres: number) => string;
}

const paperOf = (bounds: Box, width: number): Paper => {
  const scale = width / (bounds.right - bounds.left);
  return {
    scale,
    x: (metres) => number((metres - bounds.left) * scale),
    y: (metres) => number((bounds.top - metres) * scale),
    length: (metres) => number(metres * scale),
  };
};

const itemSvg = (item: Item, paper: Paper, prefix: string): string => {
  switch (item.kind) {
    case 'line':
      return `<line${classes('line', item)} x1="${paper.x(item.x1)}" y1="${paper.y(item.y1)}" x2="${paper.x(item.x2)}" y2="${paper.y(item.y2)}"/>`;
    case 'polyline':
      return `<polyline${classes('line', item)} points="${pointList(item.points, paper)}"/>`;
    case 'polygon':
      return area(item, `polygon`, `points="${pointList(item.points, paper)}"`, prefix);
    case 'region': {
      const rings = item.rings.map((ring) => `M${pointList(ring, paper).replaceAll(' ', 'L')}Z`).join('');
      return area(item, 'path', `fill-rule="evenodd" d="${rings}"`, prefix);
    }
    case 'rect':
      return area(item, 'rect', rectShape(item, paper), prefix);
    case 'circle':
      return area(
        item,
        'circle',
        `cx="${paper.x(item.x)}" cy="${paper.y(item.y)}" r="${paper.length(item.radius)}"`,
        prefix,
      );
    case 'arc':
      return `<path${classes('line', item)} d="${arcPath(item, paper)}"/>`;
    case 'text':
      return textSvg(item, paper);
    case 'dimension':
      return dimensionSvg(item, paper);
    case 'band':
      return bandSvg(item, paper);
  }
};

const classes = (kind: string, item: Item, extra = ''): string => {
  const weight = item.weight === undefined || item.weight === 'plain' ? '' : ` lp-${item.weight}`;
  const dashed = item.dashed ? ' lp-dashed' : '';
  const name = item.name === undefined ? '' : ` data-name="${escapeXml(item.name)}"`;
  return ` class="lp-${kind} lp-${item.role}${weight}${dashed}${extra}"${name}`;
};

/** A filled shape: its tone first, then the texture of its role over it. */
const area = (item: Item, tag: string, shape: string, prefix: string): string => {
  const texture =
    TEXTURES[item.role] === undefined
      ? ''
      : `<${tag} class="lp-texture${item.weight === 'faint' ? ' lp-faint' : ''}" fill="url(#${prefix}-${item.role})" ${shape}/>`;
  return `<${tag}${classes('area', item)} ${shape}/>${texture}`;
};

const rectShape = (item: Extract<Item, { kind: 'rect' }>, paper: Paper): string => {
  const round = item.round === undefined ? '' : ` rx="${paper.length(item.round)}"`;
  const turn =
    item.turn === undefined || item.turn === 0
      ? ''
      : ` transform="rotate(${number((-item.turn * 180) / Math.PI)} ${paper.x(item.x + item.width / 2)} ${paper.y(item.y + item.height / 2)})"`;
  return `x="${paper.x(item.x)}" y="${paper.y(item.y + item.height)}" width="${paper.length(item.width)}" height="${paper.length(item.height)}"${round}${turn}`;
};

const arcPath = (item: Extract<Item, { kind: 'arc' }>, paper: Paper): string => {
  const at = (angle: number): string =>
    `${paper.x(item.x + item.radius * Math.cos(angle))} ${paper.y(item.y + item.radius * Math.sin(angle))}`;
  const large = Math.abs(item.to - item.from) > Math.PI ? 1 : 0;
  const sweep = item.to > item.from ? 0 : 1;
  const radius = paper.length(item.radius);
  return `M${at(item.from)}A${radius} ${radius} 0 ${large} ${sweep} ${at(item.to)}`;
};

const textSvg = (item: Extract<Item, { kind: 'text' }>, paper: Paper): string => {
  // A third of the font size below the middle is where the baseline of figures stands.
  const x = paper.x(item.x);
  const y = paper.y(item.y);
  const turn = item.upright ? ` transform="rotate(-90 ${x} ${y})"` : '';
  const anchor = item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`;
  return `<text${classes('text', item, `${item.bold ? ' lp-bold' : ''}${item.rimmed ? ' lp-rimmed' : ''}`)} x="${x}" y="${y}" dy="${number(item.size * 0.35)}" font-size="${number(item.size)}"${anchor}${turn}>${escapeXml(item.text)}</text>`;
};

/** Length of the arrow heads [px]; shorter on a dimension too short to hold two. */
const ARROW = 7;

const dimensionSvg = (item: Extract<Item, { kind: 'dimension' }>, paper: Paper): string => {
  const long = Math.hypot(item.x2 - item.x1, item.y2 - item.y1) * paper.scale;
  const line = `<line${classes('line', item)} x1="${paper.x(item.x1)}" y1="${paper.y(item.y1)}" x2="${paper.x(item.x2)}" y2="${paper.y(item.y2)}"/>`;
  if (long === 0) return line;
  const size = Math.min(ARROW, long / 2.5) / paper.scale;
  const ux = ((item.x2 - item.x1) * paper.scale) / long;
  const uy = ((item.y2 - item.y1) * paper.scale) / long;
  const head = (x: number, y: number, way: number): string => {
    const bx = x + way * ux * size;
    const by = y + way * uy * size;
    const w = size * 0.28;
    const points = [x, y, bx - uy * w, by + ux * w, bx + uy * w, by - ux * w];
    return `<polygon${classes('arrow', item)} points="${pointList(points, paper)}"/>`;
  };
  return line + head(item.x1, item.y1, 1) + head(item.x2, item.y2, -1);
};

const bandSvg = (item: Extract<Item, { kind: 'band' }>, paper: Paper): string => {
  const edge = (y: number): string =>
    `<line${classes('line', { ...item, name: undefined })} x1="${paper.x(item.x)}" y1="${paper.y(y)}" x2="${paper.x(item.x + item.width)}" y2="${paper.y(y)}"/>`;
  return (
    `<rect${classes('haze', item)} x="${paper.x(item.x)}" y="${paper.y(item.y + item.plus)}" width="${paper.length(item.width)}" height="${paper.length(item.plus + item.minus)}"/>` +
    edge(item.y + item.plus) +
    edge(item.y - item.minus)
  );
};

const pointList = (points: ArrayLike<number>, paper: Paper): string => {
  let text = '';
  for (let k = 0; k + 1 < points.length; k += 2) {
    text += `${k === 0 ? '' : ' '}${paper.x(points[k]!)},${paper.y(points[k + 1]!)}`;
  }
  return text;
};

/** At most two decimals: a hundredth of a pixel is nothing, and the text stays short and stable. */
const number = (value: number): string => {
  const rounded = Math.round(value * 100) / 100;
  return rounded === 0 ? '0' : String(rounded);
};

/** Text that is safe in XML, also in attributes; what XML 1.0 forbids (control characters, half surrogates) goes. */
const escapeXml = (text: string): string => {
  let safe = '';
  for (const character of text) safe += ENTITIES[character] ?? (isXmlCharacter(character) ? character : '');
  return safe;
};

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Extensible Markup Language (XML) 1.0, fifth edition, production [2] Char. */
const isXmlCharacter = (character: string): boolean => {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
};
