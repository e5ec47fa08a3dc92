import type { Page } from 'playwright-core';
import type { ChildAction } from '../../../tests/support/child-work.ts';
import { goOn, perform, untilSaved } from '../../../tests/support/work-page.ts';
import { startTool } from '../stack.ts';
import { must, note, type Report, type Running } from './report.ts';
import { ACTIVITY, CHILD, WORK } from './scene.ts';

const workIn = (page: Page) => page.frameLocator('iframe');

const frameOf = (page: Page, { plan }: Running) =>
  page.frames().find((frame) => frame.url().startsWith(plan.tool));

/** Two clicks: who one is, and the activity. */
export const openActivity = async (page: Page, running: Running, report: Report): Promise<void> => {
  const { plan } = running;
  const launched = page.waitForRequest(
    (request) => request.method() === 'POST' && request.url() === `${plan.tool}/lti/launch`,
  );
  await page.goto(plan.school);
  await page.getByRole('button', { name: CHILD.name }).click();
  await page.getByRole('link', { name: ACTIVITY.title }).click();
  const headers = await (await launched).allHeaders();
  report.fetchSite = headers['sec-fetch-site'] ?? 'not sent';
  must(report.fetchSite === 'cross-site', 'the launch did not come from another site');
  await workIn(page).getByRole('grid').waitFor();
  const frame = frameOf(page, running);
  must(frame, 'the frame does not show the tool');
  report.launch = { as: CHILD.name, activity: ACTIVITY.title, frame: frame.url() };
};

/** The tool dies without a word while the child goes on, and comes back. */
const killAndRestart = async (
  running: Running,
  report: Report,
  meanwhile: () => Promise<void>,
): Promise<void> => {
  running.tool.kill('SIGKILL');
  report.signal = await running.tool.ended;
  must(report.signal === 'SIGKILL', 'the tool did not end by SIGKILL');
  await meanwhile();
  running.tool = await startTool(running.plan);
  note(report, 'tool', running.tool);
  report.restarts += 1;
};

/** Both problems through the page; the kill falls into the middle of the second. */
export const workBoth = async (page: Page, running: Running, report: Report): Promise<void> => {
  const scope = workIn(page);
  const [first = [], second = []] = WORK;
  for (const action of first) await perform(scope, action);
  await goOn(scope);
  const middle = Math.floor(second.length / 2);
  for (const action of second.slice(0, middle)) await perform(scope, action);
  await killAndRestart(running, report, async () => {
    for (const action of second.slice(middle, middle + 2)) await perform(scope, action);
  });
  for (const action of second.slice(middle + 2)) await perform(scope, action);
  await untilSaved(scope);
  await goOn(scope);
};

/** What the tool holds of the attempt, asked with the session of the child's own page. */
const keptActions = async (page: Page, running: Running): Promise<ChildAction[]> => {
  const kept = "sessionStorage.getItem('session')";
  const session = await frameOf(page, running)?.evaluate<string | null>(kept);
  const { token } = JSON.parse(session ?? '{}') as { token?: string };
  const answer = await fetch(`${running.plan.tool}/api/attempt`, {
    headers: { Authorization: `Bearer ${token}` },
  });
  const { attempt } = (await answer.json()) as { attempt: { actions: { action: ChildAction }[] } };
  return attempt.actions.map(({ action }) => action);
};

export const checkActions = async (page: Page, running: Running, report: Report): Promise<void> => {
  const kept = (await keptActions(page, running)).map((action) => action.do);
  const done = WORK.flat().map((action) => action.do);
  report.actions = { done: done.length, kept: kept.length };
  must(kept.join() === done.join(), 'the tool does not hold what the child did, in its order');
};
