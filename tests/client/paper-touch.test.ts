import type { CDPSession, Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { type Action, parseProblem, type WrittenProblem, worked } from '../../engine/index.ts';
import { bookWith } from '../support/attempt-book.ts';
import { laidOut, openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import {
  button,
  choose,
  group,
  MOUSE,
  productCell,
  square,
  untilSaved,
} from '../support/work-page.ts';

const pages = pagesForFile();

const BARS = { stage: 'bars', multiplicand: '47689', multiplier: '739' } as const;
const CELLS = { stage: 'cells', multiplicand: '468', multiplier: '73' } as const;
const PAPER = { stage: 'paper', multiplicand: '4068', multiplier: '273' } as const;

const laid = (problem: WrittenProblem): Action[] => {
  const parsed = parseProblem(problem);
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return worked(parsed.value)
    .map(({ action }) => action)
    .filter((action) => action.do === 'layTile');
};

const open = async (problem: WrittenProblem, size: [number, number], hasTouch: boolean) => {
  const token = `${problem.stage}-${size}-${hasTouch}`;
  const actions = laid(problem);
  const book = bookWith(token, problem, actions);
  pages.server.books.set(token, book);
  const viewport = { width: size[0], height: size[1] };
  const context = await pages.browser.newContext({ viewport, hasTouch, reducedMotion: 'reduce' });
  const page = await openAs(context, pages.address, { token });
  await page.getByRole('heading', { level: 1 }).waitFor();
  const done = () => book.entries.slice(actions.length).map(({ action }) => action);
  return { page, done };
};

const writing = async (page: Page, { stage }: WrittenProblem): Promise<void> =>
  choose(page, stage === 'bars' ? 'Read' : 'Add', MOUSE);

describe('places of the paper, while it is written on by touch', () => {
  it.each([
    [BARS, [820, 600]],
    [BARS, [390, 844]],
    [BARS, [1024, 768]],
    [CELLS, [820, 600]],
    [CELLS, [390, 844]],
    [PAPER, [390, 844]],
    [PAPER, [820, 600]],
  ] as const)('are as wide and high as a finger (44 pixels): %j at %j', async (problem, size) => {
    const { page } = await open(problem, [...size], true);
    await writing(page, problem);
    for (const cell of await page.getByRole('button', { name: /^product, / }).all()) {
      const box = await cell.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    }
  });

  it('come into view when the pen goes to them, the units first', async () => {
    const { page } = await open(BARS, [390, 844], true);
    await writing(page, BARS);
    const inView = async (place: number) => {
      const box = await productCell(page, place).boundingBox();
      return box !== null && box.x >= 0 && box.x + box.width <= 390;
    };
    expect([await inView(0), await inView(8)]).toEqual([true, false]);
    await productCell(page, 0).tap();
    for (const digit of ['1', '7', '1', '2', '4', '2', '5', '3', '0'])
      await button(group(page, 'Digits'), digit).tap();
    expect(await inView(8)).toBe(true);
  });
});

/** A finger that goes down on one thing and up on another, as the browser's own touch events. */
const byFinger = async (
  debug: CDPSession,
  from: Locator,
  to: Locator,
  part: Part,
): Promise<void> => {
  const [start, end] = await ends(from, to, part);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: Point) =>
    debug.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [at] });
  await touch('touchStart', start);
  for (let step = 1; step <= 5; step += 1)
    await touch('touchMove', {
      x: start.x + ((end.x - start.x) * step) / 5,
      y: start.y + ((end.y - start.y) * step) / 5,
    });
  await touch('touchEnd');
};

const byMouse = async (page: Page, from: Locator, to: Locator, part: Part): Promise<void> => {
  const [start, end] = await ends(from, to, part);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  await page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2);
  await page.mouse.move(end.x, end.y);
  await page.mouse.up();
};

interface Point {
  readonly x: number;
  readonly y: number;
}
/** Where on the target: fractions of its width and height. */
type Part = readonly [number, number];
const MIDDLE: Part = [0.5, 0.5];

const ends = async (from: Locator, to: Locator, part: Part): Promise<[Point, Point]> => {
  await laidOut(from.page());
  const [a, b] = [await from.boundingBox(), await to.boundingBox()];
  if (a === null || b === null) throw new Error('Nothing to drag.');
  return [
    { x: a.x + a.width / 2, y: a.y + a.height / 2 },
    { x: b.x + b.width * part[0], y: b.y + b.height * part[1] },
  ];
};

describe.each(['mouse', 'finger'] as const)('a digit carried by %s', (by) => {
  const carry = async (problem: WrittenProblem, size: [number, number]) => {
    const opened = await open(problem, size, by === 'finger');
    const { page } = opened;
    const debug = await page.context().newCDPSession(page);
    const drag = async (digit: string, to: Locator, part: Part = MIDDLE) => {
      const from = button(group(page, 'Digits'), digit);
      await (by === 'mouse' ? byMouse(page, from, to, part) : byFinger(debug, from, to, part));
      await untilSaved(page);
    };
    return { ...opened, drag };
  };

  it.each([[[820, 600]], [[390, 844]]] as const)(
    'is written where it is let go on the paper, at %j',
    async (size) => {
      const { page, done, drag } = await carry(PAPER, [...size]);
      await writing(page, PAPER);
      await drag('7', productCell(page, 1));
      expect(done()).toEqual([{ do: 'write', line: 'product', place: 1, digit: 7 }]);
    },
  );

  it.each([[[820, 600]], [[390, 844]]] as const)(
    'is written in the corner of the square where it is let go, at %j',
    async (size) => {
      const { page, done, drag } = await carry(CELLS, [...size]);
      await choose(page, 'Facts', MOUSE);
      await drag('4', square(page, [0, 0]), [0.75, 0.75]);
      await drag('2', square(page, [0, 1]), [0.25, 0.25]);
      expect(done()).toEqual([
        { do: 'write', square: [0, 0], slot: 'own', digit: 4 },
        { do: 'write', square: [0, 1], slot: 'fromRight', digit: 2 },
      ]);
    },
  );
});
