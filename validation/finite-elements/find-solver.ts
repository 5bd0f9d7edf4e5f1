import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** What has to be there to work the decks out again, and the Debian package of each. */
export interface Need {
  readonly name: string;
  readonly debian: string;
  /** Called with these words it ends without an error. */
  readonly call: readonly [program: string, ...words: string[]];
}

/** `CCX` and `PYTHON` name other programs; whoever sets them means those. */
export function needsOf(env: Readonly<Record<string, string | undefined>>): readonly Need[] {
  const python = env.PYTHON || 'python3';
  return [
    { name: 'CalculiX (ccx)', debian: 'calculix-ccx', call: [env.CCX || 'ccx', '-v'] },
    { name: 'Python 3', debian: 'python3', call: [python, '-c', ''] },
    { name: 'NumPy', debian: 'python3-numpy', call: [python, '-c', 'import numpy'] },
    { name: 'SciPy', debian: 'python3-scipy', call: [python, '-c', 'import scipy.sparse.linalg'] },
  ];
}

const answers = ({ call: [program, ...words] }: Need): boolean => {
  const { error, signal } = spawnSync(program, words, { stdio: 'ignore', timeout: 60_000 });
  // ccx answers `-v` with a version and a status of its own; that it starts is what counts.
  if (error !== undefined || signal !== null) return false;
  return words[0] === '-v' || spawnSync(program, words, { stdio: 'ignore' }).status === 0;
};

export const missingOf = (needs: readonly Need[]): readonly Need[] => needs.filter((need) => !answers(need));

/** One line for each thing that is missing, and how to come by all of them. */
export function missingText(missing: readonly Need[]): string {
  return [
    'The finite-element decks cannot be worked out again here. Missing:',
    ...missing.map(({ name, call }) => `- ${name} (\`${call[0]}\` was tried)`),
    `Install them (Debian: \`apt-get install ${missing.map(({ debian }) => debian).join(' ')}\`), or set CCX and ` +
      'PYTHON to the paths of the programs.',
  ].join('\n');
}

/** Installs Debian's packages where that is Debian and allowed; does nothing elsewhere. */
export function installOnDebian(missing: readonly Need[], env: NodeJS.ProcessEnv): void {
  const named = missing.filter(({ call }) => env.CCX !== call[0] && env.PYTHON !== call[0]);
  if (named.length === 0 || !existsSync('/etc/debian_version') || process.getuid?.() !== 0) return;
  const packages = named.map(({ debian }) => debian);
  console.log(`Installing from Debian: ${packages.join(' ')}`);
  for (const words of [['update'], ['install', '-y', '--no-install-recommends', ...packages]]) {
    const run = spawnSync('apt-get', ['-q', ...words], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    if (run.status !== 0) return;
  }
}
