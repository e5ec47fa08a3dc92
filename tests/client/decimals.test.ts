import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  type Action,
  fractionText,
  parseProblem,
  type Stage,
  score,
  worked,
} from '../../engine/index.ts';
import { AttemptBook } from '../support/attempt-book.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { button, choose, group, MOUSE, untilSaved } from '../support/work-page.ts';
import { violations } from './axe.ts';

const pages = pagesForFile();

/** Tenths times hundredths, an exchange, and a product whose last digit is no zero. */
const NUMBERS = { multiplicand: '3.46', multiplier: '2.7' } as const;

/** Does what the presentation does, at the places of the mat and of the paper wherever the point is. */
class Child {
  private readonly page: Page;
  private readonly stage: Stage;
  private readonly rows = new Map<string, number>();

  constructor(page: Page, stage: Stage) {
    this.page = page;
    this.stage = stage;
  }

  private cell(key: string) {
    return this.page.locator(`[data-cell="${key}"]`);
  }

  private async type(pad: string, text: string): Promise<void> {
    for (const sign of text)
      await button(group(this.page, pad), sign === '.' ? 'Point' : sign).click();
  }

  private async onLine(line: string, place: number, keys: readonly string[]): Promise<void> {
    const row = this.rows.get(line);
    await choose(this.page, row === undefined ? this.last : 'Rows', MOUSE);
    const spot = this.page.locator(`[data-spot="${line} ${place}"]`);
    if ((await spot.getAttribute('aria-pressed')) !== 'true') await spot.click();
    for (const key of keys) await button(group(this.page, 'Digits'), key).click();
  }

  private get last(): string {
    return this.stage === 'bars' ? 'Read' : 'Add';
  }

  async do(action: Action): Promise<void> {
    const { page } = this;
    switch (action.do) {
      case 'layTile':
        await choose(page, 'Tiles', MOUSE);
        await this.cell(`${action.edge} ${action.index}`).click();
        return this.type('Digits', String(action.digit));
      case 'layBars': {
        await choose(page, 'Lay', MOUSE);
        await button(group(page, 'How many?'), String(action.count)).click();
        const bar = button(group(page, 'Bars'), `bar of ${action.kind}`);
        if ((await bar.getAttribute('aria-pressed')) !== 'true') await bar.click();
        return this.cell(`square ${action.square.join(' ')}`).click();
      }
      case 'count':
        await choose(page, 'Count', MOUSE);
        await this.cell(`square ${action.square.join(' ')}`).click();
        await this.type('The pile makes', String(action.total));
        return button(page, 'That is it').click();
      case 'exchange':
        if (!(await button(page, 'Back to the mat').isVisible())) {
          await choose(page, 'Count', MOUSE);
          await this.cell(`square ${action.from.join(' ')}`).click();
        }
        await button(page, /^Exchange \d+ tens?$/).click();
        return this.type('How many do you lay there?', String(action.ones));
      case 'slide':
        await choose(page, 'Slide', MOUSE);
        return this.cell(`square ${action.from.join(' ')}`).dragTo(
          this.cell(`square ${action.to.join(' ')}`),
        );
      case 'say':
        if (!('row' in action)) throw new Error('no questions here');
        await choose(page, 'Row', MOUSE);
        await group(page, 'Rows').getByRole('button').nth(action.row).click();
        await this.type('This row makes', action.answer);
        return button(page, 'Say it').click();
      case 'begin':
        this.rows.set(action.line, action.row);
        await choose(page, 'Rows', MOUSE);
        return group(page, 'Rows').getByRole('button').nth(action.row).click();
      case 'write':
        if ('line' in action) return this.write(action);
        await choose(page, 'Facts', MOUSE);
        await this.cell(`square ${action.square.join(' ')}`).click();
        await button(
          group(page, 'Corner'),
          action.slot === 'own' ? 'Lower corner' : 'Upper corner',
        ).click();
        return this.type('Digits', String(action.digit));
      case 'point': {
        const { mat } = playable(this.stage);
        return this.onLine('product', mat.origin + action.places, ['Point']);
      }
      case 'finish':
        return this.finish(action.what);
      default:
        throw new Error(`the presentation does no ${action.do}`);
    }
  }

  private write({ line, place, digit }: Extract<Action, { line: unknown; digit: number }>) {
    const small = line.startsWith('carry');
    const own = line.replace('carry:product', 'product').replace('carry', 'partial');
    return this.onLine(own, place, [...(small ? ['Carry'] : []), String(digit)]);
  }

  private async finish(what: string): Promise<void> {
    const { page } = this;
    const row = /^row:(\d)$/.exec(what)?.[1];
    if (row === undefined) {
      await choose(page, this.last, MOUSE);
      return button(page, what === 'product' ? 'The product is done' : 'I am finished').click();
    }
    await choose(page, { bars: 'Row', cells: 'Facts' }[this.stage as string] ?? 'Rows', MOUSE);
    await group(page, 'Rows').getByRole('button').nth(Number(row)).click();
    return button(page, 'This row is done').click();
  }
}

const playable = (stage: Stage) => {
  const parsed = parseProblem({ stage, ...NUMBERS });
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return parsed.value;
};

const open = async (stage: Stage) => {
  const book = new AttemptBook(stage, [{ stage, ...NUMBERS }]);
  pages.server.books.set(stage, book);
  const context = await pages.browser.newContext({
    viewport: { width: 820, height: 600 },
    reducedMotion: 'reduce',
  });
  const page = await openAs(context, pages.address, { token: stage });
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { book, page };
};

describe.each(['bars', 'cells', 'paper'] as const)(
  'two numbers with a point at the stage %s',
  (stage) => {
    const actions = worked(playable(stage)).map(({ action }) => action);

    it('are worked by hand to full marks, the point of the product included', async () => {
      const { book, page } = await open(stage);
      const child = new Child(page, stage);
      for (const action of actions) await child.do(action);
      await untilSaved(page);
      expect(book.entries.map(({ action }) => action)).toEqual(actions);
      expect(fractionText(score(book.works()).fraction)).toBe('1');
      expect(await violations(page)).toEqual([]);
    });

    it('are helped with the point by what their places make together', async () => {
      const { book, page } = await open(stage);
      const child = new Child(page, stage);
      const at = actions.findIndex((action) => action.do === 'point');
      for (const action of actions.slice(0, at)) await child.do(action);
      await page
        .getByRole('heading', { name: 'Where does the point of the product stand?' })
        .waitFor();
      const help = button(page, 'Help me');
      await help.click();
      await help.click();
      await page
        .getByRole('heading', {
          name: 'The last digits stand for hundredths and tenths. What do those make together?',
        })
        .waitFor();
      if (stage !== 'paper') expect(await page.locator('pw-tile[marked]').count()).toBe(2);
      await help.click();
      await page
        .getByRole('heading', {
          name: 'hundredths times tenths are thousandths: the last digit of the product stands for thousandths.',
        })
        .waitFor();
      for (const action of actions.slice(at)) await child.do(action);
      await untilSaved(page);
      const steps = book.works()[0]?.steps ?? [];
      expect(steps.filter(({ status }) => status !== 'first')).toMatchObject([
        { id: 'point', status: 'hinted' },
      ]);
    });

    it('are told where a point that stands wrongly is, and mended', async () => {
      const { book, page } = await open(stage);
      const child = new Child(page, stage);
      const at = actions.findIndex((action) => action.do === 'point');
      for (const action of actions.slice(0, at)) await child.do(action);
      await child.do({ do: 'point', on: 'product', places: 4 });
      await button(page, 'Check').click();
      await page.getByRole('heading', { name: 'Look again at what is lifted.' }).waitFor();
      await page
        .getByRole('button', { name: /^product, tens: (\d|empty), then the point, look again$/ })
        .waitFor();
      for (const action of actions.slice(at)) await child.do(action);
      await untilSaved(page);
      const steps = book.works()[0]?.steps ?? [];
      expect(steps.filter(({ status }) => status !== 'first')).toMatchObject([
        { id: 'point', status: 'corrected' },
      ]);
    });
  },
);
