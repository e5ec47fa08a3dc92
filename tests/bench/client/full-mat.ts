import type { Browser, Page } from 'playwright-core';
import type { Action } from '../../../engine/index.ts';
import { bookWith } from '../../support/attempt-book.ts';
import { openAs } from '../../support/open-page.ts';
import type { PageServer } from '../../support/page-server.ts';
import { slowProcessor } from './slow-device.ts';

const ROWS = 6;
const COLUMNS = 13;

const BARS: readonly Action[] = Array.from({ length: ROWS * COLUMNS }, (_, at) => {
  const square: [number, number] = [Math.floor(at / COLUMNS), at % COLUMNS];
  return { do: 'layBars', square, kind: 1 + (at % 9), count: 5 };
});

const TILES: readonly Action[] = [
  ...Array.from({ length: 7 }, (_, index) => ({ edge: 'bottom', index }) as const),
  ...Array.from({ length: ROWS }, (_, index) => ({ edge: 'right', index }) as const),
].map((at) => ({ do: 'layTile', ...at, digit: 6 }));

/** The largest mat there is, five bars on each of its squares, before a child on a slow device. */
export const openFullMat = async (
  browser: Browser,
  { server, address }: { server: PageServer; address: string },
  token: string,
): Promise<Page> => {
  const numbers = { multiplicand: '6666666', multiplier: '666666' };
  const mat = { rows: ROWS, columns: COLUMNS };
  const problem = { stage: 'bars', ...numbers, mat } as const;
  server.books.set(token, bookWith(token, problem, [...TILES, ...BARS]));
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  const page = await openAs(context, address, { token });
  await page.getByRole('grid').waitFor();
  await page.evaluate('document.fonts.ready');
  await slowProcessor(page);
  return page;
};
