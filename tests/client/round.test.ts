import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { AttemptBook } from '../support/attempt-book.ts';
import { childWork } from '../support/child-work.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { goOn, perform } from '../support/work-page.ts';

const pages = pagesForFile();
const { server } = pages;

const RIGHT = childWork('34', '7');
const SLIPPED = childWork('34', '7', [0, 0]);

/** Opens work that was finished before. */
const finished = async (token: string, works: readonly (typeof RIGHT)[]) => {
  const problem = { stage: 'bars1', multiplicand: '34', multiplier: '7' } as const;
  const book = new AttemptBook(
    token,
    works.map(() => problem),
  );
  const all = works.flatMap((actions, i) => actions.map((action) => ({ problem: i, action })));
  book.add(
    0,
    all.map((one, n) => ({ client: 'before', n, at: n, ...one })),
  );
  server.books.set(token, book);
  const page = await openAs(await pages.browser.newContext(), pages.address, { token });
  await page.getByRole('heading', { name: 'Your work' }).waitFor();
  return { book, page };
};

const again = (page: Page) => page.getByRole('button', { name: 'Another round, for yourself' });

describe('the result', () => {
  it('shows the child the work as it was left, what was right at once and what was put right', async () => {
    const { page } = await finished('shown', [SLIPPED]);
    await page.getByText('1 put right').waitFor();
    await page.getByText(/^\d+ right at once$/).waitFor();
    // To be looked at, not to be worked: none of it can be reached by keys or ears.
    expect(await page.locator('[inert] pw-mat').isVisible()).toBe(true);
    const product = page.locator('[inert] pw-paper').getByLabel('product, units: 8');
    expect(await product.textContent()).toBe('8');
  });

  it('offers no further round where all was right', async () => {
    const { page } = await finished('right', [RIGHT]);
    expect(await again(page).count()).toBe(0);
  });
});

describe('a further round', () => {
  it('is on what was not right, for the child alone: nothing of it reaches the server', async () => {
    const { book, page } = await finished('round', [RIGHT, SLIPPED]);
    const before = book.entries.length;
    await again(page).click();
    await page.getByText('A round for yourself: nothing is sent').waitFor();
    await page.getByRole('img', { name: 'Problem 1 of 1' }).waitFor();
    for (const action of RIGHT) await perform(page, action);
    await goOn(page);
    await page.getByText('In the round for yourself:').waitFor();
    expect(book.entries.length).toBe(before);
    expect(await page.locator('article', { hasText: 'In the round' }).textContent()).not.toContain(
      'put right',
    );
  });

  it('can be left for the result at any time', async () => {
    const { page } = await finished('left', [SLIPPED]);
    await again(page).click();
    await page.getByRole('button', { name: 'Back to the result' }).click();
    await page.getByRole('heading', { name: 'Your work' }).waitFor();
  });
});
