import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  faultsOf,
  launch,
  openPage,
  reading,
  type Served,
  serveDemo,
  shortChoices,
  verdictOf,
} from './bench.ts';

/** Until what is asked of the step is there. */
const ready: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  measure: (page) => reading(page, 'front.stop.gap').waitFor(),
  travel: (page) => page.locator('svg[aria-labelledby^="columns"]').waitFor(),
  links: (page) =>
    page.getByRole('region', { name: 'What changes, the nearest to its limit first' }).waitFor(),
  ride: (page) => page.getByRole('region', { name: 'Peaks at each corner' }).waitFor(),
  stop: async (page) => {
    await page.getByLabel('whoops').uncheck();
    await page.getByLabel('ledge').check();
    await page.getByRole('button', { name: 'Find the band' }).click();
    await page.locator('svg[aria-labelledby^="stop-band"]').waitFor();
  },
  choose: async (page) => {
    await page.getByLabel('Rigs within your tolerances').selectOption('4');
    await page.getByRole('button', { name: 'Find them' }).click();
    await page.locator('svg[aria-labelledby^="choose-scatter"]').waitFor();
  },
};

let browser: Browser;
let served: Served;
beforeAll(async () => {
  browser = await launch();
  served = await serveDemo(shortChoices);
});
afterAll(async () => {
  await browser.close();
  served.stop();
});

describe.each(['measure', 'travel', 'links', 'ride', 'stop', 'choose', 'build'])(
  'the %s step, for everyone',
  (step) => {
    it.each([
      { name: 'on a desk', width: 1280, height: 900 },
      { name: 'on a narrow phone', width: 360, height: 740 },
    ])('has no fault that axe finds, and does not scroll sideways, $name', async ({ width, height }) => {
      const { page, close } = await openPage(browser, served.address, { width, height }, step);
      await ready[step]?.(page);
      expect(await faultsOf(page)).toEqual([]);
      const sideways = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(sideways, 'pixels past the edge').toBe(0);
      await close();
    });

    it('has no fault that axe finds at night', async () => {
      const { page, close } = await openPage(browser, served.address, undefined, step);
      await page.emulateMedia({ colorScheme: 'dark' });
      await ready[step]?.(page);
      // Colours fade from day to night: what is half-way is neither.
      await page.evaluate(() => Promise.all(document.getAnimations().map(({ finished }) => finished)));
      expect(await faultsOf(page)).toEqual([]);
      await close();
    });
  },
);

describe('by keyboard alone', () => {
  it('goes from the first reading to the ride', async () => {
    const { page, close } = await openPage(browser, served.address);
    await ready.measure?.(page);
    await page.keyboard.press('Tab');
    expect(await focusName(page)).toBe('Skip to the step');
    await page.keyboard.press('Enter');
    await tabTo(page, (name) => name.startsWith('Gap at ride height'));
    await page.keyboard.press('Control+a');
    await page.keyboard.type('3 1/2 in ± 1/16');
    expect(await verdictOf(page, 'On the rig now').textContent()).not.toContain('Pass');
    await page.keyboard.press('Enter');
    expect(await focusName(page)).toContain('Travel ratio');
    await page.keyboard.press('Control+z');
    expect(await verdictOf(page, 'On the rig now').textContent()).toContain('Pass');
    await tabTo(page, (name) => name.includes('Travel') && name.includes('pass'), 'Shift+Tab');
    await page.keyboard.press('Enter');
    await ready.travel?.(page);
    await tabTo(page, (name) => name.includes('Ride'), 'Tab');
    await page.keyboard.press('Enter');
    await ready.ride?.(page);
    await tabTo(page, (name) => name === 'Play');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Pause' }).waitFor();
    await close();
  });
});

const focusName = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLElement | null;
    const label = (element as HTMLInputElement | null)?.labels?.[0]?.textContent;
    return label ?? element?.getAttribute('aria-label') ?? element?.textContent ?? '';
  });

async function tabTo(page: Page, wanted: (name: string) => boolean, key = 'Tab'): Promise<void> {
  for (let k = 0; k < 120; k += 1) {
    if (wanted(await focusName(page))) return;
    await page.keyboard.press(key);
  }
  throw new Error(`Not reached by keyboard; the focus is on “${await focusName(page)}”`);
}
