import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { faultsOf, launch, type Opened, openPage, type Served, serveDemo } from './bench.ts';

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
  opened = await openPage(browser, served.address, { width: 1280, height: 900 }, 'stop');
});
afterEach(async () => {
  // A browser that draws solids without a graphics card says how slow that is.
  const complaints = opened.complaints.filter((said) => !said.includes('GL Driver Message'));
  expect(complaints, 'the console stays silent').toEqual([]);
  expect(opened.foreign, 'nothing is asked for elsewhere').toEqual([]);
  await opened.close();
  served.stop();
});

const field = (page: Page, name: string) => page.locator(`main input[name="${name}"]`);
const picture = (page: Page, id: string) => page.locator(`svg[aria-labelledby^="${id}"]`);
const ask = (page: Page, what: string) => page.getByRole('radio', { name: what }).check({ force: true });
const find = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^Find/ }).click();
  await page.getByRole('button', { name: 'Find it again' }).waitFor();
};

/** Invented: a foam that rises, read down and back. */
const PRESS = [
  'travel [mm], force [N]',
  ...[0, 5, 10, 15, 20, 25, 30, 35, 40, 45].map(
    (x) => `${x}, ${20 + Math.round(x < 5 ? 0 : 60 * (x - 5) + (x - 5) ** 2.6)}`,
  ),
  ...[40, 35, 30, 25, 20, 15, 10, 5].map(
    (x) => `${x}, ${20 + Math.round(0.7 * (60 * (x - 5) + (x - 5) ** 2.6))}`,
  ),
].join('\n');
const choosePress = (page: Page) =>
  page
    .locator('main input[type="file"]')
    .setInputFiles({ name: 'Soft foam.csv', mimeType: 'text/csv', buffer: Buffer.from(PRESS) });

describe('which curve an end needs', () => {
  it('shades the band over a course, with every stop of the rig, its verdict, and figures behind it', async () => {
    const { page } = opened;
    await page.getByLabel('whoops').uncheck();
    await page.getByLabel('ledge').check();
    await find(page);
    const words = await picture(page, 'stop-band').locator('text').allTextContents();
    expect(words.join('|')).toMatch(/a {2}as-fitted: (fine|open|over), on it now/);
    expect(words.join('|')).toMatch(/b {2}soft: (fine|open|over), on it in the other setup/);
    expect(words).toContain('does');
    expect(await picture(page, 'stop-band').locator('[data-name="area"]').count()).toBe(1);
    await page.getByText('The curves as figures').click();
    expect(await page.getByRole('region', { name: 'The band' }).locator('tbody tr').count()).toBe(9);
    expect(await page.getByRole('main').textContent()).toContain('Look at the stop after the first 6 miles');
    expect(await page.getByRole('region', { name: 'Cautions about stops' }).textContent()).toMatch(
      /cold.*oil, sun and wear/,
    );
  });

  it('says what else must change where no stop does, and keeps the answer, marked, after an edit', async () => {
    const { page } = opened;
    await find(page);
    const cures = page.getByRole('region', { name: 'No stop does' });
    expect(await cures.locator('li').count()).toBeGreaterThan(2);
    await field(page, 'need.speed').fill('12 mph');
    await page.getByText('What is shown is from before the last change.').waitFor();
    expect(await cures.isVisible()).toBe(true);
    await field(page, 'need.speed').fill('12');
    expect(await field(page, 'need.speed').getAttribute('aria-invalid')).toBe('true');
    expect(await page.getByRole('button', { name: 'Find it again' }).isDisabled()).toBe(true);
    await field(page, 'need.speed').fill('');
    await page.getByText('What is shown is from before the last change.').waitFor({ state: 'detached' });
  });

  it('can be cancelled, and asked for again', async () => {
    const { page } = opened;
    await page.getByRole('button', { name: 'Find the band' }).click();
    await page.getByRole('progressbar', { name: 'Driving stops…' }).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByText('Stopped before it was done.').waitFor();
    await page.getByRole('button', { name: 'Find the band' }).waitFor();
  });

  it('keeps what was found for one end while the other is looked at', async () => {
    const { page } = opened;
    await page.getByLabel('whoops').uncheck();
    await page.getByLabel('ledge').check();
    await find(page);
    await ask(page, 'Rear');
    await picture(page, 'stop-band').waitFor({ state: 'detached' });
    await ask(page, 'Front');
    await picture(page, 'stop-band').waitFor();
  });
});

describe('a press test', () => {
  it('becomes a stop of the rig file with one button, is driven with the others, and is taken back with one undo', async () => {
    const { page } = opened;
    await ask(page, 'From a press');
    await choosePress(page);
    await picture(page, 'press-curve').waitFor();
    const says = page.getByRole('region', { name: 'What it says' });
    expect(await says.textContent()).toMatch(/Lost of what was put in\s*2\d\s%/);
    expect(await field(page, 'press.name').inputValue()).toBe('Soft-foam');
    await field(page, 'press.length').fill('100 mm');
    await page.getByRole('button', { name: 'Put it into the rig file' }).click();
    await page.getByText('Soft-foam stands under parts.stops.').waitFor();
    await ask(page, 'Which it needs');
    await page.getByLabel('whoops').uncheck();
    await page.getByLabel('ledge').check();
    await find(page);
    const words = await picture(page, 'stop-band').locator('text').allTextContents();
    expect(words.join('|')).toMatch(/c {2}Soft-foam: /);
    await page.keyboard.press('Control+s');
    await page.getByText('Saved ochre.rig.yaml').waitFor();
    expect(readFileSync(served.file, 'utf8')).toContain('notes: "Pressed: Soft foam.csv."');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.keyboard.press('Control+s');
    await page.waitForFunction(() => document.body.textContent?.includes('1 on the shelf'));
    await expect.poll(() => readFileSync(served.file, 'utf8')).not.toContain('Soft-foam');
  });

  it('can be typed, says in which row something is wrong, and takes units from outside', async () => {
    const { page } = opened;
    await ask(page, 'From a press');
    const cell = (column: string, row: number) =>
      page.getByRole('textbox', { name: `${column}, ${row}`, exact: true });
    const rows = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45];
    for (const [k, x] of rows.entries()) {
      await cell('Travel of the press', k + 1).fill(String(x));
      await cell('Gauge', k + 1).fill(String(20 + 4 * x ** 1.6));
    }
    expect(await cell('Gauge', 3).getAttribute('aria-invalid')).toBe('true');
    await field(page, 'press.columns').fill('mm, N');
    await picture(page, 'press-curve').waitFor();
    await cell('Gauge', 4).fill('much');
    await page.waitForFunction(
      () => document.querySelector('main [aria-label="Gauge, 4"]')?.getAttribute('aria-invalid') === 'true',
    );
    expect(await cell('Gauge', 5).getAttribute('aria-invalid')).toBe('false');
    expect(await page.getByRole('button', { name: 'Put it into the rig file' }).isDisabled()).toBe(true);
  });

  it('refuses units that no stop can have', async () => {
    const { page } = opened;
    await ask(page, 'From a press');
    await page.locator('main input[type="file"]').setInputFiles({
      name: 'mixed.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(PRESS.replace('[N]', '[kN]')),
    });
    await page.getByText(/look at the units of both columns/).waitFor();
  });
});

describe('a stop by its kind', () => {
  it('is a band, and is written down as a guess', async () => {
    const { page } = opened;
    await ask(page, 'By its kind');
    await field(page, 'kind.hardness').fill('60 A');
    await field(page, 'kind.heights').fill('2 3/8 in');
    await field(page, 'kind.diameters').fill('50 mm, 40 mm');
    expect(await field(page, 'kind.diameters').getAttribute('aria-invalid')).toBe('true');
    await field(page, 'kind.diameters').fill('50 mm');
    await picture(page, 'kind-band').waitFor();
    await page.getByRole('button', { name: 'Put it into the rig file' }).click();
    await page.getByText('estimated-rubber stands under parts.stops.').waitFor();
    await page.keyboard.press('Control+s');
    await page.getByText('Saved ochre.rig.yaml').waitFor();
    expect(readFileSync(served.file, 'utf8')).toMatch(/estimated-rubber:\n(.*\n)*? +forceAtFullCrush: ~ /);
  });

  it('may be a foam by its density', async () => {
    const { page } = opened;
    await ask(page, 'By its kind');
    await ask(page, 'Foam');
    await field(page, 'kind.density').fill('480');
    await page.getByText(/480.*has no unit/).waitFor();
    await field(page, 'kind.density').fill('480 kg/m3');
    await field(page, 'kind.heights').fill('60 mm');
    await field(page, 'kind.diameters').fill('50 mm');
    await picture(page, 'kind-band').waitFor();
  });

  it('may be a gas stop by its chamber', async () => {
    const { page } = opened;
    await ask(page, 'By its kind');
    await ask(page, 'Gas');
    await field(page, 'kind.rod').fill('1 3/8 in');
    await field(page, 'kind.pressure').fill('100 psi');
    await field(page, 'kind.column').fill('40 mm');
    await field(page, 'kind.stroke').fill('50 mm');
    await page.getByText(/more than the stroke/).waitFor();
    await field(page, 'kind.column').fill('65 mm');
    await picture(page, 'kind-band').waitFor();
  });
});

describe('a stop to print', () => {
  const shape = async (page: Page): Promise<void> => {
    await ask(page, 'To print');
    await field(page, 'print.height').fill('40 mm');
    await field(page, 'print.diameter').fill('1 3/4 in, 40 mm');
  };

  it('has a curve with its interval, and is cut open and crushed by a slider', async () => {
    const { page } = opened;
    await shape(page);
    await ask(page, 'Given densities');
    await field(page, 'print.density').fill('90 %');
    await page.getByText(/densities from 28 % to 60 %/).waitFor();
    await field(page, 'print.density').fill('50 %, 30 %');
    await picture(page, 'print-curve').waitFor();
    const walls = () => picture(page, 'print-section').locator('[data-name="walls"]').getAttribute('d');
    const free = await walls();
    const slider = page.getByRole('slider', { name: 'Crush' });
    await slider.focus();
    await page.keyboard.press('End');
    expect(await walls()).not.toBe(free);
    expect(await picture(page, 'print-section').locator('text').allTextContents()).toContain('closed');
    await page.getByText('Density and strain as figures').click();
    const strains = await page
      .getByRole('region', { name: 'From the tip down' })
      .locator('td:nth-child(3)')
      .allTextContents();
    const [tip = '', foot = ''] = [strains[0], strains.at(-1)];
    expect(Number.parseFloat(tip), 'thin at the tip').toBeGreaterThan(Number.parseFloat(foot));
  });

  it('follows a typed curve, and says where it does not', async () => {
    const { page } = opened;
    await shape(page);
    await ask(page, 'A typed curve');
    const rows = ['0 mm; 0 N', '4 mm; 300 N', '8 mm; 700 N', '12 mm; 1400 N'];
    for (const [k, row] of rows.entries()) {
      const [crush = '', force = ''] = row.split('; ');
      await page.getByRole('textbox', { name: `Crush, ${k + 1}`, exact: true }).fill(crush);
      await page.getByRole('textbox', { name: `Force, ${k + 1}`, exact: true }).fill(force);
    }
    await picture(page, 'print-curve').waitFor();
    expect(
      await page.getByRole('region', { name: 'Force at a crush of' }).locator('th').allTextContents(),
    ).toContain('Wanted');
    expect(await page.getByRole('region', { name: 'What it says' }).textContent()).toMatch(
      /wanted curve is met|Not met from/,
    );
  });

  it('is designed for what an end needs, and driven there', async () => {
    const { page } = opened;
    await page.getByLabel('whoops').uncheck();
    await page.getByLabel('ledge').check();
    await shape(page);
    await page.getByRole('button', { name: 'Design it' }).click();
    await picture(page, 'print-curve').waitFor();
    expect(await picture(page, 'print-curve').locator('[data-name="area"]').count()).toBe(1);
    expect(await page.getByRole('region', { name: 'What it says' }).textContent()).toMatch(
      /Driven over ledge at 8\smph/,
    );
  });

  it('becomes a solid that turns by keys and mouse, and goes to the printer as 3MF and STL', async () => {
    const { page } = opened;
    await shape(page);
    await ask(page, 'Given densities');
    await field(page, 'print.density').fill('50 %, 30 %');
    await page.getByRole('button', { name: 'Make the solid' }).click();
    const canvas = page.locator('main canvas');
    await canvas.waitFor();
    expect(await canvas.getAttribute('aria-label')).toMatch(/1 9\/16 in at the tip/);
    await canvas.scrollIntoViewIfNeeded();
    const seen = async () => (await canvas.screenshot()).toString('base64');
    await canvas.focus();
    const before = await seen();
    for (let k = 0; k < 4; k += 1) await page.keyboard.press('ArrowLeft');
    const turned = await seen();
    expect(turned).not.toBe(before);
    const box = (await canvas.boundingBox())!;
    await page.mouse.move(box.x + 150, box.y + 150);
    await page.mouse.down();
    await page.mouse.move(box.x + 250, box.y + 170, { steps: 4 });
    await page.mouse.up();
    expect(await seen()).not.toBe(turned);
    for (const [button, name, head] of [
      ['Download 3MF', 'printed-stop.3mf', 'PK'],
      ['Download STL', 'printed-stop.stl', ''],
    ] as const) {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: button }).click();
      const saved = await download;
      expect(saved.suggestedFilename()).toBe(name);
      const bytes = readFileSync(await saved.path());
      expect(bytes.subarray(0, head.length).toString('latin1')).toBe(head);
      // A binary STL: 80 bytes of words, a count, 50 bytes a triangle.
      if (name.endsWith('stl')) expect(bytes.length).toBe(84 + 50 * bytes.readUInt32LE(80));
      expect(bytes.length).toBeGreaterThan(100_000);
    }
    await field(page, 'print.density').fill('40 %, 30 %');
    // The new design comes first, and then the solid is that of an older one.
    const stl = page.getByRole('button', { name: 'Download STL' });
    await expect.poll(() => stl.isDisabled(), { timeout: 30_000 }).toBe(true);
  });
});

describe('the stop step on a phone', () => {
  it('prints and presses within 390 pixels, and axe finds no fault on any page', async () => {
    const { page, close } = await openPage(browser, served.address, { width: 390, height: 844 }, 'stop');
    for (const name of ['From a press', 'By its kind', 'To print']) {
      await ask(page, name);
      if (name === 'From a press') {
        await choosePress(page);
        await picture(page, 'press-curve').waitFor();
      }
      if (name === 'By its kind') {
        await field(page, 'kind.hardness').fill('60 A');
        await field(page, 'kind.heights').fill('60 mm');
        await field(page, 'kind.diameters').fill('50 mm');
        await picture(page, 'kind-band').waitFor();
      }
      if (name === 'To print') {
        await field(page, 'print.height').fill('30 mm');
        await field(page, 'print.diameter').fill('40 mm');
        await ask(page, 'Given densities');
        await field(page, 'print.density').fill('40 %');
        await page.getByRole('button', { name: 'Make the solid' }).click();
        await page.locator('main canvas').waitFor();
      }
      const sideways = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(sideways, `${name}: pixels past the edge`).toBe(0);
      expect(await faultsOf(page), name).toEqual([]);
    }
    await close();
  });
});
