import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { STAGES } from '../../engine/index.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { halfDone } from './half-done.ts';
import { layoutOf, lostIn, smallIn, spaceText } from './layout.ts';

const pages = pagesForFile();

/** What is looked for on the page, by its language. */
const NAMES = {
  'en-GB': { count: 'Count', pile: /bars? of/, back: 'Back to the mat', keys: 'Keys' },
  'es-ES': { count: 'Contar', pile: /barras? de/, back: 'Volver al tapete', keys: 'Teclas' },
} as const;
type Locale = keyof typeof NAMES;

/** Looks at the page at each of its moves, with a square opened where one can be, and at the list of keys. */
const everywhere = async (
  page: Page,
  look: () => Promise<readonly string[]>,
  locale: Locale = 'en-GB',
): Promise<string[]> => {
  const names = NAMES[locale];
  const found: string[] = [];
  const note = async (where: string) =>
    found.push(...(await look()).map((each) => `${where}: ${each}`));
  await note('at first');
  const moves = page.getByRole('navigation').getByRole('button');
  for (const move of await moves.all()) {
    const name = (await move.textContent()) ?? '';
    await move.click();
    await note(name);
    if (name !== names.count) continue;
    await page.getByRole('gridcell', { name: names.pile }).last().click();
    const back = page.getByRole('button', { name: names.back });
    await back.waitFor();
    await note('a square opened');
    await back.click();
  }
  await page.getByRole('button', { name: names.keys }).click();
  await page.getByRole('dialog').waitFor();
  await note('keys');
  return found;
};

describe.each([...STAGES])('the page of the stage %s', (stage) => {
  it.each([320, 390, 820])(
    'has squares of 44 pixels on touch, and nothing to press under 24 (WCAG 2.2, 2.5.8), in a window %i wide',
    async (width) => {
      const page = await halfDone(pages, stage, {
        viewport: { width, height: 640 },
        hasTouch: true,
      });
      expect(await everywhere(page, async () => smallIn(await layoutOf(page)))).toEqual([]);
      await page.context().close();
    },
  );

  it.each(['en-GB', 'es-ES'] as const)(
    'loses nothing at 320 pixels, and nothing but mat and paper scrolls sideways (WCAG 2.2, 1.4.10), in %s',
    async (locale) => {
      const page = await halfDone(pages, stage, { viewport: { width: 320, height: 640 }, locale });
      expect(await everywhere(page, async () => lostIn(await layoutOf(page)), locale)).toEqual([]);
      await page.context().close();
    },
  );

  it('loses nothing at twice the size in a window of 1024 by 768 (WCAG 2.2, 1.4.4)', async () => {
    const page = await halfDone(pages, stage, {
      viewport: { width: 512, height: 384 },
      deviceScaleFactor: 2,
    });
    expect(await everywhere(page, async () => lostIn(await layoutOf(page)))).toEqual([]);
    await page.context().close();
  });

  it.each([
    [320, 'en-GB'],
    [1024, 'en-GB'],
    [320, 'es-ES'],
  ] as const)(
    'loses nothing when text is spaced widely (WCAG 2.2, 1.4.12), in a window %i wide, in %s',
    async (width, locale) => {
      const page = await halfDone(pages, stage, { viewport: { width, height: 768 }, locale });
      const spaced = async () => {
        await spaceText(page);
        return lostIn(await layoutOf(page));
      };
      expect(await everywhere(page, spaced, locale)).toEqual([]);
      await page.context().close();
    },
  );
});
