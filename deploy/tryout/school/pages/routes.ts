import { readFileSync } from 'node:fs';
import { type Request, type Response, Router, urlencoded } from 'express';
import { changeGrade } from '../control.ts';
import { autoPost } from '../html.ts';
import { personOf } from '../scenario.ts';
import type { Activity, School } from '../school.ts';
import type { Session } from '../sessions.ts';
import { activityPage, coursePage } from './course.ts';
import { gradebookPage } from './gradebook.ts';
import { entrancePage, noticePage } from './layout.ts';

const STYLE = readFileSync(new URL('school.css', import.meta.url), 'utf8');

const ownPath = (value: unknown): string => {
  const path = String(value ?? '');
  return /^\/[a-z]/.test(path) ? path : '/course';
};

const enter = (school: School, request: Request, response: Response): void => {
  const person = personOf(String(request.body.person));
  if (person) school.sessions.signIn(response, person);
  response.redirect(303, person ? ownPath(request.body.back) : '/');
};

/** Begins a launch: a form to the tool's login address, posted by itself, with the fields a real platform sends. */
const launch = (
  { settings, launches }: School,
  session: Session,
  activity: Activity,
  { target, review }: Request['query'],
): string => {
  const { tool, issuer } = settings;
  const hint = launches.begin({
    activity: activity.id,
    person: session.person.id,
    session: session.key,
    target: target === 'window' ? 'window' : 'iframe',
    message: review === undefined ? 'LtiResourceLinkRequest' : 'LtiSubmissionReviewRequest',
    forUser: review ? String(review) : null,
  });
  return autoPost(tool.loginUrl, {
    iss: issuer,
    target_link_uri: tool.targetLinkUri,
    login_hint: session.person.id,
    lti_message_hint: hint,
    client_id: tool.clientId,
    lti_deployment_id: tool.deploymentId,
  });
};

const setMark = async (school: School, request: Request, response: Response): Promise<void> => {
  const { item, child, mark, release } = request.body as Record<string, string>;
  const set = release ? null : mark ? Number(mark) : undefined;
  if (item && child && set !== undefined && !Number.isNaN(set)) {
    changeGrade(school, { lineItem: item, userId: child, mark: set });
    await school.save();
  }
  response.redirect(303, '/gradebook');
};

type Page = (session: Session, request: Request, response: Response) => void;

export const pageRoutes = (school: School): Router => {
  const form = urlencoded({ extended: false });
  const signedIn = (page: Page) => (request: Request, response: Response) => {
    const session = school.sessions.of(request);
    response.setHeader('Cache-Control', 'no-store');
    if (session) page(session, request, response);
    else response.redirect(303, '/');
  };
  const withActivity = (show: (session: Session, activity: Activity, request: Request) => string) =>
    signedIn((session, request, response) => {
      const activity = school.activities.find((one) => one.id === request.params.activity);
      if (activity) response.send(show(session, activity, request));
      else response.status(404).send(noticePage('Not found', 'There is no such activity.'));
    });
  const reviewed = ({ query }: Request) =>
    query.review === undefined ? undefined : String(query.review);
  return Router()
    .get('/school.css', (_request, response) => void response.type('css').send(STYLE))
    .get('/', (_request, response) => void response.send(entrancePage()))
    .post('/enter', form, (request, response) => enter(school, request, response))
    .get(
      '/course',
      signedIn((session, _request, response) => response.send(coursePage(school, session))),
    )
    .get(
      '/course/:activity',
      withActivity((session, activity, request) =>
        activityPage(session, activity, reviewed(request)),
      ),
    )
    .get(
      '/launch/:activity',
      withActivity((session, activity, request) =>
        launch(school, session, activity, request.query),
      ),
    )
    .get('/return', (_request, response) => response.redirect(303, '/course'))
    .get(
      '/gradebook',
      signedIn((session, _request, response) => response.send(gradebookPage(school, session))),
    )
    .post(
      '/gradebook/mark',
      form,
      signedIn((session, request, response) => {
        if (session.person.role !== 'Instructor') return response.redirect(303, '/gradebook');
        void setMark(school, request, response);
      }),
    );
};
