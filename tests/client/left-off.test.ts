import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { type Action, parseProblem, type WrittenProblem, worked } from '../../engine/index.ts';
import { bookWith } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { button, group } from '../support/work-page.ts';

const pages = pagesForFile();
const CHECK: Action = { do: 'check' };

/** The page on work of which this much is done. */
const openOn = async (problem: WrittenProblem, actions: readonly Action[]): Promise<Page> => {
  pages.server.books.set('ada', bookWith('ada', problem, actions));
  const page = await openAs(await pages.browser.newContext(), pages.address, { token: 'ada' });
  await page.getByRole('heading', { level: 1 }).waitFor();
  return page;
};

const workedUntil = (problem: WrittenProblem, test: (action: Action) => boolean): Action[] => {
  const parsed = parseProblem(problem);
  if (!parsed.ok) throw new Error(parsed.fault.code);
  const actions = worked(parsed.value).map(({ action }) => action);
  return actions.slice(0, actions.findIndex(test));
};

const moveShown = async (page: Page): Promise<string | null> =>
  page.locator('nav [aria-current=step]').textContent();

const BARS = { stage: 'bars', multiplicand: '34', multiplier: '27' } as const;
const PAPER = { stage: 'paper', multiplicand: '34', multiplier: '27' } as const;

describe('a page that is opened again while something is to be mended', () => {
  it('shows the move in which it was done: a pile counted wrongly', async () => {
    const page = await openOn(BARS, [
      ...workedUntil(BARS, ({ do: name }) => name === 'count'),
      { do: 'count', square: [0, 0], total: 29 },
      CHECK,
    ]);
    expect(await moveShown(page)).toBe('Count');
    await page.getByRole('heading', { name: 'Look again at what is lifted.' }).waitFor();
  });

  it('shows the move in which the child was last, half way through the mending', async () => {
    const page = await openOn(BARS, [
      ...workedUntil(BARS, ({ do: name }) => name === 'count'),
      { do: 'layBars', square: [0, 1], kind: 3, count: 2 },
      { do: 'count', square: [0, 0], total: 28 },
      CHECK,
      { do: 'liftBars', square: [0, 1], kind: 3, count: 1 },
    ]);
    await page.getByRole('heading', { name: 'Look again at what is lifted.' }).waitFor();
    expect(await moveShown(page)).toBe('Lay');
  });

  it('shows the row of the paper in which a digit is to be looked at again', async () => {
    const page = await openOn(PAPER, [
      ...workedUntil(PAPER, (action) => action.do === 'begin' && action.row === 1),
      { do: 'begin', line: 'partial:1', row: 1 },
      { do: 'write', line: 'partial:1', place: 0, digit: 0 },
      { do: 'write', line: 'partial:1', place: 1, digit: 9 },
      { do: 'write', line: 'partial:1', place: 2, digit: 6 },
      CHECK,
    ]);
    expect(await moveShown(page)).toBe('Rows');
    const chosen = button(group(page, 'Rows'), /^second row, × 2/);
    expect(await chosen.getAttribute('aria-pressed')).toBe('true');
  });

  it('puts the question that is to be looked at again', async () => {
    const walk = { stage: 'walk', seed: 3, prompts: 3 } as const;
    const said = workedUntil(walk, ({ do: name }) => name === 'finish').filter(
      (action) => action.do === 'say',
    );
    const wrong = said.map((action, i): Action => {
      if (i !== 1 || !('prompt' in action)) return action;
      const answer = typeof action.answer === 'string' ? `${action.answer}0` : ([3, 8] as const);
      return { ...action, answer };
    });
    const page = await openOn(walk, [...wrong, CHECK]);
    const question = button(group(page, 'Questions'), 'Question 2, look again');
    expect(await question.getAttribute('aria-pressed')).toBe('true');
  });
});

it('a page that is opened again with nothing to mend shows the next move', async () => {
  const page = await openOn(
    BARS,
    workedUntil(BARS, ({ do: name }) => name === 'count'),
  );
  expect(await moveShown(page)).toBe('Count');
});
