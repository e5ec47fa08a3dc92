import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { STAGES } from '../../engine/index.ts';
import { pagesForFile } from '../support/pages-for-file.ts';
import { halfDone } from './half-done.ts';

const pages = pagesForFile();

interface Focus {
  /** Null: nothing has it. */
  readonly on: string | null;
  /** What is missing: a ring around it, or that anything of it is to be seen. */
  readonly faults: readonly string[];
}

const focusOn = (page: Page): Promise<Focus> =>
  page.evaluate(() => {
    let one = document.activeElement;
    while (one?.shadowRoot?.activeElement) one = one.shadowRoot.activeElement;
    if (one === null || one === document.body) return { on: null, faults: [] };
    const ringed = [one, ...(one.shadowRoot?.querySelectorAll('.cloth') ?? [])].some((each) => {
      const { outlineStyle, outlineWidth } = getComputedStyle(each);
      return outlineStyle === 'solid' && Number.parseFloat(outlineWidth) >= 2;
    });
    const atPoint = (x: number, y: number): Element | null => {
      let found = document.elementFromPoint(x, y);
      while (found?.shadowRoot) {
        const inner = found.shadowRoot.elementFromPoint(x, y);
        if (inner === null || inner === found) break;
        found = inner;
      }
      return found;
    };
    const belongs = (found: Element | null): boolean => {
      for (let at = found; at !== null; ) {
        if (at === one) return true;
        const root = at.getRootNode();
        at = at.parentElement ?? (root instanceof ShadowRoot ? root.host : null);
      }
      return false;
    };
    const { left, top, width, height } = one.getBoundingClientRect();
    const parts = [0.1, 0.3, 0.5, 0.7, 0.9];
    const seen = parts.some((x) =>
      parts.some((y) => belongs(atPoint(left + width * x, top + height * y))),
    );
    const on = one.getAttribute('aria-label') ?? one.textContent ?? '';
    return {
      on: on.trim(),
      faults: [...(ringed ? [] : ['no ring']), ...(seen ? [] : ['hidden'])],
    };
  });

/** Presses a key again and again, until the focus is on nothing of the page or where it was before. */
const walk = async (page: Page, key: string, most: number) => {
  const names: string[] = [];
  const faults: string[] = [];
  for (let i = 0; i < most; i += 1) {
    await page.keyboard.press(key);
    const focus = await focusOn(page);
    if (focus.on === null) break;
    names.push(focus.on);
    faults.push(...focus.faults.map((fault) => `${focus.on}: ${fault}`));
  }
  return { names, faults };
};

const MOST = 90;

describe.each([...STAGES])('the page of the stage %s, by keys', (stage) => {
  it.each([
    [1024, 768],
    [320, 640],
  ])(
    'lets Tab through and out again, both ways, the focus always to be seen (WCAG 2.2, 2.1.2, 2.4.7, 2.4.11), in a window of %i by %i',
    async (width, height) => {
      const page = await halfDone(pages, stage, { viewport: { width, height } });
      // A browser begins where it scrolled last: first to the beginning.
      await walk(page, 'Shift+Tab', MOST);
      const onwards = await walk(page, 'Tab', MOST);
      const back = await walk(page, 'Shift+Tab', MOST);
      expect([...onwards.faults, ...back.faults]).toEqual([]);
      expect(onwards.names.length).toBeGreaterThan(5);
      expect(onwards.names.length).toBeLessThan(MOST);
      expect(back.names).toEqual(onwards.names.toReversed());
      await page.context().close();
    },
  );

  // Paper has no mat.
  if (stage === 'paper') return;
  it('hides no square that the arrow keys come to, on a mat that pans (WCAG 2.2, 2.4.11)', async () => {
    const page = await halfDone(pages, stage, { viewport: { width: 320, height: 640 } });
    const square = page.getByRole('gridcell', { name: /^row units, column units,/ });
    await square.focus();
    for (const key of ['ArrowLeft', 'ArrowUp', 'ArrowRight', 'ArrowDown']) {
      const { faults } = await walk(page, key, 9);
      expect([key, faults]).toEqual([key, []]);
    }
    await page.context().close();
  });
});
