import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import { type Browser, chromium, type Page } from 'playwright-core';
import { browserPath } from '../../../../scripts/find-browser.ts';

const HOUSE = join(import.meta.dirname, '../../../..');

/** What a Chromium without a network and without a display needs. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const launch = (): Promise<Browser> => chromium.launch({ executablePath: browserPath(), args: FLAGS });

/** A copy of the demo rig, served by the built command line as `lastinch open` does. */
export interface Served {
  readonly address: string;
  readonly file: string;
  readonly stop: () => void;
}

/** @param edit – what is changed in its text before it is served */
export async function serveDemo(edit = (text: string): string => text): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'lastinch-app-'));
  const file = join(folder, 'ochre.rig.yaml');
  writeFileSync(file, edit(readFileSync(join(HOUSE, 'examples/ochre/ochre.rig.yaml'), 'utf8')));
  const command = join(HOUSE, 'packages/cli/dist/lastinch.js');
  const child = spawn(process.execPath, [command, 'open', file, '--no-open', '--port', '0']);
  const address = await addressOf(child);
  const stop = (): void => {
    child.kill('SIGTERM');
    rmSync(folder, { recursive: true, force: true });
  };
  return { address, file, stop };
}

/** Little to choose from, on one course: a study of seconds. Invented, as the demo rig is. */
export const shortChoices = (text: string): string => `${text.replace(/^choices:[\s\S]*/m, '')}choices:
  money: EUR
  budget: 150
  front:
    stop:
      soft: { price: 95, hours: 1 }
    stopSpacer: { sizes: [1/2 in ± 1/32], price: 12, hours: 1 }
    trail:
      shockSetting: [trail, road]
  rear:
    stop:
      soft: { price: 95, hours: 1 }
  drive:
    - { course: whoops, trim: trail }
`;

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let said = '';
    const listen = (part: Buffer): void => {
      said += part.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)?.[0];
      if (address !== undefined) found(address);
    };
    child.stdout?.on('data', listen);
    child.stderr?.on('data', listen);
    child.once('exit', (code) => failed(new Error(`lastinch open ended with ${code} and said:\n${said}`)));
  });
}

/** A page on the workbench that keeps what it complained about and what it asked for. */
export interface Opened {
  readonly page: Page;
  /** Errors and warnings of the console, refusals of the content policy among them. */
  readonly complaints: readonly string[];
  /** Addresses asked for outside of the server. */
  readonly foreign: readonly string[];
  readonly close: () => Promise<void>;
}

export async function openPage(
  browser: Browser,
  address: string,
  view: { readonly width: number; readonly height: number } = { width: 1280, height: 900 },
  step = 'measure',
): Promise<Opened> {
  const context = await browser.newContext({ viewport: view, locale: 'en-GB', timezoneId: 'UTC' });
  const page = await context.newPage();
  const complaints: string[] = [];
  const foreign: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !url.startsWith('blob:') && !url.startsWith('data:')) foreign.push(url);
  });
  await page.goto(`${address}#${step}`);
  await page.getByRole('heading', { level: 2 }).first().waitFor();
  return { page, complaints, foreign, close: () => context.close() };
}

/** The verdict word under one of the two compared setups. */
export const verdictOf = (page: Page, lane: 'On the rig now' | 'Proposed') =>
  page
    .getByRole('region', { name: 'Setups compared' })
    .locator(`[data-lane="${lane === 'Proposed' ? 'proposed' : 'now'}"] p`);

/** The text field of one reading. */
export const reading = (page: Page, key: string) => page.locator(`main input[name="${key}"]`);

interface AxeReport {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

/** What axe finds on a page as it stands. */
export async function faultsOf(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const report = await page.evaluate(() =>
    (window as unknown as { axe: { run(): Promise<AxeReport> } }).axe.run(),
  );
  return report.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`),
  );
}
