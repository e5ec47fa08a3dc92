import { describe, expect, it } from 'vitest';
import type { Stage } from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { StagePage } from '../support/stage-page.ts';
import { violations } from './axe.ts';
import { childRuns, type Window } from './child-runs.ts';
import { presentationOf } from './presented-work.ts';
import { STAGE_CASES } from './stage-cases.ts';

/** The page of one stage in Chromium: worked by every hand, and looked at by axe half way. */
export const stageRuns = (stage: Stage): void => {
  const pages = pagesForFile();
  const { server } = pages;

  const visit = async (token: string, { width, height, hasTouch = false }: Window) => {
    const viewport = { width, height };
    const context = await pages.browser.newContext({ viewport, hasTouch, reducedMotion: 'reduce' });
    const page = await openAs(context, pages.address, { token });
    return { page, close: () => context.close() };
  };

  childRuns(stage, { server, visit, untouchable: () => null });

  describe(`the page of the stage ${stage}`, () => {
    it('has nothing that axe objects to, in light, dark and high contrast', async () => {
      const { written } = STAGE_CASES[stage];
      server.books.set('axe', new AttemptBook('axe', [written]));
      const { page, close } = await visit('axe', { width: 1024, height: 768 });
      const actions = presentationOf(written);
      const worker = new StagePage(page, stage);
      for (const action of actions.slice(0, Math.ceil(actions.length / 3))) await worker.do(action);
      expect(await violations(page)).toEqual([]);
      await close();
    });
  });
};
