import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { bookWith } from '../../support/attempt-book.ts';
import { launchBrowser, openAs } from '../../support/open-page.ts';
import { PageServer } from '../../support/page-server.ts';
import { SCENES, type Scene } from './scenes.ts';

/** A phone, a platform's frame, a tablet and a laptop. */
const SIZES = [
  { width: 390, height: 844, hasTouch: true },
  { width: 820, height: 600, hasTouch: true },
  { width: 1024, height: 768, hasTouch: true },
  { width: 1440, height: 900, hasTouch: false },
] as const;

const take = async (
  browser: Browser,
  address: string,
  scene: Scene,
  [folder, size, colorScheme]: [string, (typeof SIZES)[number], 'light' | 'dark'],
): Promise<void> => {
  const { width, height, hasTouch } = size;
  const context = await browser.newContext({
    viewport: { width, height },
    hasTouch,
    colorScheme,
    reducedMotion: 'reduce',
  });
  const page = await openAs(context, address, { token: scene.name });
  await page.getByRole('heading').first().waitFor();
  for (const name of scene.then)
    if (name.startsWith('row ')) {
      await page.getByRole('gridcell', { name }).click();
      await page.getByRole('region').waitFor();
    } else await page.getByRole('button', { name, exact: true }).click();
  if (scene.says !== null) await page.getByRole('heading', { name: scene.says }).waitFor();
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({
    path: join(folder, `${scene.name}-${width}x${height}-${colorScheme}.png`),
  });
  await context.close();
};

/** Pictures of every stage's page at every size, light and dark: `npm run screenshots -- [FOLDER [NAME]]`. */
const [folder = '.screenshots', only = ''] = process.argv.slice(2);
await mkdir(folder, { recursive: true });
const server = new PageServer();
const address = await server.start();
const browser = await launchBrowser();
for (const scene of SCENES.filter(({ name }) => name.includes(only))) {
  server.books.set(scene.name, bookWith(scene.name, scene.problem, scene.actions));
  for (const size of SIZES)
    for (const colorScheme of ['light', 'dark'] as const)
      await take(browser, address, scene, [folder, size, colorScheme]);
}
await browser.close();
await server.stop();
