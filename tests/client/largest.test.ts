import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { AttemptBook } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { SCENES } from './screens/scenes.ts';

const pages = pagesForFile();

const SIZES = [
  [390, 844],
  [820, 600],
  [1024, 768],
] as const;
const FULL = SCENES.filter(({ name }) => name.endsWith('-full'));

/** The controls that something lies over: a finger in the middle of an edge does not meet them, once they are scrolled to. */
const covered = (controls: Locator): Promise<string[]> =>
  controls.evaluateAll((elements) =>
    elements
      .filter((element) => {
        element.scrollIntoView({ block: 'nearest', inline: 'nearest' });
        const { left, right, top, bottom } = element.getBoundingClientRect();
        const [x, y] = [(left + right) / 2, (top + bottom) / 2];
        const edges = [
          [x, top + 3],
          [x, bottom - 3],
          [left + 3, y],
          [right - 3, y],
        ] as const;
        const root = element.getRootNode() as ShadowRoot;
        return !edges.every((edge) => element.contains(root.elementFromPoint(...edge)));
      })
      .map((element) => element.textContent ?? ''),
  );

describe.each(FULL.map((scene) => [scene.name, scene] as const))(
  'the page of the largest problem: %s',
  (name, { problem, actions }) => {
    it.each(SIZES)('has every control within reach at %i by %i', async (width, height) => {
      const token = `${name}-${width}`;
      const book = new AttemptBook(token, [problem]);
      book.add(
        0,
        actions.map((action, n) => ({ client: 'before', n, at: n, problem: 0, action })),
      );
      pages.server.books.set(token, book);
      const context = await pages.browser.newContext({
        viewport: { width, height },
        hasTouch: true,
        reducedMotion: 'reduce',
      });
      const page = await openAs(context, pages.address, { token });
      await page.getByRole('heading', { level: 1 }).waitFor();
      const controls = page.getByRole('button', { disabled: false });
      expect(await controls.count()).toBeGreaterThan(10);
      expect(await covered(controls)).toEqual([]);
      await context.close();
    });
  },
);
