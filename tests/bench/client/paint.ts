import type { Browser, Locator, Page } from 'playwright-core';
import type { PageServer } from '../../support/page-server.ts';
import { button, group, openedSquare, square } from '../../support/work-page.ts';
import type { Figure } from '../figure.ts';
import { openFullMat } from './full-mat.ts';

const BUDGET_MS = 100;
const ROUNDS = 20;
/** What the browser does not report took less than this (Event Timing, W3C). */
const LEAST_MS = 16;
/** Longer than any answer should take: one interaction at a time, as a hand works. */
const PAUSE_MS = 400;

/** Runs in the page: keeps the longest event of every interaction, from the finger to the next paint. */
const WATCH = `
  globalThis.interactions = new Map();
  new PerformanceObserver((list) => {
    for (const { interactionId, duration } of list.getEntries())
      if (interactionId > 0)
        interactions.set(interactionId, Math.max(duration, interactions.get(interactionId) ?? 0));
  }).observe({ type: 'event', durationThreshold: ${LEAST_MS} });
`;

type Spot = readonly [x: number, y: number];

/**
 * Found before anything is measured, and pressed by place: looking for an element by its role, and asking whether it
 * would take the press, is work of the page too, by far slower than the page's own answer on a slow device.
 */
const spotOf = async (target: Locator): Promise<Spot> => {
  const box = await target.boundingBox();
  if (box === null) throw new Error(`not to be seen: ${target}`);
  return [box.x + box.width / 2, box.y + box.height / 2];
};

const pressAt = async (page: Page, [x, y]: Spot): Promise<void> => {
  await page.mouse.click(x, y);
  await page.waitForTimeout(PAUSE_MS);
};

/** Lays a bar here and there, and takes it back. */
const lay = async (page: Page): Promise<void> => {
  await pressAt(page, await spotOf(button(page, 'Lay')));
  const bars = await Promise.all(
    [4, 7].map((kind) => spotOf(button(group(page, 'Bars'), `bar of ${kind}`))),
  );
  const undo = await spotOf(button(page, 'Undo'));
  const squares = await Promise.all([0, 1, 2, 3].map((at) => spotOf(square(page, [at, at + 1]))));
  for (let round = 0; round < ROUNDS; round += 1)
    for (const spot of [bars[round % 2]!, squares[round % 4]!, undo]) await pressAt(page, spot);
};

/** Counts the pile of an opened square, and takes it back. */
const count = async (page: Page): Promise<void> => {
  await pressAt(page, await spotOf(button(page, 'Count')));
  await pressAt(page, await spotOf(square(page, [1, 1])));
  const opened = openedSquare(page, [1, 1]);
  const digit = await spotOf(button(group(opened, 'The pile makes'), '7'));
  await pressAt(page, digit);
  const said = await spotOf(button(opened, 'That is it'));
  const undo = await spotOf(button(page, 'Undo'));
  for (let round = 0; round < ROUNDS; round += 1)
    for (const spot of [said, undo, digit]) await pressAt(page, spot);
};

/** The duration that 98 in 100 interactions stay within. */
export const paintFigure = async (
  browser: Browser,
  pages: { server: PageServer; address: string },
): Promise<Figure> => {
  const page = await openFullMat(browser, pages, 'paint');
  await page.evaluate(WATCH);
  await lay(page);
  await count(page);
  const [reported, known] = await page.evaluate<[number[], number]>(
    '[[...interactions.values()], performance.interactionCount]',
  );
  await page.context().close();
  const unreported = Array.from({ length: Math.max(0, known - reported.length) }, () => LEAST_MS);
  const all = [...unreported, ...reported].sort((one, other) => one - other);
  const measured = all[Math.ceil(0.98 * all.length) - 1] ?? Number.POSITIVE_INFINITY;
  return {
    what: `from an interaction to the next paint, 98th percentile of ${all.length}, mat of 6 × 13 full of bars`,
    unit: 'ms',
    ...{ measured, floor: null, ratio: null, budget: BUDGET_MS, holds: measured <= BUDGET_MS },
  };
};
