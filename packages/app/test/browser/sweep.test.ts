import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launch, type Opened, openPage, reading, type Served, serveDemo } from './bench.ts';

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
  opened = await openPage(browser, served.address, { width: 1280, height: 900 }, 'ride');
  await opened.page.getByLabel('Course', { exact: true }).selectOption('ledge');
});
afterEach(async () => {
  expect(opened.complaints, 'the console stays silent').toEqual([]);
  expect(opened.foreign, 'nothing is asked for elsewhere').toEqual([]);
  await opened.close();
  served.stop();
});

const panel = () => opened.page.getByRole('region', { name: 'How fast may it go' });
const speeds = () => panel().getByLabel('Speeds', { exact: true });
const button = (name: string) => panel().getByRole('button', { name, exact: true });
const table = () => panel().getByRole('table', { name: /First broken on/ });

describe('how fast may it go, in the workbench', () => {
  it('is found in workers, with ranges, as a table and a chart of both setups', async () => {
    await speeds().fill('4..8 mph');
    await button('Find the limits').click();
    await button('Find them again').waitFor();
    const rows = await table().getByRole('row').allTextContents();
    expect(rows).toHaveLength(9);
    expect(rows.join('\n')).not.toMatch(/unknown|NaN|undefined/);
    const body = rows.find((row) => row.startsWith('Body acceleration')) ?? '';
    expect(body).toMatch(/On the rig now:.*mph.*Proposed:.*mph/);
    const chart = panel().getByRole('img', { name: /over speed on ledge/ });
    expect(await chart.count()).toBe(1);
    await panel().getByLabel('Over speed', { exact: true }).selectOption({ label: 'Body acceleration' });
    expect(
      await panel()
        .getByRole('img', { name: /^body acceleration over speed/ })
        .count(),
    ).toBe(1);
  });

  it('is cancelled by the same button, which keeps the focus, and says so', async () => {
    await speeds().fill('0.5..60 mph');
    await button('Find the limits').focus();
    await opened.page.keyboard.press('Enter');
    await button('Cancel').waitFor();
    await opened.page.keyboard.press('Enter');
    await panel().getByText('Stopped before all was driven.').waitFor();
    const focused = await opened.page.evaluate(() => document.activeElement?.textContent);
    expect(focused).toMatch(/Find/);
  });

  it('says that what is shown is old after an edit, and stops what runs', async () => {
    await speeds().fill('4..6 mph');
    await button('Find the limits').click();
    await button('Find them again').waitFor();
    const { page } = opened;
    await page
      .getByRole('navigation', { name: 'Steps of the job' })
      .getByRole('link', { name: /Measure/ })
      .click();
    await reading(page, 'front.contacts.sump.gap').fill('3 7/8 in ± 1/16');
    await page
      .getByRole('navigation', { name: 'Steps of the job' })
      .getByRole('link', { name: /Ride/ })
      .click();
    await panel().getByText('What is shown is from before the last change.').waitFor();
    await button('Find them again').click();
    await button('Cancel').waitFor();
    await speeds().fill('4..7 mph');
    await panel().getByText('Stopped before all was driven.').waitFor();
  });

  it.each(['45..5 mph', '5..45', 'fast', '0..10 mph', '5..900 mph'])(
    'refuses %s beside the field',
    async (text) => {
      await speeds().fill(text);
      expect(await button('Find the limits').isDisabled()).toBe(true);
      expect(await panel().textContent()).toContain('Accepted:');
    },
  );
});
