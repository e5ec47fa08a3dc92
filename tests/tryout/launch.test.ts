import { createLocalJWKSet, decodeProtectedHeader, type JSONWebKeySet, jwtVerify } from 'jose';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  formIn,
  openTestSchool,
  recorded,
  type TestSchool,
  TOOL,
} from '../support/tryout-school.ts';

let school: TestSchool;
beforeAll(async () => {
  school = await openTestSchool();
});
afterAll(() => school.close());

const page = async (path: string, cookie: string, init: RequestInit = {}) => {
  const answer = await fetch(`${school.origin}${path}`, { ...init, headers: { cookie } });
  return { status: answer.status, text: await answer.text() };
};

/** Begins a launch as the frame does, and gives what the tool would send back. */
const begin = async (cookie: string, path = '/launch/1') => {
  const login = formIn((await page(path, cookie)).text);
  const request: Record<string, string> = {
    scope: 'openid',
    response_type: 'id_token',
    response_mode: 'form_post',
    prompt: 'none',
    client_id: login.fields.client_id ?? '',
    redirect_uri: `${TOOL}/lti/launch`,
    login_hint: login.fields.login_hint ?? '',
    lti_message_hint: login.fields.lti_message_hint ?? '',
    state: 'state-1',
    nonce: 'nonce-1',
  };
  return { login, request };
};

const authorize = (cookie: string, request: Record<string, string>) =>
  page(`/authorize?${new URLSearchParams(request)}`, cookie);

const without = (fields: Record<string, string>, name: string) =>
  Object.fromEntries(Object.entries(fields).filter(([key]) => key !== name));

const verified = async (idToken: string) => {
  const keys = (await (await fetch(`${school.origin}/keys`)).json()) as JSONWebKeySet;
  const { payload } = await jwtVerify(idToken, createLocalJWKSet(keys));
  return payload as Record<string, unknown>;
};

const launched = async (cookie: string, path?: string) => {
  const { request } = await begin(cookie, path);
  return verified(formIn((await authorize(cookie, request)).text).fields.id_token ?? '');
};

/** Names and kinds of all that is in a value, whatever it says. */
const shape = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(shape).slice(0, 1);
  if (typeof value !== 'object' || value === null) return typeof value;
  const entries = Object.entries(value).map(([key, inner]) => [key, shape(inner)]);
  return Object.fromEntries(entries);
};

/** Ours to choose (custom), or a service that this school does not offer and so does not name (LTI 1.1 outcomes). */
const OWN = ['https://purl.imsglobal.org/spec/lti/claim/custom'];
const NOT_OFFERED = ['https://purl.imsglobal.org/spec/lti-bo/claim/basicoutcome'];

const comparable = (claims: Record<string, unknown>) =>
  Object.fromEntries(
    Object.entries(claims)
      .filter(([name]) => !NOT_OFFERED.includes(name))
      .map(([name, value]) => [name, OWN.includes(name) ? 'ours' : shape(value)]),
  );

describe('login initiation', () => {
  it('posts the fields that a real platform posts', async () => {
    const { login } = await begin(await school.signIn('4'));
    const { resource_link_launch } = recorded('login-initiation');
    expect(login.action).toBe(`${TOOL}/lti/login`);
    expect(Object.keys(login.fields).sort()).toEqual(
      Object.keys(resource_link_launch.form_fields).sort(),
    );
    expect(login.fields).toMatchObject({ login_hint: '4', lti_deployment_id: '1' });
  });

  it('asks who one is first', async () => {
    const answer = await fetch(`${school.origin}/launch/1`, { redirect: 'manual' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/']);
  });
});

describe('the message', () => {
  it.each([
    ['launch-student', '4', '/launch/1'],
    ['launch-teacher', '3', '/launch/1'],
    ['launch-ungraded-student', '5', '/launch/2'],
    ['launch-student-new-window', '6', '/launch/1?target=window'],
  ])('has the claims of the recorded %s', async (name, person, path) => {
    const claims = await launched(await school.signIn(person), path);
    expect(comparable(claims)).toEqual(comparable(recorded(name).claims));
  });

  it('has the claims of a recorded review, for one child and for the column', async () => {
    const { cases } = recorded('launch-submission-review');
    const cookie = await school.signIn('3');
    const one = await launched(cookie, '/launch/1?review=4');
    expect(comparable(one)).toEqual(comparable(cases[0].claims));
    const column = await launched(cookie, '/launch/1?review=');
    expect(comparable(column)).toEqual(comparable(cases[1].claims));
  });

  it('lives 60 seconds, is signed RS256 with a key id, and comes with the state', async () => {
    const cookie = await school.signIn('4');
    const { request } = await begin(cookie);
    const { action, fields } = formIn((await authorize(cookie, request)).text);
    const claims = await verified(fields.id_token ?? '');
    expect(action).toBe(`${TOOL}/lti/launch`);
    expect(Object.keys(fields).sort()).toEqual(['id_token', 'state']);
    expect(fields.state).toBe('state-1');
    expect(decodeProtectedHeader(fields.id_token ?? '')).toMatchObject({
      typ: 'JWT',
      alg: 'RS256',
    });
    expect(Number(claims.exp) - Number(claims.iat)).toBe(60);
    expect(claims).toMatchObject({ nonce: 'nonce-1', sub: '4', aud: 'tool-client' });
  });

  it('names the way the activity was opened', async () => {
    const presentation = 'https://purl.imsglobal.org/spec/lti/claim/launch_presentation';
    const cookie = await school.signIn('4');
    const framed = (await launched(cookie))[presentation];
    const alone = (await launched(cookie, '/launch/1?target=window'))[presentation];
    expect([framed, alone]).toMatchObject([
      { document_target: 'iframe' },
      { document_target: 'window' },
    ]);
  });

  it('names no line item once the link has two', async () => {
    const other = await openTestSchool();
    const token = await other.token('https://purl.imsglobal.org/spec/lti-ags/scope/lineitem');
    const type = 'application/vnd.ims.lis.v2.lineitem+json';
    await fetch(`${other.origin}/services/2/lineitems?tool=1`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': type, accept: type },
      body: JSON.stringify({ label: 'Second', scoreMaximum: 5, resourceLinkId: '1' }),
    });
    const saved = school;
    school = other;
    const claims = await launched(await other.signIn('4'));
    school = saved;
    await other.close();
    const endpoint = claims['https://purl.imsglobal.org/spec/lti-ags/claim/endpoint'];
    expect(endpoint).toHaveProperty('lineitems');
    expect(endpoint).not.toHaveProperty('lineitem');
  });
});

describe('a request that a real platform refuses', () => {
  const CHANGES: Record<string, (request: Record<string, string>) => Record<string, string>> = {
    'prompt=login': (request) => ({ ...request, prompt: 'login' }),
    'response_mode=fragment': (request) => ({ ...request, response_mode: 'fragment' }),
    'no response_mode': (request) => without(request, 'response_mode'),
    'login_hint of another user': (request) => ({ ...request, login_hint: '5' }),
    'client_id of another tool': (request) => ({ ...request, client_id: 'other' }),
  };

  it.each(recorded('launch-error').cases as { case: string; form_fields: object }[])(
    'by a message to the tool: $case',
    async ({ case: name, form_fields }) => {
      const cookie = await school.signIn('4');
      const { request } = await begin(cookie);
      const { fields } = formIn((await authorize(cookie, CHANGES[name]?.(request) ?? {})).text);
      expect(fields).toEqual({ ...form_fields, state: 'state-1' });
    },
  );

  it.each([
    ['redirect_uri', `${TOOL}/lti/launch/`],
    ['redirect_uri', `${TOOL}/lti/launch?x=1`],
    ['scope', 'openid profile'],
    ['lti_message_hint', ''],
    ['nonce', ''],
  ])('by a page of its own: %s = "%s"', async (name, value) => {
    const cookie = await school.signIn('4');
    const { request } = await begin(cookie);
    const answer = await authorize(cookie, { ...request, [name]: value });
    expect(answer.status).toBe(400);
    expect(formIn(answer.text).fields).not.toHaveProperty('id_token');
  });

  it('by a page of its own: the same request a second time', async () => {
    const cookie = await school.signIn('4');
    const { request } = await begin(cookie);
    expect((await authorize(cookie, request)).status).toBe(200);
    expect((await authorize(cookie, request)).status).toBe(400);
  });

  it('by a page of its own: a launch that another session began', async () => {
    const { request } = await begin(await school.signIn('4'));
    expect((await authorize(await school.signIn('4'), request)).status).toBe(400);
  });
});

describe('a request that comes without the cookie of the school', () => {
  it('is posted to the school by the school once, and then goes on', async () => {
    const cookie = await school.signIn('4');
    const { request } = await begin(cookie);
    const between = formIn((await authorize('', request)).text);
    expect(between.action).toBe('/authorize');
    const body = new URLSearchParams(between.fields);
    const answer = await page('/authorize', cookie, { method: 'POST', body });
    expect(formIn(answer.text).fields).toHaveProperty('id_token');
  });

  it('is refused the second time: nobody is signed in', async () => {
    const { request } = await begin(await school.signIn('4'));
    expect((await authorize('', { ...request, again: '1' })).status).toBe(403);
  });
});
