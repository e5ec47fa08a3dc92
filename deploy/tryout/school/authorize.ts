import { type Request, type Response, Router, urlencoded } from 'express';
import { claimsOf } from './claims.ts';
import { autoPost } from './html.ts';
import { sign } from './keys.ts';
import type { Launch } from './launches.ts';
import { noticePage } from './pages/layout.ts';
import { type Person, personOf } from './scenario.ts';
import type { Activity, School } from './school.ts';
import type { Session } from './sessions.ts';

type Fields = Record<string, string>;

interface Allowed {
  launch: Launch;
  activity: Activity;
  person: Person;
}

/** Refused by a page of the school (nothing reaches the tool), or by a message posted to the tool. */
type Refusal = { page: string } | { error: string; error_description?: string };

const textFields = (request: Request): Fields =>
  Object.fromEntries(
    Object.entries({ ...request.query, ...request.body }).filter(
      (entry): entry is [string, string] => typeof entry[1] === 'string',
    ),
  );

const checkRequest = ({ settings }: School, fields: Fields): Refusal | null => {
  const { redirect_uri, scope, lti_message_hint, nonce } = fields;
  if (!redirect_uri || !settings.tool.redirectUris.includes(redirect_uri)) {
    return { page: 'redirect_uri is not one that is registered' };
  }
  if (scope !== 'openid') return { page: 'scope must be exactly openid' };
  if (!lti_message_hint) return { page: 'lti_message_hint is missing' };
  if (!nonce) return { page: 'nonce is missing' };
  return null;
};

const checkMessage = ({ settings }: School, fields: Fields, session: Session): Refusal | null => {
  const { response_type, client_id, login_hint, response_mode, prompt } = fields;
  if (response_type !== 'id_token') return { error: 'unsupported_response_type' };
  if (client_id !== settings.tool.clientId) return { error: 'unauthorized_client' };
  if (login_hint !== session.person.id) return { error: 'access_denied' };
  if (response_mode !== 'form_post') {
    return { error: 'invalid_request', error_description: 'Invalid response_mode' };
  }
  if (prompt !== undefined && prompt !== 'none') {
    return { error: 'invalid_request', error_description: 'Invalid prompt' };
  }
  return null;
};

const authorize = (school: School, fields: Fields, session: Session): Refusal | Allowed => {
  const wrong = checkRequest(school, fields);
  if (wrong) return wrong;
  const launch = school.launches.take(fields.lti_message_hint ?? '', session.key);
  if (!launch) return { page: 'this launch is used up or was never begun here' };
  const refused = checkMessage(school, fields, session);
  if (refused) return refused;
  const activity = school.activities.find((one) => one.id === launch.activity);
  const person = personOf(launch.person);
  if (!activity || !person) return { page: 'the activity is no longer there' };
  return { launch, activity, person };
};

const answer = async (
  school: School,
  fields: Fields,
  session: Session,
  response: Response,
): Promise<void> => {
  const outcome = authorize(school, fields, session);
  if ('page' in outcome) {
    response.status(400).send(noticePage('Invalid request', outcome.page));
    return;
  }
  const state: Fields = fields.state === undefined ? {} : { state: fields.state };
  if ('error' in outcome) {
    response.send(autoPost(fields.redirect_uri ?? '', { ...outcome, ...state }));
    return;
  }
  const { launch, activity, person } = outcome;
  const claims = claimsOf(school, launch, activity, person, fields.nonce ?? '');
  const id_token = await sign(school.state.signingKey, claims);
  response.send(autoPost(fields.redirect_uri ?? '', { id_token, ...state }));
};

/**
 * The OIDC authorization endpoint. A request that another site's page brought comes without the school's cookie;
 * the school then posts it to itself once, from its own page, as a real platform was seen to do.
 */
export const authorizeRoutes = (school: School): Router => {
  const handle = (request: Request, response: Response): void => {
    const fields = textFields(request);
    const session = school.sessions.of(request);
    response.setHeader('Cache-Control', 'no-store');
    if (session) return void answer(school, fields, session, response);
    if (fields.again === undefined) {
      return void response.send(autoPost('/authorize', { ...fields, again: '1' }));
    }
    response.status(403).send(noticePage('Please sign in', 'Nobody is signed in here.'));
  };
  return Router()
    .get('/authorize', handle)
    .post('/authorize', urlencoded({ extended: false }), handle);
};
