import type { IForbiddenRuleType } from 'dependency-cruiser';
import { type RoomList, surfaceOf } from './room-list.ts';

const PURE = ['core', 'picture', 'paper', 'mesh'];
/** Tests that every host of a contract runs, so that they are written once. */
const CONTRACT = '-contract\\.ts$';
const literal = (path: string): string => path.replace(/[.\\/+*?[\](){}^$|]/g, '\\$&');
const exactly = (paths: readonly string[]): string[] => paths.map((path) => `^${literal(path)}$`);

/** Files of the packages that `by` may import. A border's surface is left out unless `by` is named for it. */
function openTo(root: string, list: RoomList, by: string | null, packages: readonly string[]): string[] {
  return packages.flatMap((name) =>
    [...surfaceOf(root, name)]
      .filter(([subpath]) => {
        const seenBy = list.borders[subpath.replace(/^\.\//, '')];
        return seenBy === undefined || by === null || seenBy.includes(by);
      })
      .map(([, file]) => file),
  );
}

/**
 * The rules of the house, made from `rooms.json` and the `exports` of each package.
 * Everything is refused that is not listed: a rule names where an import comes from and all that it may reach.
 */
export function roomRules(root: string, list: RoomList): IForbiddenRuleType[] {
  const rules: IForbiddenRuleType[] = [];
  const refuse = (name: string, comment: string, from: object, to: object): void => {
    rules.push({ name, comment, severity: 'error', from, to } as IForbiddenRuleType);
  };

  refuse('no-circles', 'Nothing may depend on itself by a detour.', {}, { circular: true });
  refuse('must-resolve', 'An import must lead to a file.', {}, { couldNotResolve: true });
  refuse(
    'tests-are-leaves',
    'Nothing imports a test.',
    { pathNot: '/test/' },
    { path: '^(packages/[^/]+|scripts|validation)/test/' },
  );

  for (const [name, sees] of Object.entries(list.packages)) {
    refuse(
      `package-${name}`,
      `${name} may import ${sees.length > 0 ? `the public surface of ${sees.join(', ')}` : 'no other package'}.`,
      { path: `^packages/${name}/`, pathNot: `^packages/${name}/test/` },
      { path: '^packages/', pathNot: [`^packages/${name}/`, ...exactly(openTo(root, list, name, sees))] },
    );
    refuse(
      `package-${name}-test`,
      `Tests of ${name} may import ${name}, and the public surface and the contracts of ${sees.join(', ') || 'nothing else'}.`,
      { path: `^packages/${name}/test/` },
      {
        path: '^packages/',
        pathNot: [
          `^packages/${name}/`,
          ...exactly(openTo(root, list, null, sees)),
          ...sees.map((other) => `^packages/${other}/test/.*${CONTRACT}`),
        ],
      },
    );
  }
  refuse(
    'outside-sees-surfaces',
    'Scripts, validation and benches see public surfaces only.',
    { path: '^(scripts|validation|bench|examples)/' },
    {
      path: '^packages/',
      pathNot: exactly(openTo(root, list, null, Object.keys(list.packages))),
    },
  );
  refuse(
    'packages-stand-alone',
    'A package never reaches out of packages/ into the workshop; the workbench may carry an example as its demo.',
    { path: '^packages/[^/]+/src/' },
    { path: '^(scripts|validation|bench|examples)/', pathNot: '^examples/.*\\.ya?ml$' },
  );

  for (const [name, room] of Object.entries(list.rooms)) {
    refuse(
      `room-${name}`,
      `${name} may import ${room.sees.length > 0 ? room.sees.join(', ') : 'nothing'}.`,
      { path: `^packages/core/src/${name}/` },
      {
        path: '^packages/core/',
        pathNot: `^packages/core/src/(${[name, ...room.sees].join('|')})/`,
      },
    );
  }
  refuse(
    'room-unlisted',
    'Every folder of the core is a room of rooms.json.',
    {
      path: '^packages/core/src/[^/]+/',
      pathNot: `^packages/core/src/(${Object.keys(list.rooms).join('|')})/`,
    },
    {},
  );
  for (const border of Object.keys(list.borders)) {
    refuse(
      `border-${border}`,
      `Nothing in the core imports ${border}: formats never leak inwards.`,
      { path: '^packages/core/src/', pathNot: `^packages/core/src/${border}/` },
      { path: `^packages/core/src/${border}/` },
    );
  }

  for (const name of PURE) {
    refuse(
      `pure-${name}`,
      `${name} runs anywhere: no built-in module of Node.`,
      { path: `^packages/${name}/src/` },
      { dependencyTypes: ['core'] },
    );
    refuse(
      `declared-${name}`,
      `What ${name} imports stands under "dependencies" of its own package.json.`,
      { path: `^packages/${name}/src/` },
      { dependencyTypes: ['npm-no-pkg', 'npm-unknown', 'npm-dev'] },
    );
  }
  return rules;
}
