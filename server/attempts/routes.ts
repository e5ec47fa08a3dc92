import { json, Router } from 'express';
import { answer, readMessage, sessionOf } from '../answer.ts';
import { actionsMessage, choiceMessage, LIMITS } from '../contract.ts';
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

/** `POST /attempts/:id/actions`: a numbered batch of what the learner did. `POST /attempts/:id/choice`: which problem is picked. */
export function workRoutes(attempts: AttemptService): Router {
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
  router.post(
    '/:id/choice',
    json({ limit: LIMITS.body, strict: true }),
    answer(async (req, res) => {
      const message = readMessage(choiceMessage, req.body);
      if (!message.ok) return message;
      return attempts.choose(sessionOf(res), req.params.id ?? '', message.value);
    }),
  );
  return router;
}
