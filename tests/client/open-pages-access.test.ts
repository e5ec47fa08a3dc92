import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import * as inks from '../../client/print/inks.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { violations } from './axe.ts';

const CSS = readFileSync(new URL('../../client/ui/tokens.css', import.meta.url), 'utf8');
const pages = pagesForFile();

const begin = async (page: Page, stage: string) => {
  await page.getByRole('combobox').selectOption(stage);
  await page.getByRole('textbox').fill('34 × 26');
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByText(/^Move 0 of/).waitFor();
};

const PAGES: Record<string, (page: Page) => Promise<unknown>> = {
  'print with every sheet': async (page) => {
    for (const box of await page.getByRole('checkbox').all()) await box.check();
    await page.getByRole('textbox').fill('34 × 26\n3 4 5');
  },
  'present, choosing': async (page) => page.getByRole('button', { name: 'Begin' }).waitFor(),
  'present, a move on the mat': async (page) => {
    await begin(page, 'Record the partial products');
    for (let at = 0; at < 20; at += 1) await page.keyboard.press('PageDown');
  },
  'present, the note': async (page) => {
    await begin(page, 'Squared paper');
    await page.keyboard.press('End');
    await page.getByRole('button', { name: 'Note as presented' }).click();
  },
};

const visit = async (name: string, width: number, height: number): Promise<Page> => {
  const page = await pages.browser.newPage({
    locale: 'en-GB',
    reducedMotion: 'reduce',
    viewport: { width, height },
  });
  await page.goto(`${pages.address}/${name.split(/[ ,]/)[0]}`);
  await page.getByRole('heading').first().waitFor();
  await PAGES[name]?.(page);
  return page;
};

describe.each(Object.keys(PAGES))('%s', (name) => {
  it('gives axe nothing to say in light, dark and high contrast', async () => {
    const page = await visit(name, 1024, 768);
    expect(await violations(page)).toEqual([]);
    await page.close();
  });

  it('needs no scrolling sideways at 320 pixels (WCAG 2.2, 1.4.10)', async () => {
    const page = await visit(name, 320, 640);
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(320);
    await page.close();
  });
});

describe('the inks of paper', () => {
  it('are the light values of the design tokens', () => {
    const [light = ''] = CSS.split('@media');
    const token = (name: string) => new RegExp(`--${name}: (#[0-9a-f]{6})`).exec(light)?.[1];
    const names = ['units', 'tens', 'hundreds'];
    expect(inks.INK).toBe(token('ink'));
    expect(inks.FAINT).toBe(token('line'));
    expect(inks.TILE_BELOW).toBe(token('tile-below'));
    expect(inks.TINTS).toEqual(names.map(token));
    expect(inks.EDGES).toEqual(names.map((name) => token(`${name}-edge`)));
    const usual = Array.from({ length: 10 }, (_, i) => token(`bead-${i + 1}`));
    for (const [scheme, beads] of Object.entries(inks.BEADS)) {
      const [, own = ''] = CSS.split(`data-beads="${scheme}"`);
      const of = (i: number) => new RegExp(`^[^}]*--bead-${i + 1}: (#[0-9a-f]{6})`).exec(own)?.[1];
      expect([scheme, beads]).toEqual([scheme, usual.map((bead, i) => of(i) ?? bead)]);
    }
  });
});
