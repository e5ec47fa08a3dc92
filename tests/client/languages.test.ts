import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { choiceEn } from '../../client/words/choice-en.ts';
import { choiceEs } from '../../client/words/choice-es.ts';
import { classEn } from '../../client/words/class-en.ts';
import { classEs } from '../../client/words/class-es.ts';
import { en } from '../../client/words/en.ts';
import { es } from '../../client/words/es.ts';
import { helpEn } from '../../client/words/help-en.ts';
import { helpEs } from '../../client/words/help-es.ts';
import { resultEn } from '../../client/words/result-en.ts';
import { resultEs } from '../../client/words/result-es.ts';
import { bookWith } from '../support/attempt-book.ts';
import { childWork } from '../support/child-work.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { square } from '../support/work-page.ts';

const pages = pagesForFile();
const { server } = pages;

beforeAll(() => {
  const problem = { stage: 'bars1', multiplicand: '34', multiplier: '7' } as const;
  const done = childWork('34', '7').slice(0, 5);
  server.books.set('ada', bookWith('ada', problem, done));
});

const open = async (locale: string): Promise<Page> => {
  const context = await pages.browser.newContext({ locale });
  const page = await openAs(context, pages.address, { token: 'ada' });
  await page.locator('pw-mat').waitFor();
  return page;
};

type Phrases = Readonly<Record<string, string | ((values: never) => string)>>;
const valuesOf = (phrase: unknown): string[] =>
  typeof phrase === 'string' ? [...phrase.matchAll(/\{\w+\}/g)].map(([name]) => name).sort() : [];

describe.each<[string, Phrases, Phrases]>([
  ['the child’s pages', en, es],
  ['help', helpEn, helpEs],
  ['the result', resultEn, resultEs],
  ['a choice', choiceEn, choiceEs],
  ['the teacher’s pages', classEn, classEs],
])('the Spanish words of %s', (_name, english, spanish) => {
  it('are all there, and none is English', () => {
    expect(Object.keys(spanish).sort()).toEqual(Object.keys(english).sort());
    const same = Object.keys(english).filter(
      (id) => typeof english[id] === 'string' && english[id] === spanish[id],
    );
    // What is only signs, or the same word in both.
    const signs = same.filter((id) =>
      /[a-z]{3}/i.test(String(english[id]).replace(/\{\w+\}/g, '')),
    );
    expect(signs.filter((id) => !id.startsWith('keys'))).toEqual([]);
  });

  it('name the same values wherever both are plain phrases', () => {
    for (const id of Object.keys(english))
      if (typeof english[id] === 'string' && typeof spanish[id] === 'string')
        expect([id, valuesOf(spanish[id])]).toEqual([id, valuesOf(english[id])]);
  });
});

/** Every text that is shown or read out, with the letters of any script. */
const textsOf = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    const texts = [];
    const visit = (node) => {
      if (node.nodeType === Node.TEXT_NODE) texts.push(node.textContent.trim());
      if (['STYLE', 'SCRIPT', 'TITLE'].includes(node.nodeName)) return;
      if (node.getAttribute?.('aria-label')) texts.push(node.getAttribute('aria-label'));
      for (const child of [...(node.shadowRoot?.childNodes ?? []), ...node.childNodes]) visit(child);
    };
    visit(document.body);
    return texts.filter((text) => /\\p{L}{2}/u.test(text));
  })()`);

describe('a page', () => {
  it('is in Spanish for who reads Spanish, and says so to a screen reader', async () => {
    const page = await open('es-MX');
    await page.getByRole('heading', { level: 1, name: /fila|montón/ }).waitFor();
    expect(await page.evaluate('document.documentElement.lang')).toBe('es-MX');
    expect((await textsOf(page)).filter((text) => /\b(the|row|square|your)\b/i.test(text))).toEqual(
      [],
    );
  });

  it('shows no word that stands in no list of words (test locale en-XA of the Unicode CLDR)', async () => {
    const page = await open('en-XA');
    const texts = await textsOf(page);
    expect(texts.length).toBeGreaterThan(20);
    expect(texts.filter((text) => !/[[\]·]/.test(text))).toEqual([]);
  });

  it('runs from right to left while mat and numbers do not (test locale ar-XB of the Unicode CLDR)', async () => {
    const page = await open('ar-XB');
    expect(await page.evaluate('getComputedStyle(document.body).direction')).toBe('rtl');
    for (const part of ['pw-mat', 'pw-tray', 'pw-keypad']) {
      const found = page.locator(part).first();
      if ((await found.count()) === 0) continue;
      expect(await found.evaluate((element) => getComputedStyle(element).direction)).toBe('ltr');
    }
    const wide = await page.evaluate('document.documentElement.scrollWidth - innerWidth');
    expect(wide).toBeLessThanOrEqual(0);
    const xOf = async (column: number) => (await square(page, [0, column]).boundingBox())?.x ?? NaN;
    expect(await xOf(1)).toBeLessThan(await xOf(0));
  });
});
