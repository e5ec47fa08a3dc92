import { launchBrowser } from '../support/open-page.ts';
import { PageServer } from '../support/page-server.ts';
import { dragFigures } from './client/drag.ts';
import { launchFigure } from './client/launch.ts';
import { paintFigure } from './client/paint.ts';
import { weightFigure } from './client/weight.ts';
import type { Bench } from './figure.ts';

/** A child's page in a real browser on a slow device: its weight, its launch, its answer to a finger, its frames. */
export const client: Bench = async () => {
  const browser = await launchBrowser();
  const server = new PageServer();
  const pages = { server, address: await server.start() };
  try {
    const paint = await paintFigure(browser, pages);
    const drag = await dragFigures(browser, pages);
    const launch = await launchFigure();
    const figures = [weightFigure(), launch, paint, ...drag];
    const none = { ratio: null, perSecond: null, floorPerSecond: null, p50Ms: null, p99Ms: null };
    return { ...none, runs: 5, figures };
  } finally {
    await browser.close();
    await server.stop();
  }
};
