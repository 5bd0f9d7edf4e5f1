/**
 * Finds the Chromium that browser tests drive. Run as a script it installs Debian's own when there is none and
 * it may; otherwise it says what to install and fails: a browser test that is skipped proves nothing.
 */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const PLACES = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

const runs = (path: string): boolean => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/**
 * Path of a Chromium, or null. `CHROMIUM` wins; when it is set and leads nowhere, nothing else is tried:
 * whoever sets it means that one.
 */
export function findBrowser(env: Readonly<Record<string, string | undefined>> = process.env): string | null {
  const named = env.CHROMIUM;
  if (named !== undefined && named !== '') return runs(named) ? named : null;
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const candidates = [...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))), ...PLACES];
  return candidates.find(runs) ?? null;
}

const WANTED =
  'Browser tests need Chromium. Install it (Debian: `apt-get install chromium`; elsewhere any Chromium or Chrome) ' +
  'or set CHROMIUM to the path of one.';

/** Path of the browser for tests. Throws with what to install when there is none. */
export function browserPath(): string {
  const found = findBrowser();
  if (found !== null) return found;
  const named = process.env.CHROMIUM;
  throw new Error(named ? `CHROMIUM=${named} is not a program that can be run. ${WANTED}` : WANTED);
}

function installOnDebian(): void {
  if (!existsSync('/etc/debian_version') || process.getuid?.() !== 0 || process.env.CHROMIUM) return;
  console.log('No Chromium found: installing the one of Debian.');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const args of [['update'], ['install', '-y', '--no-install-recommends', 'chromium']]) {
    const run = spawnSync('apt-get', ['-q', ...args], { stdio: ['ignore', 'ignore', 'inherit'], env });
    if (run.status !== 0) return;
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  if (findBrowser() === null) installOnDebian();
  try {
    console.log(`browser: ${browserPath()}`);
  } catch (error) {
    console.error((error as Error).message);
    process.exit(1);
  }
}
