import express, { type ErrorRequestHandler, type Express } from 'express';
import { authorizeRoutes } from './authorize.ts';
import { controlRoutes } from './control.ts';
import { publicKeySet } from './keys.ts';
import { lineItemRoutes } from './line-items.ts';
import { noticePage } from './pages/layout.ts';
import { pageRoutes } from './pages/routes.ts';
import { resultRoutes } from './results.ts';
import { rosterRoutes } from './roster.ts';
import type { School } from './school.ts';
import { scoreRoutes } from './scores.ts';
import { tokenRoutes } from './tokens.ts';

const failed: ErrorRequestHandler = (error, _request, response, _next) => {
  const status = Number(error.status ?? 500);
  if (status >= 500) console.error(error);
  response.status(status).send(noticePage('Sorry', 'Something went wrong in the school.'));
};

export const createApp = (school: School): Express =>
  express()
    .disable('x-powered-by')
    .disable('etag')
    .use(pageRoutes(school))
    .use(authorizeRoutes(school))
    .use(tokenRoutes(school))
    .get('/keys', school.troubles.meet('keys'), (_request, response) => {
      response.json(publicKeySet(school.state.signingKey));
    })
    .use(lineItemRoutes(school))
    .use(scoreRoutes(school))
    .use(resultRoutes(school))
    .use(rosterRoutes(school))
    .use(controlRoutes(school))
    .use(failed);
