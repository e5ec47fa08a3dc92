import type { Browser } from 'playwright-core';

const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The browser of PLACEWEAVE_BROWSER (a path), else the one that came with the packages (Linux only). */
export const openBrowser = async (): Promise<Browser> => {
  const { chromium } = await import('playwright-core');
  const { default: bundled } = await import('@sparticuz/chromium');
  const executablePath = process.env.PLACEWEAVE_BROWSER ?? (await bundled.executablePath());
  return chromium.launch({ executablePath, args: ARGS });
};
