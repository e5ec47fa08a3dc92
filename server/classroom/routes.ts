import { Router } from 'express';
import { answer, sessionOf } from '../answer.ts';
import { requireRole } from '../sessions/routes.ts';
import type { ClassService } from './service.ts';

/** `GET /`: the teacher's table. `POST /release`: shows and hands in the scores of what is finished; assistants may not. */
export function classRoutes(classroom: ClassService): Router {
  const router = Router();
  router.get(
    '/',
    requireRole('teacher', 'assistant', 'administrator'),
    answer((_req, res) => classroom.table(sessionOf(res))),
  );
  router.post(
    '/release',
    requireRole('teacher'),
    answer((_req, res) => classroom.release(sessionOf(res))),
  );
  return router;
}
