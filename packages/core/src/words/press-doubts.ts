type Doubt =
  | 'few-points'
  | 'no-touch-read'
  | 'past-full-scale'
  | 'low-on-the-gauge'
  | 'no-way-back'
  | 'way-back-incomplete'
  | 'very-stiff'
  | 'very-soft';

/** What is doubtful about a press test, and what would settle it: one sentence. */
export const doubtText = (doubt: Doubt): string =>
  ({
    'few-points':
      'Fewer than eight readings after touch: between them the curve is a guess. Read every 5 mm or finer.',
    'no-touch-read':
      'No reading before the stop was touched: the first one is taken as touch, and what the gauge shows at rest is unknown.',
    'past-full-scale':
      'The gauge was at its end: the last forces are at least what is written, perhaps more.',
    'low-on-the-gauge':
      'All readings lie in the lowest tenth of the gauge, where a press gauge is poor: use a load cell or a bathroom scale.',
    'no-way-back': 'The way back was not read: what the stop loses is unknown and will be assumed.',
    'way-back-incomplete':
      'The way back ends before the stop was free: what it loses is that of the deeper part only.',
    'very-stiff': 'Stiffer than any stop.',
    'very-soft': 'Softer than any stop.',
  })[doubt];
