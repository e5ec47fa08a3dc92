/**
 * `npm run check:cut`: the network is really gone for ten minutes while a child goes on working in the school's frame.
 * Prints one JSON object; 0 only if the page said all along what was not saved, and nothing was lost.
 */
import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { type Close, openAll } from '../../deploy/tryout/check/check.ts';
import { checkScore } from '../../deploy/tryout/check/gradebook.ts';
import { emptyReport, must, type Report, type Running } from '../../deploy/tryout/check/report.ts';
import { expected, WORK } from '../../deploy/tryout/check/scene.ts';
import { checkActions, openActivity } from '../../deploy/tryout/check/work.ts';
import { goOn, perform, untilSaved } from '../support/work-page.ts';

const CUT_MINUTES = 10;
/** Actions of the second problem that are saved before the cut, and that are left for after it. */
const [BEFORE, AFTER] = [6, 4];

interface Cut {
  minutes: number;
  actions: number;
  /** What the page said of saving after each action of the cut. */
  said: string[];
  /** From the network's return until the page says that all is saved. */
  savedAfterSeconds: number;
}

const workInCut = async (page: Page, actions: (typeof WORK)[number]): Promise<string[]> => {
  const frame = page.frameLocator('iframe');
  const said: string[] = [];
  const until = Date.now() + CUT_MINUTES * 60_000;
  const pause = (CUT_MINUTES * 60_000) / actions.length;
  for (const [at, action] of actions.entries()) {
    await perform(frame, action);
    const saving = frame.locator('[data-saving]');
    await frame.getByText(`Not saved yet: ${at + 1} `).waitFor({ timeout: 60_000 });
    said.push(((await saving.textContent()) ?? '').trim());
    await wait(Math.max(0, Math.min(pause, until - Date.now())));
  }
  await wait(Math.max(0, until - Date.now()));
  return said;
};

const work = async (page: Page, running: Running, report: Report): Promise<Cut> => {
  await openActivity(page, running, report);
  const frame = page.frameLocator('iframe');
  const [first = [], second = []] = WORK;
  for (const action of [...first]) await perform(frame, action);
  await goOn(frame);
  for (const action of second.slice(0, BEFORE)) await perform(frame, action);
  await untilSaved(frame);
  await page.context().setOffline(true);
  const began = Date.now();
  const actions = second.slice(BEFORE, second.length - AFTER);
  const said = await workInCut(page, actions);
  const minutes = (Date.now() - began) / 60_000;
  await page.context().setOffline(false);
  const back = Date.now();
  await untilSaved(frame);
  const savedAfterSeconds = (Date.now() - back) / 1000;
  for (const action of second.slice(second.length - AFTER)) await perform(frame, action);
  await untilSaved(frame);
  await goOn(frame);
  return { minutes, actions: actions.length, said, savedAfterSeconds };
};

const report = emptyReport(expected());
const closing: Close[] = [];
let cut: Cut | null = null;
try {
  const running = await openAll(report, closing);
  const page = await running.browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(30_000);
  cut = await work(page, running, report);
  must(cut.minutes >= CUT_MINUTES, 'the cut was too short');
  await checkActions(page, running, report);
  await checkScore(running, report);
  report.ok = true;
} catch (error) {
  report.reason = (error as Error).message.slice(0, 400);
}
for (const close of closing.reverse()) await close();
process.stdout.write(`${JSON.stringify({ ...report, cut }, null, 2)}\n`);
process.exitCode = report.ok ? 0 : 1;
