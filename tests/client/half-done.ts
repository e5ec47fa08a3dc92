import type { BrowserContextOptions, Page } from 'playwright-core';
import type { Stage, WrittenProblem } from '../../engine/index.ts';
import { type AttemptBook, bookWith } from '../support/attempt-book.ts';
import { laidOut, openAs } from '../support/open-page.ts';
import type { Pages } from '../support/pages-for-file.ts';
import { presentationOf } from './presented-work.ts';
import { STAGE_CASES } from './stage-cases.ts';

/** A book with so many actions of the worked presentation in it already. */
export const begunBook = (token: string, problem: WrittenProblem, done: number): AttemptBook =>
  bookWith(token, problem, presentationOf(problem).slice(0, done));

/** The page of a stage in a context of its own, half of its work done. */
export const halfDone = async (
  { server, browser, address }: Pages,
  stage: Stage,
  options: BrowserContextOptions,
): Promise<Page> => {
  const { written } = STAGE_CASES[stage];
  const token = JSON.stringify([stage, options]);
  const half = Math.floor(presentationOf(written).length / 2);
  server.books.set(token, begunBook(token, written, half));
  const context = await browser.newContext({
    locale: 'en-GB',
    ...options,
    reducedMotion: 'reduce',
  });
  const page = await openAs(context, address, { token });
  await page.getByRole('heading', { level: 1 }).waitFor();
  await laidOut(page);
  return page;
};
