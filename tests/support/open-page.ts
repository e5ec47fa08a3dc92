import bundled from '@sparticuz/chromium';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';

const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Unpacks the browser where it is not yet; whoever asks for it meanwhile would start what is half written. */
export const unpackBrowser = (): Promise<string> => bundled.executablePath();

export const launchBrowser = async (): Promise<Browser> =>
  chromium.launch({ executablePath: await unpackBrowser(), args: ARGS });

interface As {
  /** Token of a book of the page server. */
  readonly token: string;
  readonly view?: 'work' | 'class';
}

/** Opens the page as somebody who is signed in, the way a reload of the tab does. */
export const openAs = async (
  context: BrowserContext,
  address: string,
  { token, view = 'work' }: As,
): Promise<Page> => {
  const page = await context.newPage();
  const session = { token, expiresIn: 3600, since: Date.now(), view };
  const kept = JSON.stringify(JSON.stringify(session));
  await page.addInitScript({ content: `sessionStorage.setItem('session', ${kept})` });
  await page.goto(`${address}/${view}`);
  return page;
};

/** Mat and opened square take their size within the frame that first shows them: whoever measures comes after it. */
export const laidOut = (page: Page): Promise<void> =>
  page.evaluate(`(async () => {
    for (let begun = 0; begun < 2; begun += 1) await new Promise(requestAnimationFrame);
  })()`);
