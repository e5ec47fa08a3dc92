import { describe, expect, it } from 'vitest';
import {
  type Action,
  fractionText,
  parseProblem,
  replay,
  score,
  type Work,
  type WrittenProblem,
  worked,
} from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { StagePage } from '../support/stage-page.ts';
import { goOn, TOUCH, untilSaved } from '../support/work-page.ts';
import { violations } from './axe.ts';
import { StageKeys } from './stage-keys.ts';

interface Worker {
  do(action: Action): Promise<void>;
}

const workOf = (written: WrittenProblem, actions: readonly Action[]): Work => {
  const problem = parseProblem(written);
  if (!problem.ok) throw new Error(problem.fault.code);
  return replay(problem.value, actions);
};

const presentationOf = (written: WrittenProblem): Action[] => {
  const problem = parseProblem(written);
  if (!problem.ok) throw new Error(problem.fault.code);
  return worked(problem.value).map(({ action }) => action);
};

const marksOf = (works: readonly Work[]): string => fractionText(score(works).fraction);

/** The same done wrongly, as a child may; null where nothing can be mistaken. */
const mistaken = (action: Action): Action | null => {
  switch (action.do) {
    case 'layTile':
    case 'write':
      return { ...action, digit: (action.digit + 1) % 10 };
    case 'layBars':
      return { ...action, kind: (action.kind % 9) + 1 };
    case 'count':
      return { ...action, total: action.total + 1 };
    case 'say':
      return typeof action.answer === 'string' ? { ...action, answer: `${action.answer}0` } : null;
    default:
      return null;
  }
};

/** Help and checks move nothing, and the page asks the mat itself before questions are finished. */
const isWork = (action: Action): boolean => action.do !== 'hint' && action.do !== 'check';

interface Slipped {
  /** Everything done, help left out. */
  readonly actions: readonly Action[];
  /** How many of them are done before help is asked for. */
  readonly helpAt: number;
}

/** One action of the presentation done wrongly, noticed at a check, taken back and done rightly; help before the next. */
const withSlip = (actions: readonly Action[], slip: (action: Action) => boolean): Slipped => {
  const at = actions.findIndex(slip);
  const right = actions[at];
  const wrong = right === undefined ? null : mistaken(right);
  if (right === undefined || wrong === null) throw new Error('nothing to mistake');
  const before = [...actions.slice(0, at), wrong, { do: 'check' }, { do: 'undo' }, right] as const;
  return { actions: [...before, ...actions.slice(at + 1)], helpAt: before.length };
};

/**
 * The page of one stage in a real browser, worked as the presentation shows: by mouse, by keys, and with a slip.
 * `slip` picks the action of the presentation that is done wrongly once.
 */
export const stageRuns = (written: WrittenProblem, slip: (action: Action) => boolean): void => {
  const pages = pagesForFile();
  const { server } = pages;

  const begin = async (token: string, size: [number, number], hasTouch = false) => {
    const book = new AttemptBook(token, [written]);
    server.books.set(token, book);
    const viewport = { width: size[0], height: size[1] };
    const context = await pages.browser.newContext({ viewport, hasTouch, reducedMotion: 'reduce' });
    const page = await openAs(context, pages.address, { token });
    await page.getByRole('heading').first().waitFor();
    return { book, context, page };
  };

  const workThrough = async (worker: Worker, actions: readonly Action[]) => {
    for (const action of actions) await worker.do(action);
  };

  describe(`a child at the stage ${written.stage}`, () => {
    it('earns full marks by mouse', async () => {
      const { book, context, page } = await begin('mouse', [820, 600]);
      await workThrough(new StagePage(page, written.stage), presentationOf(written));
      await untilSaved(page);
      await goOn(page);
      await page.getByText('Your teacher has your work.').waitFor();
      await context.close();
      expect(marksOf(book.works())).toBe('1');
      expect(book.works()[0]?.complete).toBe(true);
    });

    it('earns full marks by touch, by tapping alone, on a phone', async () => {
      const { book, context, page } = await begin('touch', [390, 844], true);
      await workThrough(new StagePage(page, written.stage, TOUCH), presentationOf(written));
      await untilSaved(page);
      await context.close();
      expect(marksOf(book.works())).toBe('1');
    });

    it('earns full marks by keys alone', async () => {
      const { book, context, page } = await begin('keys', [1024, 768]);
      const keys = new StageKeys(page, written.stage, written.multiplier);
      await workThrough(keys, presentationOf(written));
      await untilSaved(page);
      await keys.pressButton(/^See my work$/);
      await page.getByRole('heading', { name: 'Your work' }).waitFor();
      await context.close();
      expect(marksOf(book.works())).toBe('1');
    });

    it('gets the marks that the engine says for a slip, help and a correction', async () => {
      const { book, context, page } = await begin('slip', [820, 600]);
      const worker = new StagePage(page, written.stage);
      const { actions, helpAt } = withSlip(presentationOf(written), slip);
      await workThrough(worker, actions.slice(0, helpAt));
      const hint = page.getByRole('button', { name: 'Help me' });
      await hint.click();
      await page.getByRole('heading', { level: 1 }).filter({ hasText: '?' }).waitFor();
      await hint.click();
      await page.getByRole('heading', { name: 'Look at the marked place.' }).waitFor();
      await workThrough(worker, actions.slice(helpAt));
      await untilSaved(page);
      await context.close();
      const done = book.entries.map(({ action }) => action);
      expect(done.filter(isWork)).toEqual(actions.filter(isWork));
      expect(marksOf(book.works())).toBe(marksOf([workOf(written, done)]));
      const statuses = book.works()[0]?.steps.map(({ status }) => status) ?? [];
      expect(statuses.filter((status) => status === 'corrected')).toHaveLength(1);
      expect(statuses.filter((status) => status === 'hinted')).toHaveLength(1);
      expect(statuses.filter((status) => status !== 'first')).toHaveLength(2);
    });

    it('finds a page without a violation that axe knows, in light and in dark', async () => {
      const { context, page } = await begin('axe', [1024, 768]);
      const actions = presentationOf(written);
      await workThrough(
        new StagePage(page, written.stage),
        actions.slice(0, Math.ceil(actions.length / 3)),
      );
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await violations(page)).toEqual([]);
      }
      await context.close();
    });
  });
};
