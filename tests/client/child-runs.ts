import { describe, expect, it } from 'vitest';
import type { Action, Stage } from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import type { ChildPage } from '../support/child-page.ts';
import type { PageServer } from '../support/page-server.ts';
import { StagePage } from '../support/stage-page.ts';
import { goOn, TOUCH, untilSaved } from '../support/work-page.ts';
import { marksOf, presentationOf, withSlip, workOf } from './presented-work.ts';
import { STAGE_CASES } from './stage-cases.ts';
import { StageKeys } from './stage-keys.ts';

export interface Window {
  readonly width: number;
  readonly height: number;
  readonly hasTouch?: boolean;
}

export interface Visit {
  readonly page: ChildPage;
  close(): Promise<void>;
}

/** A browser in which children work on what the server has in its books. */
export interface Browsing {
  readonly server: PageServer;
  /** Opens the page of work as the child of this book. */
  visit(token: string, window: Window): Promise<Visit>;
  /** Why no finger can touch the page in this browser; null where one can. */
  untouchable(): string | null;
}

interface Worker {
  do(action: Action): Promise<void>;
}

const FRAME: Window = { width: 820, height: 600 };
const TABLET: Window = { width: 1024, height: 768 };
const PHONE: Window = { width: 390, height: 844, hasTouch: true };

/** Help and checks move nothing, and the page asks the mat itself before questions are finished. */
const isWork = (action: Action): boolean => action.do !== 'hint' && action.do !== 'check';

const workThrough = async (worker: Worker, actions: readonly Action[]) => {
  for (const action of actions) await worker.do(action);
};

/** The page of one stage in a real browser, worked as the presentation shows: by mouse, by touch, by keys, and with a slip. */
export const childRuns = (stage: Stage, browsing: Browsing): void => {
  const { written, slip } = STAGE_CASES[stage];
  const presentation = presentationOf(written);

  const begin = async (how: string, window: Window) => {
    const token = `${stage}-${how}`;
    const book = new AttemptBook(token, [written]);
    browsing.server.books.set(token, book);
    const { page, close } = await browsing.visit(token, window);
    await page.getByRole('heading').first().waitFor();
    return { book, page, close };
  };

  describe(`a child at the stage ${stage}`, () => {
    it('earns full marks by mouse', async () => {
      const { book, page, close } = await begin('mouse', FRAME);
      await workThrough(new StagePage(page, stage), presentation);
      await untilSaved(page);
      await goOn(page);
      await page.getByText('Your teacher has your work.').waitFor();
      await close();
      expect(marksOf(book.works())).toBe('1');
      expect(book.works()[0]?.complete).toBe(true);
    });

    it('earns full marks by touch, by tapping alone (WCAG 2.2, 2.5.7), on a phone', async ({
      skip,
    }) => {
      const reason = browsing.untouchable();
      if (reason !== null) skip(reason);
      const { book, page, close } = await begin('touch', PHONE);
      await workThrough(new StagePage(page, stage, TOUCH), presentation);
      await untilSaved(page);
      await close();
      expect(marksOf(book.works())).toBe('1');
    });

    it('earns full marks by keys alone (WCAG 2.2, 2.1.1)', async () => {
      const { book, page, close } = await begin('keys', TABLET);
      const keys = new StageKeys(
        page,
        stage,
        'multiplier' in written ? written.multiplier : undefined,
      );
      await workThrough(keys, presentation);
      await untilSaved(page);
      await keys.pressButton(/^See my work$/);
      await page.getByRole('heading', { name: 'Your work' }).waitFor();
      await close();
      expect(marksOf(book.works())).toBe('1');
    });

    it('gets the marks that the engine says for a slip, help and a correction', async () => {
      const { book, page, close } = await begin('slip', FRAME);
      const worker = new StagePage(page, stage);
      const { actions, helpAt } = withSlip(presentation, slip);
      await workThrough(worker, actions.slice(0, helpAt));
      const hint = page.getByRole('button', { name: 'Help me' });
      await hint.click();
      await page.getByRole('heading', { level: 1 }).filter({ hasText: '?' }).waitFor();
      await hint.click();
      await page.getByRole('heading', { name: 'Look at the marked place.' }).waitFor();
      await workThrough(worker, actions.slice(helpAt));
      await untilSaved(page);
      await close();
      const done = book.entries.map(({ action }) => action);
      expect(done.filter(isWork)).toEqual(actions.filter(isWork));
      expect(marksOf(book.works())).toBe(marksOf([workOf(written, done)]));
      const statuses = book.works()[0]?.steps.map(({ status }) => status) ?? [];
      expect(statuses.filter((status) => status === 'corrected')).toHaveLength(1);
      expect(statuses.filter((status) => status === 'hinted')).toHaveLength(1);
      expect(statuses.filter((status) => status !== 'first')).toHaveLength(2);
    });
  });
};
