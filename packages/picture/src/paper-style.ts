import { ROLES, type Role } from './role.ts';
import { LIGHT, LOOKS, PRINT, type Tone } from './svg-style.ts';

const onPaper = (tone: Tone | 'none'): string =>
  tone === 'none' ? 'none' : ({ ...LIGHT, ...PRINT }[tone] ?? LIGHT[tone]);

/** A role on paper: its tones written out for areas, lines, arrows, hazes and words. */
const paperLook = (role: Role): string => {
  const { fill = 'none', line = 'ink', width = 1, dash = 'none', words = 'ink' } = LOOKS[role];
  const own = `.lp-${role}`;
  const stroke = `stroke:${onPaper(line)};stroke-width:${width};stroke-linejoin:round`;
  return [
    `.lp-area${own}{fill:${onPaper(fill)};${stroke}}`,
    `.lp-line${own}{fill:none;${stroke};stroke-dasharray:${dash}}`,
    `.lp-haze${own}{fill:${onPaper(fill)};fill-opacity:.17;stroke:none}`,
    `.lp-arrow${own}{fill:${onPaper(line)};stroke:none}`,
    `.lp-text${own}{fill:${onPaper(words)}}`,
    `.lp-strong${own}{stroke-width:${width * 1.8}}`,
  ].join('\n');
};

/**
 * The style sheet of a picture that is printed: the tones of paper written out, for readers that know no custom
 * properties, and white whatever the screen prefers.
 */
export const paperStyle: string = [
  '.lp{font-family:"Liberation Sans","DejaVu Sans",Arial,sans-serif}',
  ...ROLES.map(paperLook),
  '.lp-texture{stroke:none}',
  `.lp-mark{stroke:${onPaper('ink')};fill:none;stroke-width:1}`,
  `.lp-dot{fill:${onPaper('ink')};stroke:none}`,
  `.lp-onmetal{stroke:${onPaper('paper')};fill:none;stroke-width:1.2}`,
  `.lp-danger{stroke:${onPaper('overlap')};fill:none;stroke-width:1.8}`,
  `.lp-rimmed{paint-order:stroke;stroke:${onPaper('paper')};stroke-width:3.5;stroke-linejoin:round}`,
  '.lp-bold{font-weight:bold}',
  '.lp-dashed{stroke-dasharray:3 3}',
  '.lp-faint{opacity:.45}',
].join('\n');
