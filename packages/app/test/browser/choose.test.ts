import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launch, type Opened, openPage, type Served, serveDemo, shortChoices } from './bench.ts';

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
  served = await serveDemo(shortChoices);
  opened = await openPage(browser, served.address, { width: 1280, height: 900 }, 'choose');
  await opened.page.getByLabel('Rigs within your tolerances').selectOption('4');
});
afterEach(async () => {
  expect(opened.complaints, 'the console stays silent').toEqual([]);
  expect(opened.foreign, 'nothing is asked for elsewhere').toEqual([]);
  await opened.close();
  served.stop();
});

const button = (name: string | RegExp) => opened.page.getByRole('button', { name });
const list = () => opened.page.getByRole('region', { name: 'Candidates that stand' });
const rows = () => list().locator('tbody tr');
const looked = () => opened.page.locator('#choose-chosen');
const found = async (): Promise<void> => {
  await button('Find them').click();
  await rows().first().waitFor();
};

describe('the best few, in the workbench', () => {
  it('are found in workers, as a picture and a table of the same candidates', async () => {
    await found();
    const names = await rows().locator('th').allTextContents();
    expect(names.length).toBeGreaterThan(1);
    expect((await list().textContent()) ?? '').not.toMatch(/NaN|undefined|unknown/);
    const marks = opened.page.locator('svg[aria-labelledby^="choose-scatter"] [data-name]');
    expect(await marks.count()).toBe(names.length);
    expect(await opened.page.getByRole('heading', { name: 'Why it stands' }).count()).toBe(1);
  });

  it('a press on a row or on a mark looks at it in both, also by keyboard', async () => {
    await found();
    const second = rows().nth(1).getByRole('button');
    await second.focus();
    await opened.page.keyboard.press('Enter');
    expect(await second.getAttribute('aria-pressed')).toBe('true');
    expect(await looked().textContent()).toMatch(/^B: /);
    const chosen = await rows().nth(0).getAttribute('data-chosen');
    expect(chosen).toBe('false');
    // The mark of the first, in the picture.
    const first = opened.page
      .locator('svg[aria-labelledby^="choose-scatter"] circle[data-name]:not(.lp-strong)')
      .first();
    await first.scrollIntoViewIfNeeded();
    const box = await first.boundingBox();
    if (box === null) throw new Error('no mark to press');
    await opened.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    expect(await looked().textContent()).not.toMatch(/^B: /);
  });

  it('other axes, and edges of what is asked for, change picture and table together', async () => {
    await found();
    const { page } = opened;
    await page.getByLabel('Across', { exact: true }).selectOption({ label: 'Price' });
    await page.getByLabel('Up', { exact: true }).selectOption({ label: 'Hours' });
    expect(await page.getByRole('img', { name: /^Candidates by Price, EUR and Hours, h/ }).count()).toBe(1);
    const price = page.getByLabel('Price at most', { exact: true });
    await price.selectOption({ index: (await price.locator('option').count()) - 1 });
    await page.getByText(/ are within what is asked for/).waitFor();
    const out = await rows().locator('xpath=self::*[@data-in="false"]').count();
    expect(out).toBeGreaterThan(0);
    expect(await page.locator('svg[aria-labelledby^="choose-scatter"] [data-name].lp-faint').count()).toBe(
      out,
    );
  });

  it('a row opens as the proposed setup everywhere else, is saved with the rig, and undo takes it back', async () => {
    await found();
    const { page } = opened;
    await rows().filter({ hasText: 'rear stop soft' }).first().getByRole('button').click();
    await button('Propose it in trail trim').click();
    const proposed = page.getByRole('region', { name: 'Setups compared' }).getByLabel('Proposed');
    const name = await proposed.inputValue();
    expect(name).toMatch(/^choice-\d+-trail$/);
    // The answer is not old because of it.
    expect(await page.getByText('What is shown is from before the last change.').count()).toBe(0);
    await button('Propose it in trail trim').click();
    expect(await proposed.locator('option').filter({ hasText: 'choice-' }).count()).toBe(1);
    await page
      .getByRole('navigation', { name: 'Steps of the job' })
      .getByRole('link', { name: /Travel/ })
      .click();
    await page.getByRole('heading', { name: new RegExp(`What is proposed: ${name}`) }).waitFor();
    await page.keyboard.press('Control+s');
    await page.getByText(/^Saved/).waitFor();
    const text = readFileSync(served.file, 'utf8');
    expect(text).toContain(name);
    await page.keyboard.press('Control+z');
    expect(await proposed.locator('option').filter({ hasText: 'choice-' }).count()).toBe(0);
  });

  it('is cancelled by the same button, and goes on after the page was opened again', async () => {
    await button('Find them').focus();
    await opened.page.keyboard.press('Enter');
    await button('Cancel').waitFor();
    await opened.page.waitForFunction(() => (document.querySelector('progress')?.value ?? 0) > 0.2);
    await opened.page.keyboard.press('Enter');
    await opened.page.getByText('Stopped before all was driven.').waitFor();
    await opened.page.getByText(/done and kept here/).waitFor();
    await opened.page.reload();
    await opened.page.getByLabel('Rigs within your tolerances').selectOption('4');
    await opened.page.getByText(/done and kept here/).waitFor();
    await button('Go on').click();
    await rows().first().waitFor();
  });

  it('says that what is shown is old after an edit', async () => {
    await found();
    await opened.page.getByLabel('Rigs within your tolerances').selectOption('16');
    await opened.page.getByText('What is shown is from before the last change.').waitFor();
    await opened.page.getByLabel('Rigs within your tolerances').selectOption('4');
    expect(await opened.page.getByText('What is shown is from before the last change.').count()).toBe(0);
  });
});

describe('a rig file without choices', () => {
  it('is told how to list them', async () => {
    const plain = await serveDemo((text) => text.replace(/^choices:[\s\S]*/m, ''));
    const page = await openPage(browser, plain.address, undefined, 'choose');
    await page.page.getByRole('heading', { name: 'The rig file lists nothing to choose from' }).waitFor();
    expect(page.complaints).toEqual([]);
    await page.close();
    plain.stop();
  });
});
