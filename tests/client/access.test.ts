import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AttemptBook } from '../support/attempt-book.ts';
import { childWork } from '../support/child-work.ts';
import { launchBrowser, openAs } from '../support/open-page.ts';
import { PageServer } from '../support/page-server.ts';
import { openSquare } from '../support/work-page.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const server = new PageServer();
let address = '';
let browser: Browser;

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

beforeAll(async () => {
  address = await server.start();
  browser = await launchBrowser();
  server.classroom = CLASS;
  begun('laid', 5);
  begun('slipped', 7);
  begun('finished', 999);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
});

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

const violations = async (page: Page): Promise<string[]> => {
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run: (node: Document) => Promise<{ violations: Violation[] }> };
    };
    return (await axe.run(document)).violations;
  });
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
  );
};

const pages: Record<string, (page: Page) => Promise<unknown>> = {
  laid: async (page) => page.getByRole('grid').waitFor(),
  'laid, class': async (page) => page.getByRole('row', { name: /^Child 2/ }).waitFor(),
  'laid, with a square opened': async (page) => openSquare(page, [0, 0]),
  slipped: async (page) => page.getByRole('heading', { name: /^Look again/ }).waitFor(),
  finished: async (page) => page.getByText('Your teacher has your work.').waitFor(),
};

describe('axe', () => {
  it.each(Object.keys(pages))(
    'finds nothing in light and in dark on the page: %s',
    async (name) => {
      const context = await browser.newContext({ reducedMotion: 'reduce' });
      const [token = '', view] = name.split(', ');
      const as = { token, view: view === 'class' ? ('class' as const) : ('work' as const) };
      const page = await openAs(context, address, as);
      await pages[name]?.(page);
      // Through the debugger, because the page's own policy lets no foreign script in.
      await page.evaluate(AXE);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await violations(page)).toEqual([]);
      }
      await context.close();
    },
  );
});

describe('on a phone', () => {
  it('squares are 44 pixels wide or more (2.5.5), every other target 24 (2.5.8), and nothing but the mat scrolls sideways (1.4.10)', async () => {
    const context = await browser.newContext({
      viewport: { width: 320, height: 640 },
      hasTouch: true,
    });
    const page = await openAs(context, address, { token: 'laid' });
    await page.getByRole('grid').waitFor();
    const box = await page
      .getByRole('gridcell', { name: /^row units, column units/ })
      .boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    for (const target of await page.getByRole('button').all()) {
      const size = await target.boundingBox();
      expect(Math.min(size?.width ?? 24, size?.height ?? 24)).toBeGreaterThanOrEqual(24);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
      320,
    );
    await context.close();
  });
});
