import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launch, type Opened, openPage, reading, type Served, serveDemo } from './bench.ts';

const PATH = 'setups.soft-stop-seat-down.rear.links';

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
  opened = await openPage(browser, served.address, { width: 1280, height: 900 }, 'links');
  await drawing(opened.page).waitFor();
});
afterEach(async () => {
  expect(opened.complaints, 'the console stays silent').toEqual([]);
  expect(opened.foreign, 'nothing is asked for elsewhere').toEqual([]);
  await opened.close();
  served.stop();
});

const drawing = (page: Page, view = 'side') => page.locator(`svg[aria-labelledby^="links-${view}-title"]`);
const handle = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).first();
const undoLabel = (page: Page) => page.getByRole('button', { name: /^Undo/ });

/** A figure of the proposal at the pose of the sliders. */
const proposed = async (page: Page, what: string): Promise<string> =>
  (await page
    .getByRole('region', { name: /^Rear axle at/ })
    .locator('tr', { hasText: what })
    .locator('[data-lane="proposed"]')
    .textContent()) ?? '';

describe('links in the workbench', () => {
  it('shows both setups from three sides, in unbroken and in broken lines', async () => {
    const { page } = opened;
    for (const view of ['side', 'rear', 'top']) {
      const lines = drawing(page, view).locator('.lp-line');
      const dash = (role: string) =>
        lines
          .and(page.locator(`.lp-${role}`))
          .first()
          .evaluate((line) => getComputedStyle(line).strokeDasharray);
      expect(await dash('first'), view).toBe('none');
      expect(await dash('second'), view).not.toBe('none');
    }
  });

  it('moves a joint that is dragged by mouse, follows with every figure, and takes it back with one undo', async () => {
    const { page } = opened;
    const joint = handle(page, 'Lower link, frame end, right');
    await joint.scrollIntoViewIfNeeded();
    const before = await proposed(page, 'Anti-squat');
    const box = (await joint.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let k = 1; k <= 12; k += 1) await page.mouse.move(x, y + 3 * k);
    await page.evaluate(
      () => new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next))),
    );
    const field = reading(page, `${PATH}.lower.frame.up`);
    const under = await field.inputValue();
    expect(under, 'the field says where the point is while it is under the finger').toMatch(/^-\d/);
    expect(await proposed(page, 'Anti-squat')).not.toBe(before);
    expect(await undoLabel(page).isDisabled(), 'nothing is written down before it is let go').toBe(true);
    await page.mouse.up();
    expect(await field.inputValue()).toBe(under);
    const after = await proposed(page, 'Anti-squat');
    await undoLabel(page).click();
    expect(await field.inputValue()).toBe('');
    expect(await proposed(page, 'Anti-squat')).toBe(before);
    await page.keyboard.press('Control+Shift+z');
    expect(await proposed(page, 'Anti-squat')).toBe(after);
    await page.keyboard.press('Control+s');
    await page.getByText('Saved ochre.rig.yaml').waitFor();
    expect(readFileSync(served.file, 'utf8')).toContain(under);
  });

  it('moves a joint by the arrow keys, a step of the tape at a time', async () => {
    const { page } = opened;
    const joint = handle(page, 'Upper link, frame end, right');
    await joint.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowRight');
    expect(await reading(page, `${PATH}.upper.frame.up`).inputValue()).toBe('1/8 in');
    expect(await reading(page, `${PATH}.upper.frame.ahead`).inputValue()).toBe('1/2 in');
    expect(await joint.evaluate((button) => button === document.activeElement)).toBe(true);
    await page.keyboard.press('Control+z');
    expect(await reading(page, `${PATH}.upper.frame.up`).inputValue()).toBe('');
    expect(await reading(page, `${PATH}.upper.frame.ahead`).inputValue()).toBe('');
  });

  it('takes a typed move with its unit, says what is wrong with one that has none, and shows where it stands', async () => {
    const { page } = opened;
    await page.getByLabel('Point to move').selectOption('lower.frame');
    const field = reading(page, `${PATH}.lower.frame.up`);
    const place = page.getByRole('region', { name: 'Where it stands at ride height' });
    const before = await place.textContent();
    await field.fill('-2');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    expect(await place.textContent()).toBe(before);
    await field.fill('-50 mm');
    expect(await field.getAttribute('aria-invalid')).toBeNull();
    expect(await place.textContent()).not.toBe(before);
    await reading(page, `${PATH}.lower.longer`).fill('1/4 in');
    const pinion = await proposed(page, 'Pinion angle');
    await reading(page, `${PATH}.lower.longer`).fill('');
    expect(await proposed(page, 'Pinion angle')).not.toBe(pinion);
  });

  it('poses the drawing with the sliders', async () => {
    const { page } = opened;
    const tyre = () => drawing(page, 'rear').locator('[data-name="now.tyre-left"]').getAttribute('points');
    const still = await tyre();
    const slider = page.getByRole('slider', { name: 'Axle roll' });
    await slider.focus();
    for (let k = 0; k < 20; k += 1) await page.keyboard.press('ArrowRight');
    expect(await tyre()).not.toBe(still);
    await page.getByRole('region', { name: /left wheel up$/ }).waitFor();
    await page.getByRole('button', { name: 'Back to ride height' }).click();
    expect(await tyre()).toBe(still);
  });

  it('says which links stop a point that is pulled out of reach, and lets it be pulled back', async () => {
    const { page } = opened;
    const joint = handle(page, 'Lower link, frame end, right');
    await joint.scrollIntoViewIfNeeded();
    const box = (await joint.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const trouble = page.getByRole('status').filter({ hasText: /^Proposed: / });
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let k = 1; k <= 10; k += 1) await page.mouse.move(x - 50 * k, y - 35 * k);
    await trouble.waitFor();
    expect(await trouble.textContent()).toMatch(/lower|upper/);
    for (let k = 10; k >= 1; k -= 1) await page.mouse.move(x - 2 * k, y);
    await trouble.waitFor({ state: 'detached' });
    await page.mouse.up();
    expect(await reading(page, `${PATH}.lower.frame.ahead`).inputValue()).toMatch(/^-\d/);
  });

  // Frames are counted and not milliseconds: how long a frame takes is the machine's, and belongs in the bench.
  it('answers each move of a drag before the next frame is drawn', async () => {
    const { page } = opened;
    const joint = handle(page, 'Lower link, frame end, right');
    await joint.scrollIntoViewIfNeeded();
    const answered = await joint.evaluate(async (button) => {
      const box = button.getBoundingClientRect();
      const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
      const at = (type: string, dy: number) =>
        button.dispatchEvent(
          new PointerEvent(type, { bubbles: true, pointerId: 1, button: 0, clientX: x, clientY: y + dy }),
        );
      (button as HTMLElement).setPointerCapture = () => undefined;
      const frame = () => new Promise((next) => requestAnimationFrame(next));
      const line = () => document.querySelector('[data-name="proposed.lower-right"]')?.getAttribute('y2');
      at('pointerdown', 0);
      let changed = 0;
      for (let k = 1; k <= 20; k += 1) {
        const before = line();
        at('pointermove', 2 * k);
        await frame();
        if (line() !== before) changed += 1;
      }
      at('pointerup', 40);
      return changed;
    });
    expect(answered).toBe(20);
  });

  it('lists what the proposal knocks on to, with change and limit, and what stays', async () => {
    const { page } = opened;
    const list = page.getByRole('region', { name: 'What changes, the nearest to its limit first' });
    await list.waitFor({ timeout: 50_000 });
    expect(await list.locator('tbody tr').count()).toBeGreaterThan(5);
    const row = list.locator('tr', { hasText: 'Front travel to spare' });
    expect(await row.textContent()).toContain('Within limits');
    await row.locator('summary').click();
    expect(await row.locator('details p').isVisible()).toBe(true);
  });

  it('leads to the tape where links were never measured, and can be undone', async () => {
    const { page } = opened;
    await page.evaluate(() => {
      window.location.hash = 'measure';
    });
    await page.getByText('As text', { exact: true }).click();
    const area = page.locator('main textarea');
    const text = await area.inputValue();
    // The front end loses all that rests on its links.
    const lines = text.split('\n');
    const from = lines.findIndex((line) => line.startsWith('  links:'));
    const to = lines.findIndex((line, k) => k > from && /^ {2}\S/.test(line) && !line.startsWith('  #'));
    await area.fill([...lines.slice(0, from), ...lines.slice(to)].join('\n'));
    await page.evaluate(() => {
      window.location.hash = 'links';
    });
    await page.getByText('Front', { exact: true }).first().click();
    await page.getByLabel('What holds this axle').selectOption('radius-arms');
    await page.getByRole('button', { name: 'Measure these links' }).click();
    await page.getByRole('heading', { level: 2, name: 'Measure' }).waitFor();
    await page.waitForFunction(
      () => document.activeElement?.getAttribute('name') === 'front.links.arm.axle.ahead',
    );
    await undoLabel(page).click();
  });
});

describe('links on a phone', () => {
  it('moves a joint by finger, and does not scroll the page under it', async () => {
    const context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    const page = await context.newPage();
    await page.goto(`${served.address}#links`);
    await drawing(page).waitFor();
    const joint = handle(page, 'Lower link, frame end, right');
    await joint.scrollIntoViewIfNeeded();
    const scrolled = await page.evaluate(() => window.scrollY);
    const box = (await joint.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const session = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dy: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + dy }],
      });
    await touch('touchStart', 0);
    for (let k = 1; k <= 8; k += 1) await touch('touchMove', 3 * k);
    await touch('touchEnd', 24);
    await page.waitForFunction(
      (name) => (document.querySelector<HTMLInputElement>(`input[name="${name}"]`)?.value ?? '') !== '',
      `${PATH}.lower.frame.up`,
    );
    expect(await reading(page, `${PATH}.lower.frame.up`).inputValue()).toMatch(/^-/);
    expect(await page.evaluate(() => window.scrollY)).toBe(scrolled);
    await context.close();
  });
});
