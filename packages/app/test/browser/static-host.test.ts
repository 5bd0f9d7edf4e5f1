import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, type Opened, openPage, reading } from './bench.ts';

const BUILT = join(import.meta.dirname, '../../dist');
const OCHRE = join(import.meta.dirname, '../../../../examples/ochre/ochre.rig.yaml');
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

/** Files of the built workbench below a folder of some server, and nothing else: no headers, no rig. */
function staticHost(): Promise<Server> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://host').pathname.replace(/^\/bench\//, '/');
    try {
      const file = join(BUILT, normalize(path === '/' ? '/index.html' : path));
      response.setHeader('Content-Type', TYPES[extname(file)] ?? 'application/octet-stream');
      response.end(readFileSync(file));
    } catch {
      response.writeHead(404).end();
    }
  });
  return new Promise((listening) => {
    server.listen(0, '127.0.0.1', () => listening(server));
  });
}

let browser: Browser;
let server: Server;
let address: string;
beforeAll(async () => {
  browser = await launch();
  server = await staticHost();
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/bench/`;
});
afterAll(async () => {
  await browser.close();
  server.close();
});

/** A browser that cannot write files by itself: it opens through a form field and saves by download. */
async function withoutPickers(): Promise<Opened> {
  const opened = await openPage(browser, address);
  await opened.page.addInitScript(() => {
    for (const name of ['showOpenFilePicker', 'showSaveFilePicker'])
      delete (window as unknown as Record<string, unknown>)[name];
  });
  await opened.page.reload();
  await reading(opened.page, 'front.stop.gap').waitFor();
  return opened;
}

/** Compressed size of everything that has to arrive before the first view stands, in bytes. */
const firstScript = (): number =>
  [...readFileSync(join(BUILT, 'index.html'), 'utf8').matchAll(/assets\/[^"]+\.js/g)]
    .map(([file]) => gzipSync(readFileSync(join(BUILT, file))).length)
    .reduce((sum, size) => sum + size, 0);

describe('the workbench on a plain server of files', () => {
  it('needs less than 250 kB of compressed script for its first view', () => {
    expect(firstScript()).toBeLessThan(250_000);
  });

  it('starts on the demo, says that it is saved nowhere, and rides', async () => {
    const { page, complaints, foreign, close } = await openPage(browser, address, undefined, 'ride');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Ochre');
    expect(await page.getByRole('banner').textContent()).toContain('demo');
    await page.getByRole('region', { name: 'Peaks at each corner' }).waitFor();
    expect(foreign).toEqual([]);
    // The one question that a plain server cannot answer: whether it has a rig. The browser logs its 404.
    expect(complaints.filter((complaint) => !complaint.includes('404'))).toEqual([]);
    await close();
  });

  it('saves by download, with what was typed and every comment', async () => {
    const { page, close } = await withoutPickers();
    await reading(page, 'front.contacts.sump.gap').fill('4 1/8 in ± 1/16');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    const saved = await download;
    expect(saved.suggestedFilename()).toBe('ochre.rig.yaml');
    const text = readFileSync(await saved.path(), 'utf8');
    expect(text).toBe(readFileSync(OCHRE, 'utf8').replace('gap: 4 in ± 1/16', 'gap: 4 1/8 in ± 1/16'));
    await close();
  });

  it('opens a file, and says what is wrong with one that is no rig', async () => {
    const { page, close } = await withoutPickers();
    const open = async (name: string, text: string): Promise<void> => {
      await page.getByRole('button', { name: 'More', exact: true }).click();
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Open a rig file…' }).click();
      await (await chooser).setFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) });
    };
    await open('other.rig.yaml', readFileSync(OCHRE, 'utf8').replace('name: Ochre', 'name: Umber'));
    await page.getByRole('heading', { level: 1, name: 'Umber' }).waitFor();
    await open('shopping.yaml', 'bread: 2\nmilk: 1\n');
    await page.getByText('This rig file cannot be read yet').waitFor();
    expect(await page.getByRole('status').first().textContent()).toContain('shopping.yaml');
    await close();
  });

  it('asks before it is closed with changes, and not without', async () => {
    const { page, close } = await openPage(browser, address);
    const asked: string[] = [];
    page.on('dialog', (dialog) => {
      asked.push(dialog.type());
      void dialog.accept();
    });
    await page.reload();
    expect(asked).toEqual([]);
    await reading(page, 'front.stop.gap').fill('2 3/8 in');
    await page.reload();
    expect(asked).toEqual(['beforeunload']);
    await close();
  });
});
