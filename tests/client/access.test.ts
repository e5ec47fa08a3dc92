import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { AttemptBook } from '../support/attempt-book.ts';
import { childWork } from '../support/child-work.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { openSquare } from '../support/work-page.ts';
import { violations } from './axe.ts';

const served = pagesForFile();
const { server } = served;

const CLASS = {
  activity: { title: 'Lantern class, two numbers', release: 'byTeacher', problems: [] },
  children: [
    {
      state: 'released',
      problemsFinished: 1,
      problems: 1,
      score: { awarded: '88/5', available: '18' },
      delivery: { state: 'stuck', reason: 'noScope', lastTriedAt: 1_700_000_000_000 },
    },
    {
      state: 'working',
      problemsFinished: 0,
      problems: 1,
      score: null,
      delivery: { state: 'none', reason: 'notFinished', lastTriedAt: null },
    },
  ],
};

/** A book with the first `count` actions of a whole work already in it. */
const begun = (token: string, count: number): void => {
  const book = new AttemptBook(token, [{ stage: 'bars1', multiplicand: '34', multiplier: '7' }]);
  const actions = childWork('34', '7', [0, 0]).slice(0, count);
  book.add(
    0,
    actions.map((action, n) => ({ client: 'before-0', n, at: n, problem: 0, action })),
  );
  server.books.set(token, book);
};

beforeAll(() => {
  server.classroom = CLASS;
  begun('laid', 5);
  begun('slipped', 7);
  begun('finished', 999);
});

const pages: Record<string, (page: Page) => Promise<unknown>> = {
  laid: async (page) => page.getByRole('grid').waitFor(),
  'laid, class': async (page) => page.getByRole('row', { name: /^Child 2/ }).waitFor(),
  'laid, with a square opened': async (page) => openSquare(page, [0, 0]),
  slipped: async (page) => page.getByRole('heading', { name: /^Look again/ }).waitFor(),
  finished: async (page) => page.getByText('Your teacher has your work.').waitFor(),
};

describe('axe', () => {
  it.each(Object.keys(pages))(
    'finds nothing in light, dark and high contrast on the page: %s',
    async (name) => {
      const context = await served.browser.newContext({ reducedMotion: 'reduce' });
      const [token = '', view] = name.split(', ');
      const as = { token, view: view === 'class' ? ('class' as const) : ('work' as const) };
      const page = await openAs(context, served.address, as);
      await pages[name]?.(page);
      expect(await violations(page)).toEqual([]);
      await context.close();
    },
  );
});
