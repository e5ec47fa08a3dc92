import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { BEADS } from '../../client/ui/beads.ts';
import { BEADS as SERVER_BEADS } from '../../server/activities/schema.ts';
import { bookWith } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { button, openSquare } from '../support/work-page.ts';

const pages = pagesForFile();
const PROBLEM = { stage: 'bars1', multiplicand: '56', multiplier: '2' } as const;

const open = async (beads: string, forcedColors: 'none' | 'active' = 'none'): Promise<Page> => {
  const laid = { do: 'layBars', square: [0, 1], kind: 5, count: 2 } as const;
  const book = bookWith(beads, PROBLEM, [laid]);
  book.beads = beads;
  pages.server.books.set(beads, book);
  const page = await openAs(await pages.browser.newContext({ forcedColors }), pages.address, {
    token: beads,
  });
  await page.getByRole('grid').waitFor();
  return page;
};

/** The colour with which the beads of a five-bar are drawn on the mat. */
const fiveOf = (page: Page): Promise<string> =>
  page
    .locator('pw-square path.b5')
    .first()
    .evaluate((bead) => getComputedStyle(bead).stroke);

describe('the bead colours of a class', () => {
  it('have the same names on the server and on the pages', () => {
    expect([...SERVER_BEADS]).toEqual([...BEADS]);
  });

  it.each([
    ['blueFive', 'rgb(129, 212, 250)'],
    ['mauveFive', 'rgb(192, 139, 214)'],
    ['gold', 'rgb(217, 164, 0)'],
  ])('are those of the activity: %s', async (beads, colour) => {
    expect(await fiveOf(await open(beads))).toBe(colour);
  });

  it.each([...BEADS])('leave only outlines where the reader forces colours: %s', async (beads) => {
    const [own, usual] = [await open(beads, 'active'), await open('blueFive', 'active')];
    expect(await fiveOf(own)).toBe(await fiveOf(usual));
    expect(await fiveOf(own)).not.toBe(
      await own
        .locator('pw-square path.rim')
        .first()
        .evaluate((rim) => getComputedStyle(rim).stroke),
    );
  });

  it.each([...BEADS])(
    'are never the only sign of a number: its beads, its name, its numeral: %s',
    async (beads) => {
      const page = await open(beads);
      const opened = await openSquare(page, [0, 1]);
      await opened.getByRole('button', { name: 'bar of 5, 1 of 2', exact: true }).waitFor();
      await button(page, 'Numbers on the bars').click();
      await opened.locator('.pile').getByText('5', { exact: true }).first().waitFor();
      const bar = opened.locator('.pile path.b5').first();
      const beadsDrawn = await bar.evaluate((path) => {
        const [, gap = 1] = (path.getAttribute('stroke-dasharray') ?? '').split(' ').map(Number);
        return Math.round((path as SVGPathElement).getTotalLength() / gap) + 1;
      });
      expect(beadsDrawn).toBe(5);
    },
  );

  it('go along to presentation mode and to paper', async () => {
    const page = await (await pages.browser.newContext()).newPage();
    await page.goto(`${pages.address}/present#beads=gold`);
    await page.getByRole('heading').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.dataset.beads)).toBe('gold');
    const problem = encodeURIComponent(JSON.stringify(PROBLEM));
    await page.goto(`${pages.address}/print#beads=mauveFive&problem=${problem}`);
    await page.reload();
    await page.getByRole('checkbox', { name: 'Bead bars' }).check();
    await page.locator('circle[fill="#c08bd6"]').first().waitFor();
  });
});
