type Doubt = 'slender' | 'missed' | 'no-coupon' | 'may-close' | 'few-cells' | 'edge-soft' | 'edge-hard';

/** What is doubtful about a design to print: one sentence, and what to do. */
export const designDoubtText = (doubt: Doubt): string =>
  ({
    'no-coupon':
      'Modulus and shape of the law are bands of a filament, not of your print: press a coupon or the first stop (lastinch stop fit) before you trust a force.',
    slender: 'Higher than one and a half times its width it may buckle: make it squat, or guide it.',
    missed: 'The wanted curve is not met by more than a twentieth of its force.',
    'may-close':
      'With the softer or denser prints of the band the lattice is closed before the end of the curve: metal behind it has to take the rest.',
    'few-cells':
      'Fewer than three cells across: the law of an endless lattice does not hold. Take a smaller cell.',
    'edge-soft':
      'Much of it is at the least density that walls allow: a larger cell, thinner walls or less width would be softer.',
    'edge-hard': 'Much of it is at the most density: more width or a harder filament would be harder.',
  })[doubt];
