import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import { AttemptBook } from '../support/attempt-book.ts';
import { type ChildAction, childWork } from '../support/child-work.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import {
  openSquare,
  perform,
  productCell,
  square,
  tile,
  untilSaved,
} from '../support/work-page.ts';

const pages = pagesForFile();
const { server } = pages;
let page: Page;
let book: AttemptBook;
let count = 0;

beforeEach(async () => {
  const token = `child-${count++}`;
  book = new AttemptBook(token, [{ stage: 'bars1', multiplicand: '34', multiplier: '7' }]);
  server.books.set(token, book);
  page = await openAs(await pages.browser.newContext(), pages.address, { token });
});

const WORK = childWork('34', '7');
const upTo = (test: (action: ChildAction) => boolean) => WORK.slice(0, WORK.findIndex(test));
const statusOf = (step: string) =>
  book.works()[0]?.steps.find(({ id }) => id === step)?.status ?? 'no such step';

const doAll = async (actions: readonly ChildAction[]) => {
  for (const action of actions) await perform(page, action);
};

describe('a slip', () => {
  it('is lifted at a check, mended by undo, and counts as corrected', async () => {
    await doAll(upTo(({ do: what }) => what === 'count'));
    await doAll([{ do: 'count', square: [0, 0], total: 29 }, { do: 'check' }]);
    await page.getByRole('heading', { name: 'Look again at what is lifted.' }).waitFor();
    await page.getByRole('button', { name: 'Back to the mat' }).click();
    const lifted = page.getByRole('gridcell', { name: /^row units, column units.*look again$/ });
    await lifted.waitFor();
    await doAll([{ do: 'undo' }, { do: 'count', square: [0, 0], total: 28 }]);
    await untilSaved(page);
    expect(await lifted.count()).toBe(0);
    expect(statusOf('counted:0:0')).toBe('corrected');
  });

  it('may be taken back before the mat has answered: it then counts as right at once', async () => {
    await doAll([
      ...WORK.slice(0, 3),
      { do: 'layBars', square: [0, 0], kind: 5, count: 7 },
      { do: 'undo' },
      { do: 'layBars', square: [0, 0], kind: 4, count: 7 },
      { do: 'check' },
    ]);
    await page.getByRole('heading', { name: 'All is right so far.' }).waitFor();
    await untilSaved(page);
    expect(statusOf('laid:0:0')).toBe('first');
  });

  it('in a digit of the product is lifted on the paper when the product is done', async () => {
    await doAll(upTo(({ do: what }) => what === 'write'));
    await doAll([
      { do: 'write', line: 'product', place: 0, digit: 8 },
      { do: 'write', line: 'product', place: 1, digit: 2 },
      { do: 'write', line: 'product', place: 2, digit: 2 },
      { do: 'finish', what: 'product' },
    ]);
    const lifted = page.getByRole('button', { name: 'product, tens: 2, look again' });
    await lifted.waitFor();
    expect(await lifted.textContent()).toBe('2');
    await perform(page, { do: 'write', line: 'product', place: 1, digit: 3 });
    await untilSaved(page);
    expect(statusOf('read:1')).toBe('corrected');
  });
});

describe('making ten', () => {
  it('joins picked bars, cuts the last one where it is too long, and exchanges in one press', async () => {
    await doAll(upTo(({ do: what }) => what === 'count'));
    await perform(page, { do: 'makeTen', square: [0, 0], bars: [4, 4, 4], exchange: true });
    await untilSaved(page);
    expect(book.entries.slice(-2).map(({ action }) => action)).toEqual([
      { do: 'makeTen', square: [0, 0], bars: [4, 4, 4], split: { kind: 4, take: 2 } },
      { do: 'exchange', from: [0, 0], tens: 1, to: [0, 1], ones: 1 },
    ]);
  });

  it('lets an exchange go to any square, and the mat tells at a check', async () => {
    await doAll(upTo(({ do: what }) => what === 'exchange'));
    await doAll([{ do: 'exchange', from: [0, 0], tens: 2, to: [0, 2], ones: 2 }, { do: 'check' }]);
    await page.getByRole('heading', { name: 'Look again at what is lifted.' }).waitFor();
    await doAll([{ do: 'undo' }, { do: 'exchange', from: [0, 0], tens: 2, to: [0, 1], ones: 2 }]);
    await untilSaved(page);
    expect(statusOf('settled:0')).toBe('corrected');
  });

  it('works by dragging a ten-bar onto the square to the left, too', async () => {
    await doAll(upTo(({ do: what }) => what === 'count'));
    await perform(page, { do: 'count', square: [0, 0], total: 28 });
    const opened = await openSquare(page, [0, 0]);
    const neighbour = opened.getByRole('button', { name: 'Open this square: tens' });
    await opened.getByRole('button', { name: 'bar of 10, 1 of 3' }).dragTo(neighbour);
    await untilSaved(page);
    expect(book.entries.at(-1)?.action).toEqual({
      do: 'exchange',
      from: [0, 0],
      tens: 1,
      to: [0, 1],
      ones: 1,
    });
  });
});

describe('help', () => {
  it('asks first, then marks the place, then says how; only the later ones count', async () => {
    const hint = page.getByRole('button', { name: 'Help me' });
    await hint.click();
    await page.getByRole('heading', { name: /^Which digits are still missing/ }).waitFor();
    await hint.click();
    await page.getByRole('heading', { name: 'Look at the marked place.' }).waitFor();
    await hint.click();
    await page.getByRole('heading', { name: /^Lay the tile \d at the \w+\.$/ }).waitFor();
    await untilSaved(page);
    const hints = book.entries.map(({ action }) => action);
    expect(hints.map((action) => action.do === 'hint' && action.level)).toEqual([1, 2, 3]);
  });
});

describe('the page for ears', () => {
  it('names squares by row, column, place and pile, and tells what an exchange did', async () => {
    await doAll(upTo(({ do: what }) => what === 'count'));
    const name = await square(page, [0, 1]).getAttribute('aria-label');
    expect(name).toBe('row units, column tens, place tens, 7 bars of 3, makes 21');
    expect(await tile(page, 'bottom', 1).getAttribute('aria-label')).toBe('number below, tens: 3');
    expect(await productCell(page, 2).getAttribute('aria-label')).toBe('product, hundreds: empty');
    await doAll([
      { do: 'count', square: [0, 0], total: 28 },
      { do: 'exchange', from: [0, 0], tens: 2, to: [0, 1], ones: 2 },
    ]);
    const told = /^2 tens exchanged, 2 laid in the tens\./;
    await page.getByRole('status').filter({ hasText: told }).waitFor();
  });
});
