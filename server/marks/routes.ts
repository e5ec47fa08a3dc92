import { Router } from 'express';
import { answer, sessionOf } from '../answer.ts';
import type { MarkService } from './service.ts';

/** `GET /attempts/:id/result`: the learner's own result. */
export function resultRoutes(marks: MarkService): Router {
  const router = Router();
  router.get(
    '/:id/result',
    answer((req, res) => marks.result(sessionOf(res), req.params.id ?? '')),
  );
  return router;
}
