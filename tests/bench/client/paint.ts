import type { Browser, Page } from 'playwright-core';
import type { PageServer } from '../../support/page-server.ts';
import { perform } from '../../support/work-page.ts';
import type { Figure } from '../figure.ts';
import { openFullMat } from './full-mat.ts';

const BUDGET_MS = 100;
const ROUNDS = 12;
/** What the browser does not report took less than this (Event Timing, W3C). */
const LEAST_MS = 16;

/** Runs in the page: keeps the longest event of every interaction, from the finger to the next paint. */
const WATCH = `
  globalThis.interactions = new Map();
  new PerformanceObserver((list) => {
    for (const { interactionId, duration } of list.getEntries())
      if (interactionId > 0)
        interactions.set(interactionId, Math.max(duration, interactions.get(interactionId) ?? 0));
  }).observe({ type: 'event', durationThreshold: ${LEAST_MS} });
`;

/** What a child does with a full mat: lays, takes back, opens a square and counts. */
const work = async (page: Page): Promise<void> => {
  for (let round = 0; round < ROUNDS; round += 1) {
    const square: [number, number] = [round % 4, round % 8];
    await perform(page, { do: 'layBars', square, kind: 1 + (round % 9), count: 2 });
    await perform(page, { do: 'undo' });
    await perform(page, { do: 'count', square, total: 27 });
    await perform(page, { do: 'undo' });
  }
};

/** The duration that 98 in 100 interactions stay within. */
export const paintFigure = async (
  browser: Browser,
  pages: { server: PageServer; address: string },
): Promise<Figure> => {
  const page = await openFullMat(browser, pages, 'paint');
  await page.evaluate(WATCH);
  await work(page);
  await page.waitForTimeout(500);
  const [reported, count] = await page.evaluate<[number[], number]>(
    '[[...interactions.values()], performance.interactionCount]',
  );
  await page.context().close();
  const unreported = Array.from({ length: Math.max(0, count - reported.length) }, () => LEAST_MS);
  const all = [...unreported, ...reported].sort((one, other) => one - other);
  const measured = all[Math.ceil(0.98 * all.length) - 1] ?? Number.POSITIVE_INFINITY;
  return {
    what: `from an interaction to the next paint, 98th percentile of ${all.length}, mat of 6 × 13 full of bars`,
    unit: 'ms',
    ...{ measured, floor: null, ratio: null, budget: BUDGET_MS, holds: measured <= BUDGET_MS },
  };
};
