import { json, type Request, type Response, Router } from 'express';
import { NO_GRADE } from './grading.ts';
import { itemOf } from './line-items.ts';
import { columnOf, type School } from './school.ts';
import { grant } from './tokens.ts';
import { parseTrouble } from './troubles.ts';

const overview = ({ state, troubles }: School) => ({
  troubles: troubles.waiting,
  revoked: [...troubles.revoked],
  grades: state.grades,
  accepted: state.accepted,
});

const addTrouble = (school: School, request: Request, response: Response): void => {
  const trouble = parseTrouble(request.body);
  if (typeof trouble === 'string') return void response.status(400).json({ error: trouble });
  school.troubles.waiting.push(trouble);
  response.json(overview(school));
};

const setRevoked = (school: School, request: Request, response: Response): void => {
  const { scopes } = request.body as { scopes?: unknown };
  if (!Array.isArray(scopes)) return void response.status(400).json({ error: 'scopes: a list' });
  school.troubles.revoked = new Set(scopes.map(String));
  response.json(overview(school));
};

interface GradeChange {
  lineItem?: string;
  userId?: string;
  mark?: number | null;
  comment?: string;
  locked?: boolean;
}

/** What a teacher may do in the gradebook: set a mark by hand, give it back to the tool, lock it. */
export const changeGrade = (school: School, change: GradeChange): boolean => {
  const item = itemOf(school, change.lineItem);
  if (!item || change.userId === undefined) return false;
  const column = columnOf(school.state, item);
  const grade = { ...(column[change.userId] ?? NO_GRADE) };
  if (change.locked !== undefined) grade.locked = change.locked;
  if (change.mark === null) Object.assign(grade, { overridden: false, final: grade.raw });
  if (typeof change.mark === 'number') {
    grade.final = change.mark;
    grade.comment = change.comment ?? grade.comment;
    grade.modified = Math.floor(Date.now() / 1000);
    grade.overridden = true;
  }
  column[change.userId] = grade;
  return true;
};

/**
 * For tests: look at the gradebook and the log of accepted scores, get a token as the platform's own people have, and
 * make the school misbehave.
 * Takes JSON only, which no page of another site can send.
 */
export const controlRoutes = (school: School): Router =>
  Router()
    .use('/control', json())
    .get('/control', (_request, response) => void response.json(overview(school)))
    .post('/control/troubles', (request, response) => addTrouble(school, request, response))
    .delete('/control/troubles', (_request, response) => {
      school.troubles.waiting.length = 0;
      response.json(overview(school));
    })
    .post('/control/token', (request, response, next) => {
      const { scopes } = request.body as { scopes?: unknown };
      if (!Array.isArray(scopes))
        return void response.status(400).json({ error: 'scopes: a list' });
      void grant(school, scopes.map(String)).then((token) => response.json(token), next);
    })
    .put('/control/revoked', (request, response) => setRevoked(school, request, response))
    .put('/control/grade', (request, response) => {
      if (!changeGrade(school, request.body as GradeChange)) {
        return void response.status(400).json({ error: 'lineItem, userId: those of a column' });
      }
      void school.save().then(() => response.json(overview(school)));
    });
