import { describe, expect, it } from 'vitest';
import { fractionText, score, type WrittenProblem } from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { childWork } from '../support/child-work.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { goOn, type Hand, MOUSE, perform, TOUCH, untilSaved } from '../support/work-page.ts';
import { KeyboardHand } from './keyboard-hand.ts';

const NUMBERS = [
  ['34', '7'],
  ['26', '43'],
] as const;
const PROBLEMS: WrittenProblem[] = NUMBERS.map(([multiplicand, multiplier], i) => ({
  stage: i === 0 ? 'bars1' : 'bars',
  multiplicand,
  multiplier,
}));

const pages = pagesForFile();
const { server } = pages;

const enrol = (token: string): AttemptBook => {
  const book = new AttemptBook(token, PROBLEMS);
  server.books.set(token, book);
  return book;
};

const marks = (book: AttemptBook): string => fractionText(score(book.works()).fraction);

describe('a clean run through a problem of one row and one of two', () => {
  const byPointer = async (
    token: string,
    hand: Hand,
    hasTouch: boolean,
    size: [number, number],
  ) => {
    const book = enrol(token);
    const [width, height] = size;
    const context = await pages.browser.newContext({ hasTouch, viewport: { width, height } });
    const page = await openAs(context, pages.address, { token });
    for (const [multiplicand, multiplier] of NUMBERS) {
      for (const action of childWork(multiplicand, multiplier)) await perform(page, action, hand);
      await untilSaved(page);
      await goOn(page, hand);
    }
    await page.getByText('Your teacher has your work.').waitFor();
    const shown = await page.locator('[data-score]').textContent();
    await context.close();
    return { book, shown };
  };

  it('earns full marks by mouse, dragging, in a frame of 820 by 600', async () => {
    const { book, shown } = await byPointer('mouse', MOUSE, false, [820, 600]);
    expect(marks(book)).toBe('1');
    const steps = book.works().flatMap((work) => work.steps).length;
    expect(shown).toBe(`${steps} of ${steps}`);
  });

  it('earns full marks by touch, by tapping alone, on a phone of 390 by 844', async () => {
    const { book } = await byPointer('touch', TOUCH, true, [390, 844]);
    expect(marks(book)).toBe('1');
    expect(book.entries.filter(({ aside }) => aside)).toEqual([]);
  });

  it('earns full marks by keyboard alone', async () => {
    const book = enrol('keys');
    const context = await pages.browser.newContext({ viewport: { width: 1024, height: 768 } });
    const page = await openAs(context, pages.address, { token: 'keys' });
    const hand = new KeyboardHand(page);
    for (const [multiplicand, multiplier] of NUMBERS) {
      hand.beginProblem();
      for (const action of childWork(multiplicand, multiplier)) await hand.do(action);
      await untilSaved(page);
      await hand.pressButton(/^(Next problem|See my work)$/);
    }
    await page.getByRole('heading', { name: 'Your work' }).waitFor();
    await context.close();
    expect(marks(book)).toBe('1');
  });
});
