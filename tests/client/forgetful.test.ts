import { readFileSync } from 'node:fs';
import type { Frame, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { mayForget, type Place } from '../../client/launch/forgetful.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { button, perform } from '../support/work-page.ts';

const FRAME: Place = {
  framed: true,
  probe: () => true,
  hasAccess: async () => false,
  isPersisted: async () => false,
};
const refuses = (): never => {
  throw new DOMException('denied', 'SecurityError');
};

describe('a browser may forget', () => {
  it.each<[string, Partial<Place>, boolean]>([
    ['what a frame keeps apart from its site', {}, true],
    ['what a frame cannot keep at all', { probe: refuses, hasAccess: async () => true }, true],
    ['what a frame writes and does not find again', { probe: () => false }, true],
    ['nothing that it promised to keep', { isPersisted: async () => true }, false],
    ['nothing of a frame that is let in as its site', { hasAccess: async () => true }, false],
    ['nothing that can be told, where it does not say', { hasAccess: async () => null }, false],
    [
      'nothing that can be told, where it refuses to say',
      { hasAccess: async () => refuses() },
      false,
    ],
    ['nothing more in a frame than in the tab itself', { framed: false, probe: refuses }, false],
  ])('%s', async (_what, place, forgets) => {
    expect(await mayForget({ ...FRAME, ...place })).toBe(forgets);
  });
});

const pages = pagesForFile();

/** The page as the tool answers a launch: the built one, with the code to confirm. */
const launched = (): string =>
  readFileSync(new URL('../../client/dist/index.html', import.meta.url), 'utf8').replace(
    '</head>',
    '<script type="application/json" id="boot">{"code":"c","proofKey":"k","storage":null}</script></head>',
  );

const REOPEN = { action: '/lti/login', fields: { iss: 'https://school.example' } };

/** A launch inside a frame of another site, in a browser that says whether the frame has access to what its site keeps. */
const launchFramed = async (
  token: string,
  { access, reopen }: { access: boolean; reopen: object | null },
): Promise<[Page, Frame]> => {
  const numbers = { stage: 'bars1', multiplicand: '34', multiplier: '7' } as const;
  pages.server.books.set(token, new AttemptBook(token, [numbers]));
  const context = await pages.browser.newContext({ viewport: { width: 820, height: 640 } });
  await context.addInitScript(`document.hasStorageAccess = async () => ${access}`);
  const page = await context.newPage();
  const school = pages.address.replace('127.0.0.1', 'localhost');
  await page.route(`${school}/course`, (route) =>
    route.fulfill({
      contentType: 'text/html',
      body: `<iframe src="${pages.address}/lti/launch" width="800" height="600"></iframe>`,
    }),
  );
  await context.route('**/lti/launch', (route) =>
    route.fulfill({ contentType: 'text/html', body: launched() }),
  );
  await context.route('**/lti/launch/confirm', (route) =>
    route.fulfill({ json: { token, expiresIn: 3600, view: 'work', reopen } }),
  );
  await context.route('**/lti/login', (route) =>
    route.fulfill({ contentType: 'text/html', body: 'the tab' }),
  );
  await page.goto(`${school}/course`);
  const frame = page.frames().find((each) => each.url().startsWith(pages.address));
  if (frame === undefined) throw new Error('nothing was framed');
  await frame.getByRole('grid').waitFor();
  return [page, frame];
};

const NOTICE = 'This browser may forget here what is not saved yet.';

describe('a page in a frame whose browser may forget', () => {
  it('says so in one sentence and opens the work in a tab, by the platform’s own parameters', async () => {
    const [page, frame] = await launchFramed('ada', { access: false, reopen: REOPEN });
    await frame.getByText(NOTICE).waitFor();
    const sent = page
      .context()
      .waitForEvent('request', (request) => request.url().endsWith('/lti/login'));
    const opened = page.context().waitForEvent('page');
    await button(frame, 'Open in a tab').click();
    await (await opened).getByText('the tab').waitFor();
    const request = await sent;
    expect([request.method(), request.postData()]).toEqual([
      'POST',
      'iss=https%3A%2F%2Fschool.example',
    ]);
  });

  it('offers no tab once something was done here, because it might be left behind', async () => {
    const [, frame] = await launchFramed('bo', { access: false, reopen: REOPEN });
    await frame.getByText(NOTICE).waitFor();
    await perform(frame, { do: 'layTile', edge: 'bottom', index: 0, digit: 4 });
    await frame.getByText(NOTICE).waitFor({ state: 'detached' });
  });

  it('says it without a button where the platform allows no second sign-in', async () => {
    const [, frame] = await launchFramed('cleo', { access: false, reopen: null });
    await frame.getByText(NOTICE).waitFor();
    expect(await button(frame, 'Open in a tab').count()).toBe(0);
  });

  it('says nothing where the browser keeps what the page keeps', async () => {
    const [, frame] = await launchFramed('dov', { access: true, reopen: REOPEN });
    expect(await frame.getByText(NOTICE).count()).toBe(0);
  });
});
