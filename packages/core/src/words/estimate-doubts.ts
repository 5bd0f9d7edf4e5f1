type Doubt = 'hard' | 'slender' | 'flat' | 'stepped' | 'no-oil' | 'past-ideal' | 'foam' | 'foam-dense';

/** What is doubtful about an estimated stop: one sentence, always ending in what to do. */
export const estimateDoubtText = (doubt: Doubt): string =>
  ({
    hard: 'As hard as this a durometer hardly tells stiffness: the relations part by a factor of two and more. Press it.',
    slender:
      'Higher than one and a half times its width it may buckle, and then gives far less. Guide it, or make it squat.',
    flat: 'Flatter than its law was checked for: beyond a strain of 0.15 it may be a tenth off. Press it.',
    stepped:
      'Where steps meet, one holds the other only partly: the band runs from not at all to fully. Press it.',
    'no-oil':
      'Gas alone: the oil of such a stop adds force with speed. Nitrogen only; never drill, weld or heat it.',
    foam: 'By its density a foam is known to a factor of several: cells, solid and skin are not told by it. It widens and goes deeper than these laws let it: press it before you trust a force.',
    'foam-dense':
      'Denser than three tenths of solid, where the laws of cells are no longer known to hold: a guess at the size of the force, no more.',
    'past-ideal': 'Above about 100 bar gas is stiffer than the ideal law: the last of the stroke gives more.',
  })[doubt];
