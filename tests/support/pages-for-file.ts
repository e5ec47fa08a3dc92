import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser } from './open-page.ts';
import { PageServer } from './page-server.ts';

export interface Pages {
  readonly server: PageServer;
  readonly address: string;
  readonly browser: Browser;
}

/** The built pages and a browser for one test file, there before its tests and gone after them. */
export function pagesForFile(): Pages {
  const server = new PageServer();
  let started: { address: string; browser: Browser } | undefined;
  const there = () => {
    if (started === undefined) throw new Error('the pages are served before the first test');
    return started;
  };
  beforeAll(async () => {
    started = { address: await server.start(), browser: await launchBrowser() };
  });
  afterAll(async () => {
    await started?.browser.close();
    await server.stop();
  });
  return {
    server,
    get address() {
      return there().address;
    },
    get browser() {
      return there().browser;
    },
  };
}
