import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { parseProblem, replay, STAGES, type Stage, worked } from '../../engine/index.ts';
import { openAs } from '../support/open-page.ts';
import { pagesForFile } from '../support/pages-for-file.ts';

const pages = pagesForFile();
const { server } = pages;

const NUMBERS: Partial<Record<Stage, readonly [string, string]>> = { bars1: ['34', '7'] };
const OTHERS = ['26', '43'] as const;

const NAMES: Record<Stage, string> = {
  walk: 'Walk the squares',
  build: 'Build the numbers',
  bars1: 'Bars, one row',
  bars: 'Bars, several rows',
  facts: 'Known facts',
  record: 'Record the partial products',
  cells: 'Figures on the squares',
  paper: 'Squared paper',
  open: 'Open mat, laid by hand',
};

const open = async (): Promise<Page> => {
  const page = await pages.browser.newPage({ locale: 'en-GB', reducedMotion: 'reduce' });
  await page.goto(`${pages.address}/present`);
  return page;
};

const begin = async (page: Page, stage: Stage, numbers: string): Promise<void> => {
  await page.getByRole('combobox', { name: 'Stage' }).selectOption(NAMES[stage]);
  await page.getByRole('textbox', { name: 'Numbers' }).fill(numbers);
  await page.getByRole('button', { name: 'Begin' }).click();
};

const caption = (page: Page) => page.getByRole('status').first();
const shown = (page: Page) => page.getByText(/^Move 0 of/).waitFor();
const moveOf = async (page: Page): Promise<string> =>
  (await page.getByText(/^Move \d+ of \d+$/).textContent()) ?? '';

/** Keys as a clicker or a keyboard sends them. */
const FORWARD = ['ArrowRight', 'PageDown', ' ', 'ArrowDown'];
const BACK = ['ArrowLeft', 'PageUp', 'Shift+Space', 'ArrowUp'];

describe('a worked problem without a session', () => {
  it.each(STAGES.filter((stage) => stage !== 'open'))(
    'is shown move by move at the stage %s, every move with a caption of its own, and comes to the engine’s end',
    async (stage) => {
      const [multiplicand, multiplier] = NUMBERS[stage] ?? OTHERS;
      const written = stage === 'walk' ? { stage } : { stage, multiplicand, multiplier };
      const parsed = parseProblem(written);
      if (!parsed.ok) throw new Error(parsed.fault.code);
      const moves = worked(parsed.value);
      const page = await open();
      await begin(page, stage, `${multiplicand} × ${multiplier}`);
      await shown(page);
      for (let at = 0; at < moves.length; at += 1) {
        expect(await moveOf(page)).toBe(`Move ${at} of ${moves.length}`);
        expect(await caption(page).textContent()).not.toMatch(/[{}]|undefined|^$/);
        await page.keyboard.press(FORWARD[at % FORWARD.length] ?? '');
      }
      await page.getByText(/^That is all/).waitFor();
      const { position } = replay(
        parsed.value,
        moves.map(({ action }) => action),
      );
      const product = Object.values(position.paper.lines.product ?? {}).length;
      expect(await page.getByRole('button', { name: /^product, .*: \d/ }).count()).toBe(product);
      await page.close();
    },
  );

  it('goes back as it came, by every key and by the big buttons, and not past its ends', async () => {
    const page = await open();
    await begin(page, 'bars', '26 × 43');
    await shown(page);
    const seen: (string | null)[] = [];
    const state = async () =>
      `${await caption(page).textContent()} ${await page.getByRole('gridcell').evaluateAll((cells) => cells.map((cell) => cell.getAttribute('aria-label')).join())}`;
    for (let at = 0; at < 12; at += 1) {
      seen.push(await state());
      if (at % 2 === 0) await page.getByRole('button', { name: 'Forward' }).click();
      else await page.keyboard.press(FORWARD[at % FORWARD.length] ?? '');
    }
    for (let at = 11; at >= 0; at -= 1) {
      // On a focused button Space presses it, so the focus leaves first.
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
      await page.keyboard.press(BACK[at % BACK.length] ?? '');
      expect(await state()).toBe(seen[at]);
    }
    await page.keyboard.press('PageUp');
    expect(await moveOf(page)).toMatch(/^Move 0 of/);
    await page.keyboard.press('End');
    await page.keyboard.press('PageDown');
    expect(await moveOf(page)).toMatch(/^Move (\d+) of \1$/);
    await page.close();
  });

  it('can be shown without the words', async () => {
    const page = await open();
    await begin(page, 'bars1', '34 × 7');
    await shown(page);
    await page.keyboard.press('PageDown');
    const words = page.getByText(/^Below the mat, units/);
    expect((await words.boundingBox())?.height ?? 0).toBeGreaterThan(20);
    await page.getByRole('button', { name: 'Words' }).click();
    expect((await words.boundingBox())?.height ?? 0).toBeLessThan(3);
    await page.close();
  });

  it('refuses numbers that are not clear or that the stage does not take', async () => {
    const page = await open();
    await begin(page, 'bars', '12 34 56');
    await page.getByText('Write two numbers with × between them.').waitFor();
    await begin(page, 'bars1', '34 × 27');
    await page.getByText('This stage does not take these numbers').waitFor();
    await page.close();
  });
});

describe('at the end', () => {
  it('the presentation can be noted as a file that names who saw it, when, and what', async () => {
    const page = await open();
    await begin(page, 'paper', '2.6 × 43');
    await shown(page);
    await page.keyboard.press('End');
    await page.getByRole('button', { name: 'Note as presented' }).click();
    await page.getByRole('button', { name: 'Save the note as a file' }).click();
    await page.getByText('Write to whom it was presented.').waitFor();
    await page.getByRole('textbox', { name: 'Presented to' }).fill('Ada, Bo');
    await page.getByLabel('On', { exact: true }).fill('2026-03-09');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the note as a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('presented-2026-03-09-2.6x43.json');
    const note = JSON.parse(await readFile((await download.path()) ?? '', 'utf8'));
    expect(note).toEqual({
      kind: 'placeweave presentation',
      version: 1,
      presentedTo: ['Ada', 'Bo'],
      on: '2026-03-09',
      activity: null,
      problem: {
        stage: 'paper',
        multiplicand: '2.6',
        multiplier: '43',
        mat: { rows: 4, columns: 9 },
      },
    });
    expect(parseProblem(note.problem).ok).toBe(true);
    await page.close();
  });
});

describe('the open mat', () => {
  it('is laid by hand, says nothing of saving, and sends nothing', async () => {
    const page = await open();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    await begin(page, 'open', '');
    await page.getByRole('button', { name: 'Lay', exact: true }).click();
    await page.getByRole('button', { name: 'bar of 6' }).first().click();
    await page.getByRole('gridcell', { name: /^row units, column units/ }).click();
    await page.getByRole('gridcell', { name: /1 bar of 6/ }).waitFor();
    expect(await page.locator('.saving').isVisible()).toBe(false);
    expect(asked.filter((path) => path.startsWith('/api/'))).toEqual([]);
    await page.close();
  });
});

describe('from the class page', () => {
  it('the problems of the activity go along in the address, which needs no session', async () => {
    server.classroom = {
      activity: {
        title: 'Lantern class',
        release: 'onFinish',
        problems: [{ stage: 'bars', multiplicand: '934', multiplier: '314' }],
      },
      children: [],
    };
    const context = await pages.browser.newContext({ locale: 'en-GB' });
    const page = await openAs(context, pages.address, { token: 'teacher', view: 'class' });
    const [tab] = await Promise.all([
      context.waitForEvent('page'),
      page.getByRole('link', { name: 'Present' }).click(),
    ]);
    await tab.getByRole('button', { name: /^934 × 314/ }).click();
    await tab.getByRole('heading', { name: '934 × 314' }).waitFor();
    await page.getByRole('link', { name: 'Print' }).click();
    await page.getByRole('checkbox', { name: 'Problem cards' }).check();
    await page.getByRole('radio', { name: 'Of the activity “Lantern class” (1)' }).waitFor();
    await page.getByRole('button', { name: 'Back' }).click();
    await page.getByRole('heading', { name: 'Lantern class' }).waitFor();
    await context.close();
  });
});
