import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { WrittenProblem } from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { button, untilSaved } from '../support/work-page.ts';
import { violations } from './axe.ts';

const pages = pagesForFile();

const CHOICES: readonly WrittenProblem[] = [
  { stage: 'bars1', multiplicand: '34', multiplier: '7' },
  { stage: 'bars', multiplicand: '4.5', multiplier: '12' },
  { stage: 'build', multiplicand: '402', multiplier: '31' },
];

const bookOf = (token: string): AttemptBook => {
  const book = new AttemptBook(token, []);
  book.choices = CHOICES;
  pages.server.books.set(token, book);
  return book;
};

const open = async (token: string, [width, height] = [820, 600]): Promise<Page> => {
  const context = await pages.browser.newContext({ viewport: { width, height } });
  const page = await openAs(context, pages.address, { token });
  await page.getByRole('heading', { level: 1 }).waitFor();
  return page;
};

describe('a child who may choose', () => {
  it('picks one of the works by its numbers and works it; it is there again the next time', async () => {
    const book = bookOf('ada');
    const page = await open('ada');
    await page.getByRole('heading', { name: 'Which one do you want to do?' }).waitFor();
    await button(page, '4.5 × 12').dblclick();
    await page.getByRole('grid').waitFor();
    expect(book.problems).toEqual([CHOICES[1]]);
    const again = await open('ada');
    await again.getByRole('grid').waitFor();
    await again.getByText('4.5 × 12').first().waitFor();
    await untilSaved(again);
  });

  it('goes on with what was chosen on another device, and is told so', async () => {
    const book = bookOf('bo');
    const [one, two] = [await open('bo'), await open('bo')];
    await button(one, '34 × 7').click();
    await one.getByRole('grid').waitFor();
    await button(two, '4.5 × 12').click();
    await two.getByRole('heading', { name: /^You chose this one before/ }).waitFor();
    await two.getByText('34 × 7').first().waitFor();
    expect(book.problems).toEqual([CHOICES[0]]);
  });

  it('is told when the server does not answer, and chooses once more', async () => {
    bookOf('cleo');
    const page = await open('cleo');
    pages.server.away.add('cleo');
    await button(page, '34 × 7').click();
    await page.getByText(/^The server does not answer/).waitFor();
    pages.server.away.delete('cleo');
    await button(page, '34 × 7').click();
    await page.getByRole('grid').waitFor();
  });

  it('hears numbers in words where writing them in figures is the work', async () => {
    bookOf('dov');
    const page = await open('dov');
    await button(page, /^four hundred (and )?two × thirty-one$/).waitFor();
  });

  it.each([
    [390, 844],
    [320, 640],
    [1024, 768],
  ])(
    'finds big places to press, nothing cut, and nothing for axe, at %i × %i',
    async (width, height) => {
      bookOf('eli');
      const page = await open('eli', [width, height]);
      for (const work of await page.getByRole('button').all()) {
        const box = await work.boundingBox();
        expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
      }
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide).toBeLessThanOrEqual(width);
      expect(await violations(page)).toEqual([]);
    },
  );
});
