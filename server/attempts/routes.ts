import { json, Router } from 'express';
import { answer, readMessage, sessionOf } from '../answer.ts';
import { actionsMessage, LIMITS } from '../contract.ts';
import type { AttemptService } from './service.ts';

/** `GET /attempt`: the attempt of the session. */
export function attemptRoute(attempts: AttemptService): Router {
  const router = Router();
  router.get(
    '/',
    answer((_req, res) => attempts.show(sessionOf(res))),
  );
  return router;
}

/** `POST /attempts/:id/actions`: a numbered batch of what the learner did. */
export function actionRoutes(attempts: AttemptService): Router {
  const router = Router();
  router.post(
    '/:id/actions',
    json({ limit: LIMITS.actionsBody, strict: true }),
    answer(async (req, res) => {
      const message = readMessage(actionsMessage, req.body);
      if (!message.ok) return message;
      return attempts.add(sessionOf(res), req.params.id ?? '', message.value);
    }),
  );
  return router;
}
