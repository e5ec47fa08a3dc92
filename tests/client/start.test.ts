import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { BrowserContext } from 'playwright-core';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { AttemptBook } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { perform, untilSaved } from '../support/work-page.ts';

const pages = pagesForFile();
const { server } = pages;
let context: BrowserContext;

beforeAll(() => {
  server.classroom = {
    activity: { title: 'One number', release: 'onFinish', problems: [] },
    children: [],
  };
});

beforeEach(async () => {
  server.mood = 'well';
  const problems = [{ stage: 'bars1', multiplicand: '34', multiplier: '7' }] as const;
  server.books.set('ada', new AttemptBook('ada', problems));
  context = await pages.browser.newContext();
});

afterEach(() => context.close());

describe('a launch whose server does not answer', () => {
  /** The page as the tool answers a launch: the built one, with the code to confirm. */
  const PAGE = readFileSync(
    fileURLToPath(new URL('../../client/dist/index.html', import.meta.url)),
    'utf8',
  ).replace(
    '</head>',
    '<script type="application/json" id="boot">{"code":"c","proofKey":"k","storage":null}</script></head>',
  );

  it('starts again by one press, without the platform’s form being posted once more', async () => {
    const page = await context.newPage();
    let launches = 0;
    let reachable = false;
    await page.route('**/lti/launch', async (route) => {
      launches += 1;
      await route.fulfill({ contentType: 'text/html', body: PAGE });
    });
    await page.route('**/lti/launch/confirm', (route) =>
      reachable
        ? route.fulfill({ json: { token: 'ada', expiresIn: 3600, view: 'work' } })
        : route.abort(),
    );
    await page.goto(`${pages.address}/lti/launch`);
    const again = page.getByRole('button', { name: 'Try again' });
    await again.waitFor();
    reachable = true;
    await again.click();
    await untilSaved(page);
    expect(launches).toBe(1);
    expect(new URL(page.url()).pathname).toBe('/work');
  });
});

describe('a trial', () => {
  it('leads back to the class it was begun from; a child has no such way', async () => {
    const page = await openAs(context, pages.address, { token: 'ada', view: 'class' });
    await page.locator('[data-do=trial]').click();
    await perform(page, { do: 'layTile', edge: 'bottom', index: 0, digit: 4 });
    await untilSaved(page);
    await page.getByRole('button', { name: 'Back to the class' }).click();
    await page.locator('[data-do=trial]').waitFor();
    const child = await openAs(context, pages.address, { token: 'ada' });
    await untilSaved(child);
    expect(await child.getByRole('button', { name: 'Back to the class' }).count()).toBe(0);
  });
});

describe('what the window tells', () => {
  /** How often the page listens for the network and for being left. */
  const COUNTING = `
    window.listening = 0;
    const names = ['online', 'pagehide'];
    const [add, remove] = [window.addEventListener, window.removeEventListener];
    window.addEventListener = function (name, ...rest) {
      if (names.includes(name)) window.listening += 1;
      return add.call(this, name, ...rest);
    };
    window.removeEventListener = function (name, ...rest) {
      if (names.includes(name)) window.listening -= 1;
      return remove.call(this, name, ...rest);
    };`;

  it('reaches the work for as long as its page is shown, however often a trial is begun', async () => {
    await context.addInitScript(COUNTING);
    const page = await openAs(context, pages.address, { token: 'ada', view: 'class' });
    const listening = () => page.evaluate<number>('window.listening');
    const trial = page.locator('[data-do=trial]');
    await trial.waitFor();
    const before = await listening();
    for (let round = 0; round < 3; round += 1) {
      await trial.click();
      await page.getByRole('grid').waitFor();
      expect(await listening()).toBe(before + 2);
      await page.getByRole('button', { name: 'Back to the class' }).click();
      await trial.waitFor();
      expect(await listening()).toBe(before);
    }
  });
});
