import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AS_MEASURED, bad, checkRig, good, type Result, unitsOfRig } from '@lastinch/core';
import { type ExitCode, readRigFile, refuse } from '../asked.ts';
import { showInBrowser } from '../hosts/browser.ts';
import { writeLines } from '../hosts/output.ts';
import { type ServedWorkbench, serveWorkbench } from '../hosts/workbench-server.ts';
import { checkPage } from '../terminal/check-page.ts';
import { paperFor } from '../terminal/paper.ts';
import { setupLines } from '../terminal/setup-lines.ts';

export interface OpenOptions {
  readonly port?: string;
  readonly open: boolean;
}

const USUAL_PORT = 4646;
/** How many ports after the usual one are tried before any free one is taken. */
const MORE_PORTS = 20;

/** `lastinch open FILE`: the verdict in the terminal, then the workbench on this machine until it is stopped. */
export async function open(file: string, options: OpenOptions): Promise<ExitCode> {
  const port = portAsked(options.port);
  if (!port.ok) return refuse(port.problems);
  if (file === '-')
    return refuse([
      {
        code: 'ask-option',
        where: { key: 'FILE' },
        found: '-',
        accepted: 'a file: the workbench saves to the place it read from',
      },
    ]);
  const rig = await readRigFile(file);
  if (!rig.ok) return refuse(rig.problems);
  const checked = checkRig(rig.value, { setup: AS_MEASURED });
  if (!checked.ok) return refuse(checked.problems);
  const folder = builtWorkbench();
  if (folder === null) {
    process.stderr.write('The workbench is not built. Run `npm run build` in the source folder first.\n');
    return 2;
  }

  const paper = paperFor(process.stdout, process.env, unitsOfRig(rig.value));
  writeLines([...checkPage(rig.value, checked.value, null, paper), ...setupLines(rig.value, file, paper)]);
  const served = await serveSomewhere(folder, file, port.value);
  if (!served.ok) return refuse(served.problems);
  writeLines(['', `Workbench: ${served.value.address}`, 'Only this machine can reach it. Ctrl+C stops it.']);
  if (options.open) showInBrowser(served.value.address);
  await new Promise<void>((stopped) => {
    process.once('SIGINT', () => stopped());
    process.once('SIGTERM', () => stopped());
  });
  await served.value.close();
  return 0;
}

function portAsked(text: string | undefined): Result<number | null> {
  if (text === undefined) return good(null);
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return port <= 65_535
    ? good(port)
    : bad({
        code: 'ask-option',
        where: { key: '--port' },
        found: text,
        accepted: 'a number from 1024 to 65535, or 0 for any free port',
      });
}

/** The port that was asked for and no other; without one, the usual port or the next that is free. */
async function serveSomewhere(
  folder: string,
  file: string,
  asked: number | null,
): Promise<Result<ServedWorkbench>> {
  const ports =
    asked !== null ? [asked] : [...Array.from({ length: MORE_PORTS }, (_, more) => USUAL_PORT + more), 0];
  for (const port of ports) {
    try {
      return good(await serveWorkbench(folder, file, port));
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
      if (asked !== null)
        return bad({
          code: 'ask-port-taken',
          where: { key: '--port' },
          found: `${port}`,
          accepted: 'a free port from 1024 to 65535, 0 for any, or no --port at all',
        });
    }
  }
  throw new Error('no port could be opened');
}

/** The folder with the built workbench: beside the packaged program, or in the source tree. */
function builtWorkbench(): string | null {
  const here = dirname(fileURLToPath(import.meta.url));
  const places = [join(here, 'workbench'), join(here, '../../app/dist'), join(here, '../../../app/dist')];
  return places.find((place) => existsSync(join(place, 'index.html'))) ?? null;
}
