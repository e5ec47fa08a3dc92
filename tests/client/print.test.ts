import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pagesForFile } from '../support/pages-for-file.ts';
import { type Drawn, type PdfPage, readPdf } from '../support/pdf-reading.ts';

/** ISO 216 and ANSI/ASME Y14.1, in mm. */
const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const;
type PaperName = keyof typeof PAPERS;
/** Hardly any printer leaves more than this unprinted. */
const UNPRINTED = 6;
/** A browser lays pages out in pixels of 0.26 mm, and draws exactly. */
const NEAR = 0.2;

const pages = pagesForFile();

const openPrint = async (paper: PaperName, fragment = ''): Promise<Page> => {
  const page = await pages.browser.newPage({ locale: 'en-GB' });
  await page.goto(`${pages.address}/print${fragment}`);
  await page.getByRole('radio', { name: paper === 'a4' ? 'A4' : 'Letter' }).check();
  return page;
};

const ALL = [
  'The mat',
  'Number tiles',
  'Bead bars',
  'Problem cards',
  'Answer key',
  'Squared paper',
  'For the adult who helps',
];

const tick = async (page: Page, names: readonly string[]): Promise<void> => {
  for (const name of ALL)
    await page.getByRole('checkbox', { name, exact: true }).setChecked(names.includes(name));
};

const shape = async (page: Page, rows: number, columns: number, side: string, decimals = 0) => {
  await page.getByRole('spinbutton', { name: 'Rows' }).fill(String(rows));
  await page.getByRole('spinbutton', { name: 'Columns' }).fill(String(columns));
  await page.getByRole('spinbutton', { name: 'Places after the point' }).fill(String(decimals));
  await page.getByLabel('Side of a square').selectOption(side);
};

const printed = async (page: Page): Promise<PdfPage[]> => {
  const shown = await page.locator('.act').getByRole('status').textContent();
  const pages = await readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(shown).toBe(`${pages.length} ${pages.length === 1 ? 'sheet' : 'sheets'}`);
  await page.close();
  return pages;
};

const sized =
  (width: number, height = width) =>
  (box: Drawn) =>
    Math.abs(box.width - width) <= NEAR && Math.abs(box.height - height) <= NEAR;

const count = (pages: readonly PdfPage[], test: (box: Drawn) => boolean): number =>
  pages.reduce((sum, page) => sum + page.drawn.filter(test).length, 0);

/** The paper is the one asked for; nothing lies where printers do not print; the scale is true; the sheet says what it is. */
const expectSound = (pages: readonly PdfPage[], paper: PaperName): void => {
  const [width, height] = PAPERS[paper];
  for (const page of pages) {
    expect(page.width).toBeCloseTo(width, 0);
    expect(page.height).toBeCloseTo(height, 0);
    const whole = (box: Drawn) => box.width > width - 1 && box.height > height - 1;
    const marks = page.drawn.filter((box) => !whole(box));
    expect(Math.min(...marks.map(({ left }) => left))).toBeGreaterThanOrEqual(UNPRINTED);
    expect(Math.min(...marks.map(({ top }) => top))).toBeGreaterThanOrEqual(UNPRINTED);
    expect(Math.max(...marks.map((box) => box.left + box.width))).toBeLessThanOrEqual(
      width - UNPRINTED,
    );
    expect(Math.max(...marks.map((box) => box.top + box.height))).toBeLessThanOrEqual(
      height - UNPRINTED,
    );
    const scales = marks.filter((box) => sized(100, 3)(box) || sized(3, 100)(box));
    expect(scales).toHaveLength(1);
    expect(page.text).toContain('This line is 10 cm long');
    expect(page.text.replace(/\s+/g, ' ')).toContain('children under three');
    expect(page.text).toContain(`of ${pages.length}`);
  }
};

describe.each(Object.keys(PAPERS) as PaperName[])('on %s', (paper) => {
  it('a mat of 6 by 13 squares of 70 mm is tiled over sheets: every square whole and once, every seam marked on both sides', async () => {
    const page = await openPrint(paper);
    await shape(page, 6, 13, '70 mm');
    const pages = await printed(page);
    expectSound(pages, paper);
    expect(count(pages, sized(70))).toBe(6 * 13);
    expect(pages.length).toBeGreaterThan(10);
    const letters = pages.flatMap(({ words }) =>
      words.map(({ text }) => text).filter((text) => /^[A-Z]{1,2}$/.test(text)),
    );
    const seams = new Set(letters);
    expect(seams.size).toBeGreaterThan(pages.length);
    for (const seam of seams) expect(letters.filter((letter) => letter === seam)).toHaveLength(2);
  });

  it.each([
    [4, 9, 0],
    [6, 13, 0],
    [1, 2, 0],
    [4, 9, 3],
  ])(
    'a whole mat of %i by %i with %i places after the point fits on one sheet',
    async (rows, columns, decimals) => {
      const page = await openPrint(paper);
      await shape(page, rows, columns, 'whole mat on one sheet', decimals);
      const side = Number(
        /squares of ([\d.]+) mm/.exec(
          (await page.locator('.sheet svg').getAttribute('aria-label')) ?? '',
        )?.[1],
      );
      const pages = await printed(page);
      expectSound(pages, paper);
      expect(pages).toHaveLength(1);
      expect(side).toBeGreaterThanOrEqual(15);
      expect(count(pages, sized(side))).toBe(rows * columns);
    },
  );

  it('tiles and bars have the size that the squares of the mat ask for', async () => {
    const page = await openPrint(paper);
    await tick(page, ['Number tiles', 'Bead bars']);
    await shape(page, 4, 9, '70 mm');
    await page.getByRole('spinbutton', { name: 'Tiles of each digit' }).fill('3');
    await page.getByRole('spinbutton', { name: 'Bars of each length' }).fill('4');
    const pages = await printed(page);
    expectSound(pages, paper);
    expect(count(pages, sized(30))).toBe(10 * 3 * 2);
    // Beads of 6.6 mm: a bar of ten lies in its square of 70 mm; 1 mm of paper round each bar.
    for (let kind = 1; kind <= 10; kind += 1)
      expect(count(pages, sized(kind * 6.6 + 2, 8.6))).toBe(4);
  });

  it('everything together, in ink-saving too, keeps to the sheets that were shown', async () => {
    const page = await openPrint(paper);
    await page.getByRole('radio', { name: 'Ink-saving' }).check();
    await tick(page, ALL);
    await page.getByRole('textbox').fill('934 × 314\n40.5 x 3.06');
    await page.getByLabel('Squares of the paper').selectOption('7 mm');
    const pages = await printed(page);
    expectSound(pages, paper);
    expect(pages).toHaveLength(7);
    const ruled = pages.find(({ text }) => text.includes('Squared paper'))?.drawn ?? [];
    const off = (length: number) => Math.abs(length - Math.round(length / 7) * 7);
    const rulings = ruled.filter(
      ({ width, height }) =>
        width > 150 && height > 150 && off(width) <= NEAR && off(height) <= NEAR,
    );
    expect(rulings).toHaveLength(1);
  });
});

describe('problems on paper', () => {
  const fragment = `#${new URLSearchParams([
    ['title', 'Lantern class'],
    ['problem', JSON.stringify({ stage: 'facts', multiplicand: '934', multiplier: '314' })],
    ['problem', JSON.stringify({ stage: 'walk', seed: 3, prompts: 8, categories: true })],
  ])}`;

  it("come from the activity; the key gives the engine's partial products, product and exchanges", async () => {
    const page = await openPrint('a4', fragment);
    await tick(page, ['Problem cards', 'Answer key']);
    const [cards, answers] = await printed(page);
    expect(cards?.text).toContain('934 × 314');
    expect(cards?.text).toContain('8.');
    for (const line of ['× 4: 3,736', '× 1: 9,340', '× 3: 280,200', 'Product: 293,276'])
      expect(answers?.text.replace(/\s+/g, ' ')).toContain(line);
    expect(answers?.text).toContain('any square of the');
  });

  it('are read back as they were typed, and what is not clear is refused by its line', async () => {
    const page = await openPrint('a4');
    await tick(page, ['Answer key']);
    await page.getByRole('textbox').fill('1,250 * 2.5\n12 34 56\n7');
    await page.getByText('Line 2 is not clear').waitFor();
    await page.getByText('Line 3 is not clear').waitFor();
    const [answers] = await printed(page);
    expect(answers?.text).toContain('1,250 × 2.5');
    expect(answers?.text.replace(/\s+/g, ' ')).toMatch(/Product: 3,125/);
  });
});

describe('in a frame', () => {
  const framed = async (sandbox: string): Promise<Page> => {
    const context = await pages.browser.newContext({ locale: 'en-GB' });
    const page = await context.newPage();
    // The real server names the platforms that may frame it; this one has none.
    await page.route('**/print', async (route) => {
      const answer = await route.fetch();
      const { 'content-security-policy': _policy, ...headers } = answer.headers();
      await route.fulfill({ response: answer, headers });
    });
    await page.route('**/frame', (route) =>
      route.fulfill({
        contentType: 'text/html',
        body: `<iframe sandbox="${sandbox}" src="/print" width="820" height="600"></iframe>`,
      }),
    );
    await page.goto(`${pages.address}/frame`);
    return page;
  };

  it('that lets dialogs open, the page prints by itself', async () => {
    const page = await framed('allow-scripts allow-same-origin allow-modals');
    const inside = page.frameLocator('iframe');
    await inside.getByRole('button', { name: 'Print' }).click();
    await page.waitForTimeout(300);
    expect(await inside.getByText('This frame does not let the page print').count()).toBe(0);
    await page.context().close();
  });

  it('that forbids it, the page says so and offers the tab', async () => {
    const page = await framed('allow-scripts allow-same-origin allow-popups');
    const inside = page.frameLocator('iframe');
    await inside.getByRole('button', { name: 'Print' }).click();
    await inside.getByText('This frame does not let the page print').waitFor();
    const [tab] = await Promise.all([
      page.context().waitForEvent('page'),
      inside.getByRole('link', { name: 'Open in a tab' }).click(),
    ]);
    await tab.getByRole('heading', { name: 'Print' }).waitFor();
    await page.context().close();
  });
});
