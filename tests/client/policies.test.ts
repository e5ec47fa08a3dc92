import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fractionText, score, type WrittenProblem } from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { laidOut, openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { perform, square, tile, untilSaved } from '../support/work-page.ts';

const pages = pagesForFile();
const { server } = pages;

const open = async (token: string, problem: WrittenProblem): Promise<[Page, AttemptBook]> => {
  const book = new AttemptBook(token, [problem]);
  server.books.set(token, book);
  const page = await openAs(await pages.browser.newContext(), pages.address, { token });
  await page.getByRole('grid').waitFor();
  return [page, book];
};

const NUMBERS = { stage: 'bars1', multiplicand: '34', multiplier: '7' } as const;
const TILES = [
  { do: 'layTile', edge: 'bottom', index: 0, digit: 4 },
  { do: 'layTile', edge: 'bottom', index: 1, digit: 3 },
  { do: 'layTile', edge: 'right', index: 0, digit: 7 },
] as const;

describe('the teacher decides how the mat answers', () => {
  it('"silent": it offers no check and says only what the task is', async () => {
    const [page] = await open('silent', { ...NUMBERS, policy: { control: 'silent' } });
    await page.getByRole('heading', { name: 'Work out 34 × 7.' }).waitFor();
    expect(await page.getByRole('button', { name: 'Check' }).count()).toBe(0);
  });

  it('"each step": a wrong count is lifted at once', async () => {
    const [page] = await open('each', { ...NUMBERS, policy: { control: 'eachStep' } });
    for (const action of TILES) await perform(page, action);
    await perform(page, { do: 'layBars', square: [0, 0], kind: 4, count: 7 });
    await perform(page, { do: 'count', square: [0, 0], total: 27 });
    await page.getByRole('heading', { name: 'Look again at what is lifted.' }).waitFor();
  });

  it('"bounce": a wrong move is taken back at once and stays in the record', async () => {
    const [page, book] = await open('bounce', { ...NUMBERS, policy: { bounce: true } });
    await perform(page, { do: 'layTile', edge: 'bottom', index: 0, digit: 5 });
    await page.getByRole('heading', { name: 'That does not fit yet. Try once more.' }).waitFor();
    await untilSaved(page);
    expect(book.entries.map(({ action }) => action.do)).toEqual(['layTile', 'undo']);
    expect(await tile(page, 'bottom', 0).getAttribute('aria-label')).toMatch(/no tile/);
  });
});

describe('numbers with a point', () => {
  it('name tenths and hundredths, and are worked to full marks with the point of the product', async () => {
    const [page, book] = await open('point', {
      stage: 'bars1',
      multiplicand: '2.4',
      multiplier: '0.3',
    });
    const cell = (row: string, column: string) =>
      page.getByRole('gridcell', { name: new RegExp(`^row ${row}, column ${column}, place `) });
    const slot = (side: string, place: string) =>
      page.getByRole('gridcell', { name: new RegExp(`^number ${side}, ${place}:`) });
    await slot('below', 'tenths').press('4');
    await slot('below', 'units').press('2');
    await slot('at the side', 'tenths').press('3');
    await page.getByRole('button', { name: 'Lay', exact: true }).click();
    await cell('tenths', 'tenths').press('+');
    await cell('tenths', 'tenths').press('+');
    await cell('tenths', 'tenths').press('4');
    await cell('tenths', 'units').press('2');
    await page.getByRole('button', { name: 'Count', exact: true }).click();
    await cell('tenths', 'tenths').click();
    await page.keyboard.type('12');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Exchange 1 ten' }).click();
    await page.keyboard.type('1');
    await page.getByRole('button', { name: 'Open this square: tenths' }).click();
    await page.keyboard.type('7');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Row', exact: true }).click();
    await page.getByRole('button', { name: '0', exact: true }).click();
    await page.getByRole('button', { name: 'Point', exact: true }).click();
    await page.getByRole('button', { name: '7', exact: true }).click();
    await page.getByRole('button', { name: '2', exact: true }).click();
    await page.getByRole('button', { name: 'Say it' }).click();
    await page.getByRole('button', { name: 'Read', exact: true }).click();
    await page.getByRole('button', { name: /^product, units:/ }).press('0');
    await page.getByRole('button', { name: /^product, tenths:/ }).press('7');
    await page.getByRole('button', { name: /^product, hundredths:/ }).press('2');
    await page.getByRole('button', { name: /^product, units:/ }).press('.');
    const units = page.getByRole('button', { name: 'product, units: 0, then the point' });
    expect(await units.textContent()).toBe('0.');
    await page.getByRole('button', { name: 'The product is done' }).click();
    await page.getByRole('button', { name: 'I am finished' }).click();
    await untilSaved(page);
    expect(fractionText(score(book.works()).fraction)).toBe('1');
  });
});

describe('a finger', () => {
  it('drags a bar from the tray to the mat, which follows it and snaps to the nearest square', async () => {
    const token = 'finger';
    const book = new AttemptBook(token, [NUMBERS]);
    server.books.set(token, book);
    const context = await pages.browser.newContext({
      hasTouch: true,
      viewport: { width: 390, height: 844 },
    });
    const page = await openAs(context, pages.address, { token });
    await page.getByRole('button', { name: 'Lay', exact: true }).tap();
    await laidOut(page);
    const from = await page.getByRole('button', { name: 'bar of 4' }).boundingBox();
    const to = await square(page, [0, 0]).boundingBox();
    if (from === null || to === null) throw new Error('Nothing to drag.');
    const debug = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number, y: number) =>
      debug.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y }],
      });
    await touch('touchStart', from.x + 20, from.y + 20);
    await touch('touchMove', from.x + 30, from.y - 20);
    await touch('touchMove', to.x + to.width + 8, to.y + to.height / 2);
    await page.locator('.ghost').waitFor();
    await touch('touchEnd', 0, 0);
    await untilSaved(page);
    expect(book.entries.map(({ action }) => action)).toEqual([
      { do: 'layBars', square: [0, 0], kind: 4, count: 1 },
    ]);
  });
});
