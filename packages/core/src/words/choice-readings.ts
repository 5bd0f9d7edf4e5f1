type Name = (...slots: string[]) => string;

const SIZES: Readonly<Record<string, string>> = {
  stopSpacer: 'stop spacer',
  seatAndStopDrop: 'seat and stop drop',
  springSpacer: 'spring spacer',
  strapLength: 'strap length',
};

/** Which of a list, and which end of a range. */
const PARTS: Readonly<Record<string, string>> = {
  from: ', the least of a range',
  to: ', the most of a range',
  step: ', one step of a range',
};
const nth = (index: string): string => `, ${Number(index) + 1} of the list`;

/** Names of what may be chosen, by the pattern of its key: `*` takes one step of the path. */
export const CHOICE_READINGS: readonly (readonly [string, Name])[] = [
  ...['front', 'rear'].flatMap((end): (readonly [string, Name])[] => [
    ...Object.entries(SIZES).flatMap(([size, name]) =>
      sizeNames(`choices.${end}.${size}`, () => `${end} ${name} to choose`),
    ),
    ...sizeNames(`choices.${end}.notch.*`, (contact = '') => `${end} notch at ${contact} to choose`),
    ...['trail', 'road'].flatMap((trim): (readonly [string, Name])[] => {
      const key = `choices.${end}.${trim}.tyrePressure`;
      const name = `${end} tyre pressure to choose in ${trim} trim`;
      return [
        [key, () => name],
        [`${key}.*`, (index = '0') => `${name}${nth(index)}`],
      ];
    }),
  ]),
  ['choices.liftAtMost', () => 'highest lift accepted'],
  ['choices.drive.*.speed', (index = '0') => `speed to be good at${nth(index)}`],
  ['choices.drive.*.perDay', (index = '0') => `distance a day${nth(index)}`],
  ['choices.fastest.from', () => 'slowest speed looked at'],
  ['choices.fastest.to', () => 'fastest speed looked at'],
];

/** All sizes of a list share one name as readings; each field has its own. */
function sizeNames(key: string, name: Name): readonly (readonly [string, Name])[] {
  return [
    [key, name],
    [`${key}.sizes`, name],
    [`${key}.sizes.*`, (...slots) => `${name(...slots)}${nth(slots[key.includes('*') ? 1 : 0] ?? '0')}`],
    ...Object.entries(PARTS).map(
      ([part, said]) => [`${key}.${part}`, (...slots: string[]) => `${name(...slots)}${said}`] as const,
    ),
  ];
}
