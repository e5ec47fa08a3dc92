import type { Browser, Page } from 'playwright-core';
import type { PageServer } from '../../support/page-server.ts';
import { button, choose, group, MOUSE } from '../../support/work-page.ts';
import { type Figure, median } from '../figure.ts';
import { openFullMat } from './full-mat.ts';
import { slowProcessor } from './slow-device.ts';

const BUDGET_MS = 32;
const BUDGET_RATIO = 2;
const RUNS = 5;
const MOVES = 180;

/** Runs in the page: notes when each frame begins. */
const WATCH = `
  globalThis.frames = [];
  const note = (at) => { frames.push(at); requestAnimationFrame(note); };
  requestAnimationFrame(note);
`;

/** Moves the mouse over the mat in a winding way, as a child looks for the square. */
const wander = async (page: Page): Promise<void> => {
  for (let at = 0; at < MOVES; at += 1) {
    const turn = (2 * Math.PI * at) / 60;
    await page.mouse.move(420 + 250 * Math.cos(turn), 330 + 150 * Math.sin(turn * 1.3));
  }
};

/** The gap between frames that 99 in 100 stay within while the mouse moves, in ms. */
const gapWhileMoving = async (page: Page): Promise<number> => {
  await page.evaluate('frames.length = 0');
  await wander(page);
  const frames = await page.evaluate<number[]>('frames');
  const gaps = frames.slice(1).map((at, index) => at - frames[index]!);
  gaps.sort((one, other) => one - other);
  return gaps[Math.ceil(0.99 * gaps.length) - 1] ?? Number.POSITIVE_INFINITY;
};

const onMat = async (page: Page): Promise<number> => {
  const bar = await button(group(page, 'Bars'), 'bar of 7').boundingBox();
  if (bar === null) throw new Error('the bar of 7 is not to be seen');
  await page.mouse.move(bar.x + bar.width / 2, bar.y + bar.height / 2);
  await page.mouse.down();
  await page.mouse.move(420, 330);
  if (!(await page.locator('.ghost').isVisible())) throw new Error('the bar is not in the hand');
  const gap = await gapWhileMoving(page);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  return gap;
};

const openEmpty = async (browser: Browser): Promise<Page> => {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  const page = await context.newPage();
  await slowProcessor(page);
  return page;
};

/** A bar dragged over a full mat, each time beside the same movement over an empty page. */
export const dragFigures = async (
  browser: Browser,
  pages: { server: PageServer; address: string },
): Promise<Figure[]> => {
  const [mat, empty] = [await openFullMat(browser, pages, 'drag'), await openEmpty(browser)];
  await choose(mat, 'Lay', MOUSE);
  for (const page of [mat, empty]) await page.evaluate(WATCH);
  const [own, bare]: [number[], number[]] = [[], []];
  for (let run = 0; run < RUNS; run += 1) {
    await empty.bringToFront();
    bare.push(await gapWhileMoving(empty));
    await mat.bringToFront();
    own.push(await onMat(mat));
  }
  await Promise.all([mat, empty].map((page) => page.context().close()));
  const [measured, floor] = [median(own), median(bare)];
  const ratio = measured / floor;
  const what = `gap between frames while a bar is dragged, 99th percentile, median of ${RUNS}`;
  const figure = { what, unit: 'ms', measured, floor, ratio };
  return [
    { ...figure, ratio: null, budget: BUDGET_MS, holds: measured <= BUDGET_MS },
    {
      ...figure,
      what: `${what}, against an empty page`,
      budget: BUDGET_RATIO,
      holds: ratio <= BUDGET_RATIO,
    },
  ];
};
