/** Names of doubts about a plate, as `plates/` finds them. */
type Doubt = 'edge-thin' | 'holes-close' | 'bend-tight' | 'bend-length';

export const plateDoubtText = (doubt: Doubt): string => DOUBTS[doubt];

const DOUBTS: Readonly<Record<Doubt, string>> = {
  'edge-thin':
    'A hole is nearer to the edge than 1.2 times its width (EN 1993-1-8, Table 3.3): the rim may tear out. Move it or make the plate larger.',
  'holes-close':
    'Two holes are nearer than 2.2 times their width, middle to middle (EN 1993-1-8, Table 3.3): the web between them may tear.',
  'bend-tight':
    'The inside radius is less than the thickness: plate may crack on the outside of the bend. Bend across the grain, with a larger radius, and look at it.',
  'bend-length':
    'The flat length of a bend is known to about an eighth of the thickness: bend a strip of the same plate first, measure it, then cut.',
};
