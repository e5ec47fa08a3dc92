/**
 * `npm start -- --check`: a child's whole way without people. A real browser opens the activity in the school's frame,
 * works both problems through the page, the tool is killed in the middle of the second and started again, and the
 * score is read from the school's results service. Prints one JSON object; 0 only if everything held.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prepare, startSchool, startTool } from '../stack.ts';
import { openBrowser } from './browser.ts';
import { checkGradebook, checkScore } from './gradebook.ts';
import { emptyReport, note, type Report, type Running } from './report.ts';
import { expected } from './scene.ts';
import { checkActions, openActivity, workBoth } from './work.ts';

export type Close = () => Promise<unknown>;

/** Far from the ports that people use, so that a check beside an open school disturbs nobody. */
const somePort = (): number => 20_000 + Math.floor(Math.random() * 20_000);

/** Starts everything; what must be closed at the end is added as it is opened. */
export const openAll = async (report: Report, closing: Close[]): Promise<Running> => {
  const data = await mkdtemp(join(tmpdir(), 'placeweave-check-'));
  closing.push(() => rm(data, { recursive: true, force: true }));
  const plan = await prepare(data, { tool: somePort(), school: somePort() });
  const school = await startSchool(plan);
  closing.push(() => school.stop());
  const tool = await startTool(plan);
  const running: Omit<Running, 'browser'> = { plan, school, tool };
  closing.push(() => running.tool.stop());
  const browser = await openBrowser();
  closing.push(() => browser.close());
  note(report, 'tool', tool);
  note(report, 'school', school);
  return Object.assign(running, { browser });
};

const run = async (report: Report, closing: Close[]): Promise<void> => {
  const running = await openAll(report, closing);
  const page = await running.browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(30_000);
  await openActivity(page, running, report);
  await workBoth(page, running, report);
  await checkActions(page, running, report);
  await checkScore(running, report);
  await checkGradebook(page, report);
  report.ok = true;
};

/** The exit code. */
export const check = async (): Promise<number> => {
  const began = Date.now();
  const report = emptyReport(expected());
  const closing: Close[] = [];
  try {
    await run(report, closing);
  } catch (error) {
    report.reason = (error as Error).message.slice(0, 400);
  }
  for (const close of closing.reverse()) await close();
  report.seconds = Math.round((Date.now() - began) / 1000);
  console.log(JSON.stringify(report, null, 2));
  return report.ok ? 0 : 1;
};
