import { rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dirname, join } from 'node:path';
import express from 'express';
import type { Browser, BrowserContext, Frame, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { createLti } from '../../server/lti/index.ts';
import { createOutbound, type Outbound } from '../../server/lti/outbound.ts';
import { platformStore } from '../../server/platforms/store.ts';
import { databaseForFile } from '../support/database.ts';
import { launchBrowser } from '../support/open-page.ts';
import { openPlatform, type TestPlatform } from '../support/platform.ts';
import { buildPages } from './support/built-pages.ts';
import { type FramingPlatform, openFramingPlatform } from './support/framing-platform.ts';

/** The tool is on `localhost`, the platform on `127.0.0.1`: for a browser these are two sites. */
const database = databaseForFile();
const server = createServer();
let url: string;
let pages: string;
let outbound: Outbound;
let platform: TestPlatform;
let framing: FramingPlatform;
let browser: Browser;
let context: BrowserContext;
let page: Page;
/** How the tool's login was answered in each test: 302 or 200. */
let logins: { status: number; site: string | undefined }[];

beforeAll(async () => {
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  url = `http://localhost:${(server.address() as AddressInfo).port}`;
  [pages, platform, browser] = await Promise.all([buildPages(), openPlatform(), launchBrowser()]);
  framing = await openFramingPlatform(
    () => platform,
    () => url,
  );
  const { connection } = database();
  const platforms = platformStore(connection);
  outbound = createOutbound({ production: false });
  const log = createLog('silent');
  const admit = async () =>
    ({ ok: true, value: { token: 't', expiresIn: 3600, view: 'work' } }) as const;
  const { router } = await createLti({
    ...{ url, secret: 'x'.repeat(32), connection, platforms, log, outbound, pages, admit },
    hasRoom: () => true,
  });
  await platforms.save(
    { issuer: framing.origin, clientId: platform.clientId },
    {
      ...{ name: 'x', kid: 'k', authUrl: `${framing.origin}/auth`, deployments: ['1'] },
      ...{ tokenUrl: platform.tokenUrl, jwksUrl: platform.jwksUrl },
    },
  );
  const app = express();
  app.use('/assets', express.static(join(pages, 'assets')));
  app.use((req, res, next) => {
    if (req.path === '/lti/login')
      res.once('finish', () =>
        logins.push({ status: res.statusCode, site: req.get('sec-fetch-site') }),
      );
    next();
  });
  app.use(router);
  app.get('/work', (_req, res) => res.sendFile(join(pages, 'index.html')));
  server.on('request', app);
});
afterAll(async () => {
  await browser?.close();
  await Promise.all([platform?.close(), framing?.close(), outbound?.close()]);
  server.closeAllConnections();
  server.close();
  if (pages) rmSync(dirname(pages), { recursive: true });
});
beforeEach(async () => {
  logins = [];
  framing.extra = {};
  context = await browser.newContext();
  page = await context.newPage();
});
afterEach(() => context.close());

/** What the page of the activity found out, once it did. */
async function outcomeIn(
  frame: Frame | Page,
): Promise<{ session?: object; problem?: { code: string; reopen: unknown } }> {
  await frame.waitForSelector('body[data-outcome]', { state: 'attached' });
  return JSON.parse(await frame.evaluate<string>('document.body.dataset.outcome'));
}

async function openInFrame(): Promise<Frame> {
  await page.goto(`${framing.origin}/frame`);
  const frame = page.frame('activity');
  if (frame === null) throw new Error('no frame');
  return frame;
}

/** Cookies of other sites blocked, as a browser's setting does it (Chrome DevTools Protocol, Network.setCookieControls). */
async function blockForeignCookies() {
  const session = await context.newCDPSession(page);
  await session.send('Network.enable');
  // The second and third are required by Chromium 143 and no longer known to newer ones.
  const controls = {
    enableThirdPartyCookieRestriction: true,
    disableThirdPartyCookieMetadata: true,
    disableThirdPartyCookieHeuristics: true,
  };
  await session.send('Network.setCookieControls', controls);
}

/** Every cookie is lost between the platform's sign-in and our page, as some tablets do. */
const loseCookies = () =>
  context.route(`${url}/lti/launch`, async (route) => {
    await context.clearCookies();
    await route.continue();
  });

/** The page's own storage is closed, as when all site data are blocked. */
const closeStorage = () =>
  context.addInitScript(
    `Object.defineProperty(window, 'localStorage', {
      get() { throw new DOMException('closed', 'SecurityError'); },
    });`,
  );

describe('in a frame of another site', () => {
  test('signs in, with cookies allowed, by a redirect', async () => {
    const frame = await openInFrame();
    expect(await outcomeIn(frame)).toMatchObject({ session: { token: 't' }, view: 'work' });
    expect(logins).toEqual([{ status: 302, site: 'cross-site' }]);
  });

  test('leaves no token, code or state in any address', async () => {
    const seen: string[] = [];
    page.on('framenavigated', (frame) => seen.push(frame.url()));
    const frame = await openInFrame();
    await outcomeIn(frame);
    expect(frame.url()).toBe(`${url}/work`);
    const ours = seen.filter((address) => address.startsWith(url));
    expect(ours.every((address) => new URL(address).search + new URL(address).hash === '')).toBe(
      true,
    );
  });

  test('stays signed in over a reload, and a new tab is not signed in', async () => {
    const frame = await openInFrame();
    await outcomeIn(frame);
    await frame.goto(`${url}/work`);
    expect(await outcomeIn(frame)).toMatchObject({ session: { token: 't' } });
    const tab = await context.newPage();
    await tab.goto(`${url}/work`);
    expect(await outcomeIn(tab)).toEqual({ problem: { code: 'notOpened', reopen: null } });
  });

  test('signs in with foreign cookies blocked', async () => {
    await blockForeignCookies();
    const frame = await openInFrame();
    expect(await outcomeIn(frame)).toMatchObject({ session: { token: 't' } });
    expect(logins).toEqual([{ status: 200, site: 'cross-site' }]);
  });

  test('signs in by its own storage when every cookie is lost', async () => {
    await blockForeignCookies();
    await loseCookies();
    expect(await outcomeIn(await openInFrame())).toMatchObject({ session: { token: 't' } });
  });

  test('signs in by the platform’s storage when nothing else is left', async () => {
    framing.extra = { lti_storage_target: '_parent' };
    await blockForeignCookies();
    await loseCookies();
    await closeStorage();
    expect(await outcomeIn(await openInFrame())).toMatchObject({ session: { token: 't' } });
  });

  test('without any proof: no session, and one press opens it in a tab of its own', async () => {
    await blockForeignCookies();
    await loseCookies();
    await closeStorage();
    const frame = await openInFrame();
    expect(await outcomeIn(frame)).toMatchObject({ problem: { code: 'noProof', reopen: {} } });
    await context.unroute(`${url}/lti/launch`);
    const [tab] = await Promise.all([context.waitForEvent('page'), frame.click('button')]);
    expect(await outcomeIn(tab)).toMatchObject({ session: { token: 't' } });
    expect(logins.at(-1)).toEqual({ status: 200, site: 'same-origin' });
  });
});

test('in a window of its own it signs in by a redirect', async () => {
  await page.goto(`${framing.origin}/window`);
  expect(await outcomeIn(page)).toMatchObject({ session: { token: 't' } });
  expect(page.url()).toBe(`${url}/work`);
  expect(logins).toEqual([{ status: 302, site: 'cross-site' }]);
});

test('a launch that was begun by somebody else signs nobody in', async () => {
  const theirs = await fetch(`${url}/lti/login`, {
    method: 'POST',
    redirect: 'manual',
    headers: { 'sec-fetch-dest': 'document' },
    body: new URLSearchParams({
      ...{ iss: framing.origin, client_id: platform.clientId, login_hint: '4' },
      target_link_uri: `${url}/lti/launch`,
    }),
  });
  await page.goto(theirs.headers.get('location') ?? '');
  expect(await outcomeIn(page)).toMatchObject({ problem: { code: 'noProof' } });
});
