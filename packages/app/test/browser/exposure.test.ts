import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launch, type Opened, openPage, type Served, serveDemo } from './bench.ts';

let browser: Browser;
let served: Served;
let opened: Opened;

beforeAll(async () => {
  browser = await launch();
  served = await serveDemo();
});
afterAll(async () => {
  await browser.close();
  served.stop();
});
beforeEach(async () => {
  opened = await openPage(browser, served.address, { width: 1280, height: 900 }, 'ride');
});
afterEach(async () => {
  expect(opened.complaints, 'the console stays silent').toEqual([]);
  expect(opened.foreign, 'nothing is asked for elsewhere').toEqual([]);
  await opened.close();
});

const course = (name: string) =>
  opened.page.getByLabel('Course', { exact: true }).selectOption({ value: name });
const panel = () => opened.page.getByRole('region', { name: 'What the seat takes', exact: true });
const rows = () => panel().getByRole('row').allTextContents();
/** Until the trials are in. */
const sharpened = (name: string) =>
  panel()
    .getByRole('row', { name: /^Weighted r\.m\.s\..*m\/s² ± \d.*m\/s² ± \d/ })
    .and(opened.page.locator(`:is(section[aria-label="At the seat, on ${name}"] tr)`))
    .waitFor();

describe('what the seat takes, in the workbench', () => {
  it('stands for both setups with its intervals, a sentence, and whose seat it is', async () => {
    await course('ledge');
    await sharpened('ledge');
    const said = (await rows()).join('\n');
    for (const part of ['MTVV', 'VDV', 'Crest factor', 'A(8)', 'Until action value', 'Absorbed power', 'DRI'])
      expect(said).toContain(part);
    expect(said).not.toMatch(/unknown|NaN|undefined/);
    for (const row of (await rows()).slice(1)) expect(row).toMatch(/On the rig now:.*Proposed:/);
    const text = (await panel().textContent()) ?? '';
    expect(text).toContain('which people call');
    expect(text).toContain('Of the driver on his seat');
    expect(text).toContain('nothing here says what vibration does to a body');
    expect(text).not.toMatch(/health|injur/i);
  });

  it('is reckoned for the distance of a day once that is typed', async () => {
    await course('ledge');
    await sharpened('ledge');
    expect((await rows()).join()).toContain('an hour a day');
    await opened.page.getByText('Change this course').click();
    await opened.page.locator('main input[name="courses.ledge.perDay"]').fill('3 mi');
    await panel().getByText('3 mi a day').first().waitFor();
  });

  it('knows no day and no driving time of a drop', async () => {
    await course('drop');
    await sharpened('drop');
    expect((await rows()).join()).not.toMatch(/a day|Until/);
  });

  it.each(['0 mph', '900 mph', '-5 mph', '20', 'fast'])(
    'refuses a speed of %s beside the field',
    async (text) => {
      await course('ledge');
      const field = opened.page.getByRole('textbox', { name: 'Speed', exact: true });
      await field.fill(text);
      await opened.page.waitForFunction(
        () => document.querySelector('main input[aria-invalid="true"]') !== null,
      );
      const said = await field.evaluate((input) =>
        (input.getAttribute('aria-describedby') ?? '')
          .split(' ')
          .map((id) => document.getElementById(id)?.textContent ?? '')
          .join(' '),
      );
      expect(said).toMatch(/mph/);
    },
  );
});
