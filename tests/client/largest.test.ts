import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Action } from '../../engine/index.ts';
import { bookWith } from '../support/attempt-book.ts';
import { laidOut, openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { SCENES, type Scene } from './screens/scenes.ts';

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

/** Whether the whole of it is seen, as the page stands. */
const isInSight = (cell: Locator): Promise<boolean> =>
  cell.evaluate((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const root = element.getRootNode() as ShadowRoot;
    const corners = [left + 8, right - 8].flatMap((x) => [
      root.elementFromPoint(x, top + 8),
      root.elementFromPoint(x, bottom - 8),
    ]);
    return corners.every((met) => element.contains(met));
  });

const open = async ({ name, problem, actions }: Scene, width: number, height: number) => {
  const token = `${name}-${width}-${actions.length}`;

  pages.server.books.set(token, bookWith(token, problem, actions));
  const context = await pages.browser.newContext({
    viewport: { width, height },
    hasTouch: true,
    reducedMotion: 'reduce',
  });
  const page = await openAs(context, pages.address, { token });
  await page.getByRole('heading', { level: 1 }).waitFor();
  await laidOut(page);
  return page;
};

describe.each(FULL.map((scene) => [scene.name, scene] as const))(
  'the page of the largest problem: %s',
  (_name, scene) => {
    it.each(SIZES)('has every control within reach at %i by %i', async (width, height) => {
      const page = await open(scene, width, height);
      const controls = page.getByRole('button', { disabled: false });
      expect(await controls.count()).toBeGreaterThan(10);
      expect(await covered(controls)).toEqual([]);
      await page.context().close();
    });
  },
);

describe('a mat that does not fit', () => {
  const bars = FULL.find(({ problem }) => problem.stage === 'bars')!;
  const laidOn = ({ do: name }: Action) => name === 'layBars';
  const lays = bars.actions.flatMap((action, at) => (laidOn(action) ? [at] : []));

  it.each([2, 16, 30, 38])('is opened where the child was laying bars: %i', async (nth) => {
    const scene = { ...bars, actions: bars.actions.slice(0, lays[nth]! + 1) };
    const last = scene.actions.at(-1)!;
    if (!('square' in last)) throw new Error('no bars were laid');
    const page = await open(scene, 820, 600);
    const cell = page.locator(`[data-cell="square ${last.square[0]} ${last.square[1]}"]`);
    await expect.poll(() => isInSight(cell)).toBe(true);
    await page.context().close();
  });
});
