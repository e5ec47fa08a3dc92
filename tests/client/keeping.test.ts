import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { AttemptBook } from '../support/attempt-book.ts';
import { childWork } from '../support/child-work.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { perform, square, tile, untilSaved } from '../support/work-page.ts';

const pages = pagesForFile();
const { server } = pages;
let context: BrowserContext;

beforeEach(async () => {
  server.mood = 'well';
  server.books.clear();
  for (const token of ['ada', 'bo'])
    server.books.set(
      token,
      new AttemptBook(token, [{ stage: 'bars1', multiplicand: '34', multiplier: '7' }]),
    );
  context = await pages.browser.newContext();
});

afterEach(() => context.close());

const WORK = childWork('34', '7');
const open = (token: string): Promise<Page> => openAs(context, pages.address, { token });
const kept = (token: string) => server.books.get(token)?.entries ?? [];
const tileName = (page: Page, index: number) =>
  tile(page, 'bottom', index).getAttribute('aria-label');

const lay = async (page: Page, from: number, to: number) => {
  for (const action of WORK.slice(from, to)) await perform(page, action);
};

describe('work that is done', () => {
  it('is there after a reload in the middle, saved or not', async () => {
    const page = await open('ada');
    await lay(page, 0, 2);
    await untilSaved(page);
    server.mood = 'away';
    await lay(page, 2, 4);
    server.mood = 'well';
    await page.reload();
    await square(page, [0, 0]).waitFor();
    expect(await square(page, [0, 0]).getAttribute('aria-label')).toMatch(/7 bars of 4, makes 28$/);
    await untilSaved(page);
    expect(kept('ada').map(({ action }) => action)).toEqual(WORK.slice(0, 4));
  });

  it('is sent without being asked while the server is there', async () => {
    const page = await open('ada');
    await lay(page, 0, 1);
    await expect.poll(() => kept('ada').length).toBe(1);
  });

  it('is never called saved while the server is away, and is sent when it is back', async () => {
    const page = await open('ada');
    await untilSaved(page);
    server.mood = 'away';
    await lay(page, 0, 3);
    await page.getByText('Not saved yet: 3 moves').waitFor();
    expect(await page.getByText('Saved', { exact: true }).count()).toBe(0);
    server.mood = 'well';
    await untilSaved(page);
    expect(kept('ada').map(({ action }) => action)).toEqual(WORK.slice(0, 3));
  });

  it('is kept on the device when the session is gone, and the child is told what to do', async () => {
    const page = await open('ada');
    await lay(page, 0, 1);
    await untilSaved(page);
    server.mood = 'signedOut';
    await lay(page, 1, 2);
    await page.getByText('Please open this again from your course.').waitFor();
    server.mood = 'well';
    const again = await open('ada');
    await untilSaved(again);
    expect(kept('ada').map(({ action }) => action)).toEqual(WORK.slice(0, 2));
  });
});

describe('a shared device', () => {
  it('neither shows nor sends what the child before has left unsent', async () => {
    const first = await open('ada');
    await untilSaved(first);
    server.away.add('ada');
    await lay(first, 0, 2);
    await first.getByText('Not saved yet: 2 moves').waitFor();
    await first.close();
    const second = await open('bo');
    await untilSaved(second);
    expect(await tileName(second, 0)).toBe('number below, units: no tile');
    await lay(second, 0, 1);
    await expect.poll(() => kept('bo').length).toBe(1);
    expect(kept('ada')).toEqual([]);
    server.away.clear();
    const back = await open('ada');
    await untilSaved(back);
    expect(kept('ada').map(({ action }) => action)).toEqual(WORK.slice(0, 2));
  });
});

describe('two pages of one child', () => {
  it('are put together: what the other page did comes first, everything once', async () => {
    const one = await open('ada');
    const two = await open('ada');
    await untilSaved(one);
    await untilSaved(two);
    await perform(one, { do: 'layTile', edge: 'bottom', index: 0, digit: 4 });
    await expect.poll(() => kept('ada').length).toBe(1);
    await perform(two, { do: 'layTile', edge: 'bottom', index: 1, digit: 3 });
    await untilSaved(two);
    await expect.poll(() => tileName(two, 0)).toBe('number below, units: 4');
    expect(await tileName(two, 1)).toBe('number below, tens: 3');
    expect(kept('ada').map(({ n, action }) => [n, action.do])).toEqual([
      [0, 'layTile'],
      [0, 'layTile'],
    ]);
  });

  it('set aside what no longer fits, and say so', async () => {
    const one = await open('ada');
    const two = await open('ada');
    await untilSaved(one);
    await untilSaved(two);
    await lay(one, 0, 1);
    await expect.poll(() => kept('ada').length).toBe(1);
    const book = server.books.get('ada');
    book?.add(1, [
      {
        client: 'another-device',
        n: 0,
        at: 5,
        problem: 0,
        action: { do: 'finish', what: 'problem' },
      },
    ]);
    await perform(two, { do: 'layTile', edge: 'bottom', index: 1, digit: 3 });
    await two.getByText('1 move from another page did not fit any more.').waitFor();
    await two.getByRole('heading', { name: 'This problem is finished.' }).waitFor();
    expect(kept('ada').at(-1)?.aside).toBe('finished');
  });
});
