import { json, type Request, type Response, Router } from 'express';
import { graded, isScore, isStale, NO_GRADE, type PostedScore } from './grading.ts';
import { itemOf } from './line-items.ts';
import { CHILDREN } from './scenario.ts';
import { columnOf, type School } from './school.ts';
import { SCORE } from './scopes.ts';
import { carries, needs, refuse } from './services.ts';
import type { AcceptedScore, LineItem } from './state.ts';

const SCORE_TYPE = 'application/vnd.ims.lis.v1.score+json';

const numberOrNull = (value: unknown): number | null =>
  value === undefined || value === null ? null : Number(value);

const logged = (item: LineItem, posted: PostedScore): AcceptedScore => ({
  at: new Date().toISOString(),
  lineItem: item.id,
  userId: String(posted.userId),
  scoreGiven: numberOrNull(posted.scoreGiven),
  scoreMaximum: numberOrNull(posted.scoreMaximum),
  comment: typeof posted.comment === 'string' ? posted.comment : null,
  timestamp: String(posted.timestamp),
  gradingProgress: String(posted.gradingProgress),
});

/** The status of the answer; 200 after the grade is in the gradebook. Nothing waits in here: one at a time. */
const take = (school: School, item: LineItem, posted: PostedScore): number => {
  if (!isScore(posted)) return 400;
  const user = String(posted.userId);
  if (!CHILDREN.some((child) => child.id === user)) return 400;
  const column = columnOf(school.state, item);
  const grade = column[user] ?? NO_GRADE;
  if (isStale(grade, posted)) return 409;
  if (grade.locked) return 500;
  column[user] = graded(grade, posted, item.scoreMaximum, Math.floor(Date.now() / 1000));
  school.state.accepted.push(logged(item, posted));
  return 200;
};

/** Errors of this service have the body `[]`, success has none (seen at a real platform). */
export const scoreRoutes = (school: School): Router => {
  const handle = async (request: Request, response: Response): Promise<void> => {
    const item = itemOf(school, request.params.item);
    if (!item) return refuse(request, response, 404, `Not Found: no column ${request.params.item}`);
    const status = take(school, item, request.body as PostedScore);
    if (status === 200) await school.save();
    response.status(status).setHeader('Content-Type', `${SCORE_TYPE}; charset=utf-8`);
    response.end(status === 200 ? '' : '[]');
  };
  return Router().post(
    '/services/:course/lineitems/:item/lineitem/scores',
    school.troubles.meet('scores'),
    carries(SCORE_TYPE),
    needs(school, SCORE),
    json({ type: SCORE_TYPE }),
    (request, response, next) => void handle(request, response).catch(next),
  );
};
