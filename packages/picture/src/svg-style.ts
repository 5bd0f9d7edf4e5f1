import { ROLES, type Role } from './role.ts';

/** Tones of one scheme. A page overrides each with a custom property of its own: `--picture-crush: …`. */
export type Tone =
  | 'paper'
  | 'ink'
  | 'muted'
  | 'grid'
  | 'metal'
  | 'flex'
  | 'reserve'
  | 'clearance'
  | 'crush'
  | 'free'
  | 'droop'
  | 'overlap'
  | 'body'
  | 'tyre'
  | 'spring'
  | 'shock'
  | 'pass'
  | 'first'
  | 'second'
  | 'third';

export const LIGHT: Readonly<Record<Tone, string>> = {
  paper: '#fbfaf6',
  ink: '#1d2530',
  muted: '#566070',
  grid: '#dcdcd3',
  metal: '#3a4654',
  flex: '#edbd5c',
  reserve: '#a5cdbf',
  clearance: '#e0f0e8',
  crush: '#d9774f',
  free: '#f4f2ea',
  droop: '#dbe4ee',
  overlap: '#d1344b',
  body: '#e8e8e0',
  tyre: '#d2d3cd',
  spring: '#1f5a96',
  shock: '#8a5a12',
  pass: '#1c6e4f',
  first: '#1f5a96',
  second: '#b4471f',
  third: '#1c6e4f',
};

const DARK: Readonly<Record<Tone, string>> = {
  paper: '#14181d',
  ink: '#ece8de',
  muted: '#a9b1bb',
  grid: '#333a42',
  metal: '#93a0ae',
  flex: '#a87b26',
  reserve: '#3a7568',
  clearance: '#1c3a34',
  crush: '#b25a36',
  free: '#20262c',
  droop: '#28333f',
  overlap: '#d94a60',
  body: '#262d34',
  tyre: '#39414a',
  spring: '#79b4ee',
  shock: '#dfae5c',
  pass: '#6cc7a0',
  first: '#79b4ee',
  second: '#ee9468',
  third: '#6cc7a0',
};

export const PRINT: Readonly<Partial<Record<Tone, string>>> = {
  paper: '#ffffff',
  ink: '#000000',
  muted: '#333333',
};

/** How a role looks: the tone that fills its areas, the tone and width of its lines, its dash, the tone of its words. */
interface Look {
  readonly fill?: Tone | 'none';
  readonly line?: Tone | 'none';
  readonly width?: number;
  readonly dash?: string;
  readonly words?: Tone;
}

export const LOOKS: Readonly<Record<Role, Look>> = {
  metal: { fill: 'metal', width: 1.4 },
  flex: { fill: 'flex', width: 0.8 },
  reserve: { fill: 'reserve', width: 0.8 },
  clearance: { fill: 'clearance', width: 0.8 },
  crush: { fill: 'crush', width: 0.8 },
  free: { fill: 'free', width: 0.8 },
  ride: { width: 1.4 },
  droop: { fill: 'droop', width: 0.8 },
  overlap: { fill: 'none', line: 'overlap', width: 2 },
  tolerance: { fill: 'ink', line: 'ink', width: 0.9, dash: '2 2' },
  contact: { fill: 'ink', width: 1.4 },
  body: { fill: 'body', width: 1.3 },
  axle: { fill: 'body', width: 1.6 },
  tyre: { fill: 'tyre', width: 1.3 },
  ground: { fill: 'grid', width: 1.6 },
  spring: { fill: 'none', line: 'spring', width: 1.8 },
  shock: { fill: 'body', line: 'shock', width: 1.6 },
  stop: { fill: 'crush', width: 1.2 },
  pad: { fill: 'metal', width: 1 },
  link: { fill: 'body', line: 'muted', width: 1.4 },
  strap: { fill: 'none', line: 'muted', width: 1.6, dash: '5 2' },
  pass: { fill: 'none', line: 'pass', width: 1.8, words: 'pass' },
  unproven: { fill: 'none', line: 'shock', width: 1.8, words: 'shock' },
  fail: { fill: 'none', line: 'overlap', width: 1.8, words: 'overlap' },
  first: { fill: 'none', line: 'first', width: 1.8, words: 'first' },
  second: { fill: 'none', line: 'second', width: 1.8, dash: '7 3', words: 'second' },
  third: { fill: 'none', line: 'third', width: 1.8, dash: '2 3', words: 'third' },
  limit: { fill: 'none', line: 'overlap', width: 1.2, dash: '8 3 2 3', words: 'overlap' },
  allowed: { fill: 'clearance', line: 'pass', width: 1.2, words: 'pass' },
  title: {},
  figure: {},
  note: { line: 'muted', width: 0.8, words: 'muted' },
  axis: { line: 'muted', width: 1, words: 'muted' },
  grid: { line: 'grid', width: 1, words: 'muted' },
  leader: { line: 'muted', width: 0.8 },
  paper: { fill: 'paper', line: 'none', width: 0 },
};

const tones = (scheme: Readonly<Partial<Record<Tone, string>>>): string =>
  Object.entries(scheme)
    .map(([tone, value]) => `--lp-${tone}:var(--picture-${tone},${value})`)
    .join(';');

const lookOf = (role: Role): string => {
  const { fill, line = 'ink', width = 1, dash = 'none', words = 'ink' } = LOOKS[role];
  const tone = (name: Tone | 'none'): string => (name === 'none' ? 'none' : `var(--lp-${name})`);
  return `.lp-${role}{--f:${tone(fill ?? 'none')};--l:${tone(line)};--w:${width}px;--d:${dash};--t:${tone(words)}}`;
};

/**
 * The one style sheet of every picture. Put into the SVG itself by `svgOf`, or taken once by a page that shows
 * many. Tones follow light, dark and print; a page overrides any of them, for example `--picture-ink`.
 */
export const pictureStyle: string = [
  `.lp{${tones(LIGHT)};font-family:var(--picture-font,system-ui,"Segoe UI","Liberation Sans",sans-serif);font-variant-numeric:tabular-nums}`,
  `@media (prefers-color-scheme:dark){.lp{${tones(DARK)}}}`,
  `@media print{.lp{${tones({ ...LIGHT, ...PRINT })};print-color-adjust:exact}}`,
  ...ROLES.map(lookOf),
  '.lp-area{fill:var(--f);stroke:var(--l);stroke-width:var(--w);vector-effect:non-scaling-stroke;stroke-linejoin:round}',
  '.lp-line{fill:none;stroke:var(--l);stroke-width:var(--w);stroke-dasharray:var(--d);vector-effect:non-scaling-stroke;stroke-linejoin:round;stroke-linecap:butt}',
  '.lp-texture{stroke:none}',
  '.lp-mark{stroke:var(--lp-ink);fill:none;stroke-width:1}',
  '.lp-dot{fill:var(--lp-ink);stroke:none}',
  '.lp-onmetal{stroke:var(--lp-paper);fill:none;stroke-width:1.2}',
  '.lp-danger{stroke:var(--lp-overlap);fill:none;stroke-width:1.8}',
  '.lp-haze{fill:var(--f);fill-opacity:.17;stroke:none}',
  '.lp-arrow{fill:var(--l);stroke:none}',
  '.lp-text{fill:var(--t)}',
  '.lp-rimmed{paint-order:stroke;stroke:var(--lp-paper);stroke-width:3.5px;stroke-linejoin:round}',
  '.lp-bold{font-weight:650}',
  '.lp-dashed{stroke-dasharray:3 3}',
  '.lp-strong{stroke-width:calc(var(--w)*1.8)}',
  '.lp-faint{opacity:.45}',
].join('\n');
