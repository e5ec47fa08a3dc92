import type { Browser, Page, Request } from 'playwright-core';
import { type Close, openAll } from '../../../deploy/tryout/check/check.ts';
import { emptyReport } from '../../../deploy/tryout/check/report.ts';
import { CHILDREN } from '../../../deploy/tryout/school/scenario.ts';
import { button, group, tile } from '../../support/work-page.ts';
import { type Figure, median } from '../figure.ts';
import { slowNetwork, slowProcessor } from './slow-device.ts';

const BUDGET_S = 4;
const RUNS = 5;

const beganAt = (request: Request): number => request.timing().startTime;

/** From the platform's POST to the tool until the tool has taken the child's first action, in s; nothing is cached. */
const launch = async (page: Page, school: string): Promise<number> => {
  const posted = page.waitForRequest((request) => request.url().endsWith('/lti/launch'));
  const accepted = page.waitForResponse(
    (response) => response.url().endsWith('/actions') && response.ok(),
  );
  await page.goto(`${school}/launch/1`, { waitUntil: 'commit' });
  await tile(page, 'bottom', 0).click();
  await button(group(page, 'Digits'), '4').click();
  const { startTime, responseEnd } = (await accepted).request().timing();
  return (startTime + responseEnd - beganAt(await posted)) / 1000;
};

const asChild = async (browser: Browser, school: string, name: string): Promise<number> => {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  const page = await context.newPage();
  await page.goto(school);
  await page.getByRole('button', { name }).click();
  await page.getByRole('link', { name: 'Gradebook' }).waitFor();
  await slowProcessor(page);
  await slowNetwork(page);
  const seconds = await launch(page, school);
  await context.close();
  return seconds;
};

/** The real server with its database and the try-out school, and browsers that have never been there. */
export const launchFigure = async (): Promise<Figure> => {
  const closing: Close[] = [];
  const seconds: number[] = [];
  try {
    const { browser, plan } = await openAll(emptyReport(0), closing);
    for (const { given } of CHILDREN.slice(0, RUNS))
      seconds.push(await asChild(browser, plan.school, given));
  } finally {
    for (const close of closing.reverse()) await close();
  }
  const measured = median(seconds);
  return {
    what: `from the launch to the first action taken, median of ${RUNS}`,
    unit: 's',
    ...{ measured, floor: null, ratio: null, budget: BUDGET_S, holds: measured <= BUDGET_S },
  };
};
