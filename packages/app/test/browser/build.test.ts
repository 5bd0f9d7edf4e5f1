import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launch, type Opened, openPage, type Served, serveDemo } from './bench.ts';

let browser: Browser;
let served: Served;
let opened: Opened;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
});
beforeEach(async () => {
  served = await serveDemo();
  opened = await openPage(browser, served.address, { width: 1280, height: 900 }, 'build');
});
afterEach(async () => {
  expect(opened.complaints, 'the console stays silent').toEqual([]);
  expect(opened.foreign, 'nothing is asked for elsewhere').toEqual([]);
  await opened.close();
  served.stop();
});

const sheet = (page: Page) => page.getByRole('article', { name: /^Build sheet of/ });
async function write(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Write the sheet' }).click();
  await sheet(page).waitFor({ timeout: 120_000 });
}

describe('the build sheet in the workbench', () => {
  it('is written away from the page, shown in full, and taken along as one file', async () => {
    const { page } = opened;
    await write(page);
    const said = await sheet(page).textContent();
    for (const title of ['What is built, and why', 'Order of work', 'Inspection card', 'Cautions'])
      expect(said).toContain(title);
    expect(said).toMatch(/Lower coil seat and stop together on the frame by 1 in/);

    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /Take it along/ }).click(),
    ]);
    expect(file.suggestedFilename()).toBe('build-soft-stop-seat-down.html');
    const text = readFileSync(await file.path(), 'utf8');
    expect(text).toMatch(/^<!doctype html>/);
    // Same sheet: each caution of the screen stands in the file.
    const warnings = await sheet(page).locator('p').filter({ hasText: 'not a certificate' }).allInnerTexts();
    expect(warnings.length).toBeGreaterThan(0);
    for (const warning of warnings) expect(text).toContain(warning);
  });

  it('says that it is old after another setup was chosen, and prints only itself', async () => {
    const { page } = opened;
    await write(page);
    await page.getByLabel('Proposed').first().selectOption('road-trim');
    await page.getByText('What is shown is from before the last change.').waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await sheet(page).isVisible()).toBe(true);
    expect(await page.getByRole('button', { name: 'Write it again' }).isVisible()).toBe(false);
    expect(await page.getByRole('navigation', { name: 'Steps of the job' }).isVisible()).toBe(false);
    expect(await page.getByRole('complementary', { name: /Verdicts/ }).isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
  });
});
