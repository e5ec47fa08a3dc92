/**
 * `npm start -- --check`: a child's whole way without people. A real browser opens the activity in the school's frame,
 * works both problems through the page, the tool is killed in the middle of the second and started again, and the
 * score is read from the school's results service. Prints one JSON object; 0 only if everything held.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { type ChildAction, childWork } from '../../tests/support/child-work.ts';
import { goOn, perform, untilSaved } from '../../tests/support/work-page.ts';
import { openBrowser } from './browser.ts';
import type { ChildProcess } from './child-process.ts';
import { DEMO_ACTIVITIES } from './demo.ts';
import { expectedScore, stepCount } from './expected.ts';
import type { Plan } from './plan.ts';
import { prepare, startSchool, startTool } from './stack.ts';

const CHILD = { id: '4', name: 'Ada' };
const RESULT_READ = 'https://purl.imsglobal.org/spec/lti-ags/scope/result.readonly';

interface Report {
  ok: boolean;
  reason?: string;
  launch?: { as: string; activity: string; frame: string };
  fetchSite?: string;
  /** What the child did, and what the tool holds of it at the end. */
  actions?: { done: number; kept: number };
  restarts: number;
  signal?: number | NodeJS.Signals;
  pids: { tool: number[]; school: number[] };
  startTimes: { tool: string[]; school: string[] };
  score?: number;
  expected?: number;
  platformScores?: object[];
  delivered?: boolean;
  seconds?: number;
}

interface Running {
  plan: Plan;
  tool: ChildProcess;
  school: ChildProcess;
  browser: Browser;
}

const [ACTIVITY] = DEMO_ACTIVITIES;
if (!ACTIVITY) throw new Error('The demo has no activity.');
const { title, points, problems } = ACTIVITY;

/** The first problem with one slip and its correction, the second clean. */
const WORK: ChildAction[][] = problems.map(({ multiplicand, multiplier }, index) =>
  childWork(multiplicand, multiplier, index === 0 ? [0, 0] : null),
);

const expected = (): number => {
  const steps = problems.map(({ multiplicand, multiplier }) => stepCount(multiplicand, multiplier));
  return expectedScore(
    steps.reduce((sum, count) => sum + count, 0),
    1,
    points ?? 0,
  );
};

const must: (held: unknown, reason: string) => asserts held = (held, reason) => {
  if (!held) throw new Error(reason);
};

const note = (report: Report, who: 'tool' | 'school', { pid, startedAt }: ChildProcess): void => {
  report.pids[who].push(pid);
  report.startTimes[who].push(new Date(startedAt).toISOString());
};

/** Two clicks: who one is, and the activity. */
const openActivity = async (page: Page, { plan }: Running, report: Report): Promise<void> => {
  const launched = page.waitForRequest(
    (request) => request.method() === 'POST' && request.url() === `${plan.tool}/lti/launch`,
  );
  await page.goto(plan.school);
  await page.getByRole('button', { name: CHILD.name }).click();
  await page.getByRole('link', { name: title }).click();
  const headers = await (await launched).allHeaders();
  report.fetchSite = headers['sec-fetch-site'] ?? 'not sent';
  const work = workIn(page);
  await work.getByRole('grid').waitFor({ timeout: 30_000 });
  const frame = page.frames().find((one) => one.url().startsWith(plan.tool));
  must(frame, 'the frame does not show the tool');
  report.launch = { as: CHILD.name, activity: title, frame: frame.url() };
};

const workIn = (page: Page) => page.frameLocator('iframe');

/** The tool dies without a word while the child goes on, and comes back. */
const killAndRestart = async (running: Running, report: Report, meanwhile: () => Promise<void>) => {
  running.tool.kill('SIGKILL');
  report.signal = await running.tool.ended;
  await meanwhile();
  running.tool = await startTool(running.plan);
  note(report, 'tool', running.tool);
  report.restarts += 1;
};

const work = async (page: Page, running: Running, report: Report): Promise<void> => {
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
const keptActions = async (page: Page, { plan }: Running): Promise<ChildAction[]> => {
  const frame = page.frames().find((one) => one.url().startsWith(plan.tool));
  const session = await frame?.evaluate<string | null>("sessionStorage.getItem('session')");
  const { token } = JSON.parse(session ?? '{}') as { token?: string };
  const answer = await fetch(`${plan.tool}/api/attempt`, {
    headers: { Authorization: `Bearer ${token}` },
  });
  const { attempt } = (await answer.json()) as { attempt: { actions: { action: ChildAction }[] } };
  return attempt.actions.map(({ action }) => action);
};

const checkActions = async (page: Page, running: Running, report: Report): Promise<void> => {
  const kept = (await keptActions(page, running)).map((action) => action.do);
  const done = WORK.flat().map((action) => action.do);
  report.actions = { done: done.length, kept: kept.length };
  must(kept.join() === done.join(), 'the tool does not hold what the child did, in its order');
};

interface SchoolLog {
  accepted: { userId: string; scoreGiven: number; scoreMaximum: number }[];
}

/** The child's mark by the results service of the platform; null while there is none. */
const markAt = async ({ plan }: Running): Promise<number | null> => {
  const asked = await fetch(`${plan.school}/control/token`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ scopes: [RESULT_READ] }),
  });
  const { access_token } = (await asked.json()) as { access_token: string };
  const path = `/services/2/lineitems/1/lineitem/results?tool=1&user_id=${CHILD.id}`;
  const answer = await fetch(plan.school + path, {
    headers: {
      Authorization: `Bearer ${access_token}`,
      Accept: 'application/vnd.ims.lis.v2.resultcontainer+json',
    },
  });
  const [result] = (await answer.json()) as { resultScore: number }[];
  return result?.resultScore ?? null;
};

const untilMark = async (running: Running): Promise<number> => {
  const until = Date.now() + 45_000;
  while (Date.now() < until) {
    const mark = await markAt(running);
    if (mark !== null) return mark;
    await new Promise((done) => setTimeout(done, 200));
  }
  throw new Error('no score reached the gradebook within 45 s');
};

const checkScore = async (running: Running, report: Report): Promise<void> => {
  report.score = await untilMark(running);
  const log = await fetch(`${running.plan.school}/control`);
  const { accepted } = (await log.json()) as SchoolLog;
  report.platformScores = accepted;
  report.delivered = accepted.length === 1 && accepted[0]?.userId === CHILD.id;
  must(report.delivered, 'the platform did not accept exactly one score');
  must(report.score === report.expected, 'the score is not what the steps are worth');
};

/** One more click. */
const checkGradebook = async (page: Page, report: Report): Promise<void> => {
  await page.getByRole('link', { name: 'Gradebook' }).click();
  const row = page.getByRole('row', { name: new RegExp(`^${CHILD.name}`) }).first();
  const text = await row.textContent();
  must(text?.includes(String(report.score)), 'the gradebook page does not show the score');
};

const run = async (running: Running, report: Report): Promise<void> => {
  note(report, 'tool', running.tool);
  note(report, 'school', running.school);
  const page = await running.browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(20_000);
  await openActivity(page, running, report);
  must(report.fetchSite === 'cross-site', 'the launch did not come from another site');
  await work(page, running, report);
  await checkActions(page, running, report);
  must(report.signal === 'SIGKILL', 'the tool did not end by SIGKILL');
  await checkScore(running, report);
  await checkGradebook(page, report);
};

/** Far from the ports that people use, so that a check beside an open school disturbs nobody. */
const somePort = (): number => 20_000 + Math.floor(Math.random() * 20_000);

export const check = async (): Promise<number> => {
  const began = Date.now();
  const data = await mkdtemp(join(tmpdir(), 'placeweave-check-'));
  const report: Report = {
    ok: false,
    restarts: 0,
    pids: { tool: [], school: [] },
    startTimes: { tool: [], school: [] },
    expected: expected(),
  };
  const open: { close(): Promise<void> }[] = [];
  try {
    const plan = await prepare(data, { tool: somePort(), school: somePort() });
    const school = await startSchool(plan);
    open.push({ close: () => school.stop() });
    const running: Running = {
      plan,
      school,
      tool: await startTool(plan),
      browser: await openBrowser(),
    };
    open.push({ close: () => running.tool.stop() }, { close: () => running.browser.close() });
    await run(running, report);
    report.ok = true;
  } catch (error) {
    report.reason = (error as Error).message;
  }
  for (const one of open.reverse()) await one.close();
  await rm(data, { recursive: true, force: true });
  report.seconds = Math.round((Date.now() - began) / 1000);
  console.log(JSON.stringify(report, null, 2));
  return report.ok ? 0 : 1;
};
