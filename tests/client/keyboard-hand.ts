import type { Action } from '../../engine/index.ts';
import type { ChildPage } from '../support/child-page.ts';
import type { ChildAction } from '../support/child-work.ts';

type Square = readonly [row: number, column: number];

/** Something that the focus can be on. */
interface Stop {
  readonly role: string;
  readonly name: string;
}

export interface Stops {
  readonly names: readonly Stop[];
  readonly at: number;
}

/** Moves of the page in the order in which Page Down goes through them. */
const TOOLS: readonly string[] = ['Tiles', 'Lay', 'Count', 'Row', 'Slide', 'Read'];
/** Stops on the longest way through the page and round. */
const MOST_TABS = 90;

/** Works the page by keys alone, from wherever the focus is: Tab, arrows, Enter, digits. Nothing is clicked or focused from outside. */
export class KeyboardHand {
  private readonly page: ChildPage;
  private readonly tools: readonly string[];
  private tool: string;

  constructor(page: ChildPage, tools = TOOLS) {
    this.page = page;
    this.tools = tools;
    this.tool = tools[0] ?? '';
  }

  async press(...keys: string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  /** All that Tab can come to, in its order, and which of them has the focus: -1 for none. */
  protected stops(): Promise<Stops> {
    return this.page.evaluate(() => {
      const within = (root: Element | Document | ShadowRoot): Element[] =>
        [...root.children].flatMap((child) => [
          child,
          ...(child.shadowRoot === null ? [] : within(child.shadowRoot)),
          ...within(child),
        ]);
      let focused = document.activeElement ?? document.body;
      while (focused.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
      const all = within(document).filter(
        (one) =>
          one === focused ||
          ((one as HTMLElement).tabIndex >= 0 &&
            !one.matches(':disabled') &&
            one.checkVisibility({ visibilityProperty: true })),
      );
      const names = all.map((one) => ({
        role: one.getAttribute('role') ?? one.localName,
        name: (one.getAttribute('aria-label') ?? one.textContent ?? '').trim(),
      }));
      return { names, at: all.indexOf(focused) };
    });
  }

  /** What has the focus, through every shadow tree. */
  async focused(): Promise<Stop> {
    const { names, at } = await this.stops();
    return names[at] ?? { role: 'nothing', name: '' };
  }

  /** Goes by Tab, onwards or back to where it is seen, until the focus is on what passes the test. */
  async tabTo(what: string, test: (stop: Stop) => boolean): Promise<void> {
    for (let i = 0; i < MOST_TABS; i += 1) {
      const { names, at } = await this.stops();
      const focused = names[at];
      if (focused !== undefined && test(focused)) return;
      const target = names.findIndex(test);
      if (target >= 0) await this.press(target > at ? 'Tab' : 'Shift+Tab');
    }
    throw new Error(`Tab never came to ${what}.`);
  }

  async pressButton(name: RegExp): Promise<void> {
    await this.tabTo(`${name}`, (stop) => stop.role === 'button' && name.test(stop.name));
    await this.press('Enter');
  }

  async toMat(): Promise<void> {
    await this.tabTo('the mat', ({ role }) => role === 'gridcell');
  }

  async toSquare([row, column]: Square): Promise<void> {
    await this.toMat();
    await this.press('Control+End');
    await this.press(...Array<string>(row).fill('ArrowUp'));
    await this.press(...Array<string>(column).fill('ArrowLeft'));
  }

  /** After a new problem begins, the page chooses the first move itself. */
  beginProblem(): void {
    this.tool = this.tools[0] ?? '';
  }

  protected async choose(tool: string): Promise<void> {
    const by = this.tools.indexOf(tool) - this.tools.indexOf(this.tool);
    if (by === 0) return;
    await this.toMat();
    await this.press(...Array<string>(Math.abs(by)).fill(by > 0 ? 'PageDown' : 'PageUp'));
    this.tool = tool;
  }

  private async open(square: Square): Promise<void> {
    await this.choose('Count');
    await this.toSquare(square);
    await this.press('Enter');
  }

  async do(action: ChildAction | Action): Promise<void> {
    switch (action.do) {
      case 'layTile':
        await this.choose('Tiles');
        await this.toSquare(action.edge === 'bottom' ? [0, action.index] : [action.index, 0]);
        await this.press(action.edge === 'bottom' ? 'ArrowDown' : 'ArrowRight');
        return this.press(String(action.digit));
      case 'layBars':
        await this.choose('Lay');
        await this.toSquare(action.square);
        await this.press(
          ...Array<string>(8).fill('-'),
          ...Array<string>(action.count - 1).fill('+'),
        );
        return this.press(String(action.kind));
      case 'count':
        await this.open(action.square);
        return this.press(...String(action.total), 'Enter', 'Escape');
      case 'exchange':
        await this.open(action.from);
        await this.pressButton(/^Exchange/);
        return this.press(String(action.ones), 'Escape');
      case 'slide':
        await this.choose('Slide');
        await this.toSquare(action.from);
        await this.press(' ');
        await this.toSquare(action.to);
        return this.press(' ');
      case 'say':
        if ('prompt' in action) break;
        await this.choose('Row');
        await this.toSquare([action.row, 0]);
        return this.press(...action.answer, 'Enter');
      case 'write':
        if ('square' in action) break;
        await this.choose('Read');
        await this.toSquare([0, action.place]);
        return this.press(String(action.digit));
      case 'finish':
        return this.finish(action.what);
      case 'check':
        return this.pressButton(/^Check$/);
      case 'undo':
        return this.press('Control+z');
    }
    throw new Error(`no keys are known for ${JSON.stringify(action)}`);
  }

  protected async finish(what: string): Promise<void> {
    if (!what.startsWith('row:')) {
      await this.choose('Read');
      return this.pressButton(what === 'product' ? /^The product is done$/ : /^I am finished$/);
    }
    const row = Number(what.slice('row:'.length));
    await this.choose('Row');
    await this.toSquare([row, 0]);
    await this.press(' ');
    return this.pressButton(/^This row is done$/);
  }
}
