import { type Request, type Response, Router } from 'express';
import { itemOf } from './line-items.ts';
import type { School } from './school.ts';
import { RESULT_READ } from './scopes.ts';
import { accepts, needs, refuse } from './services.ts';
import type { Grade, LineItem } from './state.ts';
import { lineItemUrl, resultUrl } from './urls.ts';

const CONTAINER = 'application/vnd.ims.lis.v2.resultcontainer+json';

const written = (seconds: number): string =>
  new Date(seconds * 1000).toISOString().replace('.000Z', '+00:00');

const shown = (school: School, item: LineItem, user: string, grade: Grade) => ({
  id: resultUrl(school, item.id, user),
  userId: user,
  resultScore: grade.final,
  resultMaximum: item.scoreMaximum,
  ...(grade.comment === null ? {} : { comment: grade.comment }),
  scoreOf: lineItemUrl(school, item.id),
  timestamp: written(grade.modified ?? 0),
});

const rowsOf = (school: School, item: LineItem, asked: unknown) =>
  Object.entries(school.state.grades[item.id] ?? {})
    .filter(([user, { final }]) => final !== null && (asked === undefined || asked === user))
    .map(([user, grade]) => shown(school, item, user, grade));

const list = (school: School, request: Request, response: Response): void => {
  const item = itemOf(school, request.params.item);
  if (!item) {
    refuse(request, response, 404, `Not Found: no column ${request.params.item}`);
  } else if (request.query.limit !== undefined) {
    // A real platform answers a limit with an error page.
    response.status(404).send('<!doctype html><title>Error</title><p>Exception</p>');
  } else {
    response.setHeader('Content-Type', `${CONTAINER}; charset=utf-8`);
    response.send(JSON.stringify(rowsOf(school, item, request.query.user_id)));
  }
};

/** The marks that people see, the teacher's own included; who has none is left out. */
export const resultRoutes = (school: School): Router =>
  Router().get(
    '/services/:course/lineitems/:item/lineitem/results',
    school.troubles.meet('results'),
    accepts(CONTAINER, true),
    needs(school, RESULT_READ),
    (request, response) => list(school, request, response),
  );
