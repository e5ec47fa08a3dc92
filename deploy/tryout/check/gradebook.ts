import type { Page } from 'playwright-core';
import { must, type Report, type Running } from './report.ts';
import { CHILD } from './scene.ts';

const RESULT_READ = 'https://purl.imsglobal.org/spec/lti-ags/scope/result.readonly';
const RESULTS_TYPE = 'application/vnd.ims.lis.v2.resultcontainer+json';
const PATIENCE_SECONDS = 60;

const accessToken = async ({ plan }: Running): Promise<string> => {
  const answer = await fetch(`${plan.school}/control/token`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ scopes: [RESULT_READ] }),
  });
  return ((await answer.json()) as { access_token: string }).access_token;
};

/** The child's mark by the results service of the platform; null while there is none. */
const markAt = async ({ plan }: Running, token: string): Promise<number | null> => {
  const path = `/services/2/lineitems/1/lineitem/results?tool=1&user_id=${CHILD.id}`;
  const answer = await fetch(plan.school + path, {
    headers: { Authorization: `Bearer ${token}`, Accept: RESULTS_TYPE },
  });
  const [result] = (await answer.json()) as { resultScore: number }[];
  return result?.resultScore ?? null;
};

const untilMark = async (running: Running): Promise<number> => {
  const token = await accessToken(running);
  const until = Date.now() + PATIENCE_SECONDS * 1000;
  while (Date.now() < until) {
    const mark = await markAt(running, token);
    if (mark !== null) return mark;
    await new Promise((done) => setTimeout(done, 200));
  }
  throw new Error(`no score reached the gradebook within ${PATIENCE_SECONDS} s`);
};

interface SchoolLog {
  accepted: { userId: string; scoreGiven: number; scoreMaximum: number }[];
}

export const checkScore = async (running: Running, report: Report): Promise<void> => {
  report.score = await untilMark(running);
  const log = await fetch(`${running.plan.school}/control`);
  const { accepted } = (await log.json()) as SchoolLog;
  report.platformScores = accepted;
  report.delivered = accepted.length === 1 && accepted[0]?.userId === CHILD.id;
  must(report.delivered, 'the platform did not accept exactly one score');
  must(report.score === report.expected, 'the score is not what the steps are worth');
};

/** One more click. */
export const checkGradebook = async (page: Page, report: Report): Promise<void> => {
  await page.getByRole('link', { name: 'Gradebook' }).click();
  const row = page.getByRole('row', { name: new RegExp(`^${CHILD.name}`) }).first();
  const text = await row.textContent();
  must(text?.includes(String(report.score)), 'the gradebook page does not show the score');
};
