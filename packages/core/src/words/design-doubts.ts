type Doubt =
  | 'slender'
  | 'missed'
  | 'no-coupon'
  | 'untold'
  | 'may-close'
  | 'few-cells'
  | 'edge-soft'
  | 'edge-hard'
  | 'skin-folds'
  | 'shut-air'
  | 'vents-choke';

/** What is doubtful about a design to print: one sentence, and what to do. */
export const designDoubtText = (doubt: Doubt): string =>
  ({
    'no-coupon':
      'Modulus and shape of the law are bands of a filament, not of your print: print and press coupons (lastinch stop coupons) before you trust a force.',
    untold:
      'The readings of your print did not tell every number of its law: the others are taken, as wide as before.',
    slender: 'Higher than one and a half times its width it may buckle: make it squat, or guide it.',
    missed: 'The wanted curve is not met by more than a twentieth of its force.',
    'may-close':
      'With the softer or denser prints of the band the lattice is closed before the end of the curve: metal behind it has to take the rest.',
    'few-cells':
      'Fewer than three cells across: the law of an endless lattice does not hold. Take a smaller cell.',
    'edge-soft':
      'Much of it is at the least density that walls allow: a larger cell, thinner walls or less width would be softer.',
    'edge-hard': 'Much of it is at the most density: more width or a harder filament would be harder.',
    'skin-folds':
      'The skin folds into rings within this crush, and creases at the same place each time: it counts between a bare tube and one that the lattice holds all over. Look at it often, or leave it out.',
    'shut-air':
      'Without vents the skin shuts air in, as far as it is tight: the curve counts half of it. Vents make it sure.',
    'vents-choke':
      'At 1 m/s these vents do not let the air out: in a hit it is as good as shut in. More or larger holes.',
  })[doubt];
