import fc from 'fast-check';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { anotherLike } from '../../client/work/another.ts';
import {
  type Action,
  fractionText,
  type Problem,
  parseProblem,
  score,
  type WrittenProblem,
  worked,
  writeProblem,
} from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { StagePage } from '../support/stage-page.ts';
import { button, untilSaved } from '../support/work-page.ts';
import { violations } from './axe.ts';

const playable = (written: WrittenProblem): Problem => {
  const parsed = parseProblem(written);
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return parsed.value;
};

/** Numbers as children meet them: zeros anywhere, a point or none. */
const numeral = (most: number) =>
  fc
    .tuple(
      fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: most }),
      fc.nat({ max: most }),
    )
    .map(([digits, point]) => {
      const text = digits.join('').replace(/^0+(?=\d)/, '');
      return point === 0 || point >= text.length
        ? text
        : `${text.slice(0, point)}.${text.slice(point)}`;
    });

describe('a problem like another', () => {
  it('has as many digits, zeros and point at the same places, every other digit changed, on the same mat', () => {
    fc.assert(
      fc.property(
        numeral(5),
        numeral(3),
        fc.constantFrom('bars', 'facts', 'record', 'cells', 'paper', 'build', 'open'),
        (multiplicand, multiplier, stage) => {
          const own = playable({ stage, multiplicand, multiplier } as WrittenProblem);
          const other = anotherLike(own);
          const [a, b] = [writeProblem(own), writeProblem(other)];
          expect(other.mat).toEqual(own.mat);
          expect([b.stage, b.policy]).toEqual([a.stage, a.policy]);
          for (const name of ['multiplicand', 'multiplier'] as const) {
            const [mine, its] = [a[name] ?? '', b[name] ?? ''];
            expect(its.replace(/[1-9]/g, 'd')).toBe(mine.replace(/[1-9]/g, 'd'));
            for (const [i, digit] of [...mine].entries())
              if (/[1-9]/.test(digit)) expect(its[i]).not.toBe(digit);
          }
        },
      ),
    );
  });

  it('asks other questions where there are no numbers, as many of them', () => {
    const own = playable({ stage: 'walk', seed: 3, prompts: 8, categories: true });
    const other = anotherLike(own);
    expect(other.prompts).toHaveLength(8);
    expect(other.prompts).not.toEqual(own.prompts);
  });
});

const pages = pagesForFile();

const BARS = { stage: 'bars1', multiplicand: '34', multiplier: '7' } as const;
const ALLOWED = { presentation: true } as const;

const open = async (token: string, problem: WrittenProblem, size?: [number, number]) => {
  const book = new AttemptBook(token, [problem]);
  pages.server.books.set(token, book);
  const viewport = size === undefined ? {} : { viewport: { width: size[0], height: size[1] } };
  const context = await pages.browser.newContext({ ...viewport, reducedMotion: 'reduce' });
  const page = await openAs(context, pages.address, { token });
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { page, book, context };
};

const watch = async (page: Page): Promise<void> => {
  await button(page, 'See one worked').click();
  await page.getByText('Not your own work, but one like it.', { exact: false }).last().waitFor();
};

const doneIn = (book: AttemptBook): Action[] => book.entries.map(({ action }) => action);

describe('seeing one worked', () => {
  it('is offered only where the teacher allows it, and not on a mat without numbers', async () => {
    const offered = async (token: string, problem: WrittenProblem) =>
      button((await open(token, problem)).page, 'See one worked').count();
    expect(await offered('not', BARS)).toBe(0);
    expect(await offered('yes', { ...BARS, policy: ALLOWED })).toBe(1);
    expect(await offered('bare', { stage: 'open', policy: ALLOWED })).toBe(0);
  });

  it('shows another problem before and during the work, which stays as it is and earns full marks', async () => {
    const problem = { ...BARS, policy: ALLOWED };
    const { page, book } = await open('ada', problem);
    const actions = worked(playable(problem)).map(({ action }) => action);
    const child = new StagePage(page, 'bars1');
    await watch(page);
    expect(await page.getByText('34 × 7').count()).toBe(0);
    await button(page, 'Back to my own').click();
    for (const action of actions.slice(0, 5)) await child.do(action);
    await watch(page);
    for (let move = 0; move < 4; move += 1) await button(page, 'Forward').click();
    await page.keyboard.press('Control+z');
    await button(page, 'Back to my own').click();
    for (const action of actions.slice(5)) await child.do(action);
    await untilSaved(page);
    const asked = { do: 'hint', level: 1 };
    expect(doneIn(book)).toEqual([asked, ...actions.slice(0, 5), asked, ...actions.slice(5)]);
    expect(fractionText(score(book.works()).fraction)).toBe('1');
  });

  it('works without the network once the page has had a moment, and before says what is missing', async () => {
    const { page, context } = await open('offline', { ...BARS, policy: ALLOWED });
    await context.setOffline(true);
    await button(page, 'See one worked').click();
    await page.getByRole('heading', { name: /^The server does not answer/ }).waitFor();
    await context.setOffline(false);
    const { page: later, context: line } = await open('later', { ...BARS, policy: ALLOWED });
    await later.waitForFunction(() => customElements.get('pw-player') !== undefined);
    await line.setOffline(true);
    await watch(later);
  });

  it.each([
    [{ stage: 'walk', seed: 3, prompts: 3 }],
    [{ stage: 'build', multiplicand: '402', multiplier: '31' }],
    [{ stage: 'bars', multiplicand: '934', multiplier: '314' }],
    [{ stage: 'paper', multiplicand: '934', multiplier: '314' }],
  ] as const)(
    'has nothing for axe to find in light, dark and high contrast, and fits a phone: %j',
    async (problem) => {
      const { page } = await open(problem.stage, { ...problem, policy: ALLOWED }, [390, 844]);
      await watch(page);
      await button(page, 'Forward').click();
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide).toBeLessThanOrEqual(390);
      expect(await violations(page)).toEqual([]);
    },
  );
});
