import type { CDPSession, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { WrittenProblem } from '../../../engine/index.ts';
import type { AttemptBook } from '../../support/attempt-book.ts';
import { openAs } from '../../support/open-page.ts';
import type { Pages } from '../../support/pages-for-file.ts';
import { begunBook } from '../half-done.ts';
import { KeyboardHand } from '../keyboard-hand.ts';
import { type Told, treeOf } from './tree.ts';

const SOON = { timeout: 20_000, interval: 50 };

type Text = string | RegExp;

const is = (text: string, wanted: Text): boolean =>
  typeof wanted === 'string' ? text === wanted : wanted.test(text);

const like = (text: Text) => (typeof text === 'string' ? text : expect.stringMatching(text));

/**
 * A child who works by a keyboard and a screen reader: finds things in the accessibility tree alone, by role and name,
 * hears where the focus lands and what the live regions say, and knows nothing else of the page.
 */
export class ChildByEar extends KeyboardHand {
  private readonly debug: CDPSession;
  /** The text of each live region when the child listened last. */
  private readonly last = new Map<number, string>();
  private said: string[] = [];

  constructor(page: Page, debug: CDPSession) {
    super(page);
    this.debug = debug;
  }

  /** Listens: what has changed in a live region since the last time is said; a region that is new is not. */
  private async listen(): Promise<Told[]> {
    const tree = await treeOf(this.debug);
    for (const { id, name, live } of tree) {
      if (!live) continue;
      const text = name.trim();
      if (this.last.has(id) && this.last.get(id) !== name && text !== '') this.said.push(text);
      this.last.set(id, name);
    }
    return tree;
  }

  protected override async stops() {
    const names = (await this.listen()).filter(({ focusable }) => focusable);
    return { names, at: names.findIndex(({ focused }) => focused) };
  }

  /** Keys one after the other; the focus is never lost by one. */
  override async press(...keys: string[]): Promise<void> {
    for (const key of keys) {
      await super.press(key);
      await expect
        .poll(async () => (await this.listen()).some(({ focused }) => focused), {
          ...SOON,
          message: `after ${key} the focus is nowhere`,
        })
        .toBe(true);
    }
  }

  async presses(...keys: string[]): Promise<void> {
    this.said = [];
    await this.press(...keys);
  }

  /** By Tab to the first thing of this role and name, or the nearest way round. */
  async goesTo(role: string, name: Text): Promise<void> {
    await this.tabTo(`${role} ${name}`, (stop) => stop.role === role && is(stop.name, name));
  }

  /** Goes to a button and presses it. */
  async uses(name: Text): Promise<void> {
    await this.goesTo('button', name);
    await this.presses('Enter');
  }

  /** The focus lies on this, and a reader says so. */
  async isOn(role: string, name: Text, state = ''): Promise<void> {
    const here = async () => (await this.listen()).find(({ focused }) => focused);
    await expect.poll(here, SOON).toMatchObject({ role, name: like(name), state });
  }

  /** A live region has said this since the last keys. */
  async hears(what: Text): Promise<void> {
    const heard = async () => {
      await this.listen();
      return this.said.some((text) =>
        typeof what === 'string' ? text.includes(what) : what.test(text),
      )
        ? what
        : this.said;
    };
    await expect.poll(heard, SOON).toEqual(what);
  }

  /** From a product that is written to the child's own result. */
  async finishes(): Promise<void> {
    await this.uses('The product is done');
    await this.hears('The product is done.');
    await this.uses('I am finished');
    await this.seesWork();
  }

  /** From a problem that is finished to the child's own result. */
  async seesWork(): Promise<void> {
    await this.hears('This problem is finished.');
    await this.isOn('button', 'See my work');
    await this.presses('Enter');
    await this.isOn('heading', 'Your work');
    await this.reads('status', 'Your teacher has your work.');
  }

  /** What can be read on the page as it stands. */
  async reads(role: string, name: Text): Promise<void> {
    const all = async () =>
      (await this.listen()).filter((told) => told.role === role).map((told) => told.name);
    await expect
      .poll(async () => (await all()).find((one) => is(one, name)) ?? (await all()), SOON)
      .toEqual(like(name));
  }
}

export interface Sitting {
  readonly child: ChildByEar;
  readonly book: AttemptBook;
}

/** How each step stands, once all is saved. */
export const statusesOf = async ({ child, book }: Sitting): Promise<Record<string, string>> => {
  await child.reads('StaticText', 'Saved');
  const steps = book.works().flatMap((work) => work.steps);
  return Object.fromEntries(steps.map(({ id, status }) => [id, status]));
};

let sittings = 0;

/** A child with a screen reader at this problem, its page just opened; `done`: how much of the worked presentation was done before. */
export const sitDown = async (
  pages: Pages,
  problem: WrittenProblem,
  { done = 0, locale = 'en-GB' } = {},
): Promise<Sitting> => {
  sittings += 1;
  const token = `sitting ${sittings}`;
  const book = begunBook(token, problem, done);
  pages.server.books.set(token, book);
  const context = await pages.browser.newContext({
    locale,
    viewport: { width: 1024, height: 768 },
    reducedMotion: 'reduce',
  });
  const page = await openAs(context, pages.address, { token });
  const child = new ChildByEar(page, await context.newCDPSession(page));
  await child.reads('heading', /./);
  return { child, book };
};
