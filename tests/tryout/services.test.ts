import { generateKeyPair } from 'jose';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newSigningKey } from '../../deploy/tryout/school/keys.ts';
import { openTestSchool, recorded, type TestSchool } from '../support/tryout-school.ts';

const AGS = 'https://purl.imsglobal.org/spec/lti-ags/scope';
const ROSTER = 'https://purl.imsglobal.org/spec/lti-nrps/scope/contextmembership.readonly';
const ALL = `${AGS}/lineitem ${AGS}/score ${AGS}/result.readonly ${ROSTER}`;

let school: TestSchool;
beforeAll(async () => {
  school = await openTestSchool();
});
afterAll(() => school.close());

interface Exchange {
  case?: string;
  request: { method: string; url: string; headers: Record<string, string>; body: unknown };
  response: { status: number; headers: Record<string, string>; body: unknown };
}

const exchanges = (name: string): Exchange[] => {
  const { main, variants } = recorded(name);
  return [main, ...variants];
};

const get = async (path: string, scope: string, accept?: string) => {
  const answer = await fetch(`${school.origin}${path}`, {
    headers: {
      authorization: `Bearer ${await school.token(scope)}`,
      ...(accept === undefined ? {} : { accept }),
    },
  });
  return {
    status: answer.status,
    type: answer.headers.get('content-type'),
    text: await answer.text(),
  };
};

describe('tokens', () => {
  const asked = (name: string): Exchange =>
    exchanges('token-response').find((one) => one.case === name)!;
  const scopeOf = ({ request }: Exchange): string =>
    (request.body as { 'form fields': { scope: string } })['form fields'].scope;

  it.each(exchanges('token-response').map((one) => [one.case ?? '', one] as const))(
    'are given or refused as recorded: %s',
    async (name, one) => {
      const key = name === 'token unknown kid' ? await newSigningKey() : undefined;
      const audience =
        name === 'token aud wrong' ? 'https://other.example' : `${school.origin}/token`;
      const assertion = await school.assertion({ aud: audience }, key);
      const answer = await school.askToken(scopeOf(one), assertion);
      const text = await answer.text();
      expect(answer.status).toBe(one.response.status);
      expect(answer.headers.get('content-type')).toBe(one.response.headers['content-type']);
      if (typeof one.response.body === 'string') return expect(text).toBe(one.response.body);
      const body = JSON.parse(text);
      expect(Object.keys(body)).toEqual(Object.keys(one.response.body as object));
      if (answer.status === 200) {
        const { scope } = one.response.body as { scope: string };
        expect(body).toMatchObject({ scope, token_type: 'Bearer', expires_in: 3600 });
      }
    },
  );

  it('are given to the school itself for the asking, for what was asked', async () => {
    const asked = await school.control('POST', '/token', { scopes: [ROSTER] });
    const { access_token } = (await asked.json()) as { access_token: string };
    const read = (path: string) =>
      fetch(school.origin + path, { headers: { authorization: `Bearer ${access_token}` } });
    expect((await read('/services/CourseSection/2/bindings/1/memberships')).status).toBe(200);
    expect((await read('/services/2/lineitems/1/lineitem/results?tool=1')).status).toBe(401);
  });

  it('are refused to another client, for an old assertion and for another algorithm', async () => {
    const scope = scopeOf(asked('token lineitem.readonly only'));
    const past = Math.floor(Date.now() / 1000) - 3600;
    const wrong = [
      await school.assertion({ iss: 'other', sub: 'other' }),
      await school.assertion({ iat: past, exp: past + 60 }),
      'no.token.atall',
    ];
    for (const assertion of wrong) {
      expect((await school.askToken(scope, assertion)).status).toBe(400);
    }
  });

  it('are refused when the key is another with the same id', async () => {
    const { exportJWK } = await import('jose');
    const { privateKey } = await generateKeyPair('RS256', { extractable: true });
    const own = JSON.parse(atob((await school.assertion()).split('.')[0] ?? ''));
    const key = { ...(await exportJWK(privateKey)), kid: own.kid, alg: 'RS256' };
    const assertion = await school.assertion({}, key);
    expect((await school.askToken(`${AGS}/score`, assertion)).status).toBe(400);
  });
});

describe('line items', () => {
  const scopeFor = (name = '') =>
    name.includes('score-only') ? `${AGS}/score` : `${AGS}/lineitem.readonly`;
  const local = (url: string) =>
    url
      .replace(/^.*services\.php\//, '/services/')
      .replace('/lineitems/2/', '/lineitems/1/')
      .replace('type_id', 'tool');

  it.each(
    [
      ...exchanges('lineitem-get').filter((one) => !one.case?.includes('bad token')),
      // The broken Link header of a limit is not imitated: a container of this school is never long.
      ...exchanges('lineitems-get').filter((one) => !one.case?.includes('limit')),
    ].map((one) => [one.case ?? 'main', one] as const),
  )('are answered as recorded: %s', async (name, one) => {
    const answer = await get(local(one.request.url), scopeFor(name), one.request.headers.accept);
    expect(answer.status).toBe(one.response.status);
    expect(answer.type).toBe(one.response.headers['content-type']);
    if (answer.status >= 400) {
      const { reason } = one.response.body as { reason: string };
      expect(JSON.parse(answer.text).reason).toBe(reason);
    }
  });

  it('have the members of the recorded ones', async () => {
    const type = 'application/vnd.ims.lis.v2.lineitemcontainer+json';
    const items = JSON.parse(
      (await get('/services/2/lineitems?tool=1', `${AGS}/lineitem`, type)).text,
    );
    expect(items).toEqual([
      {
        id: `${school.origin}/services/2/lineitems/1/lineitem?tool=1`,
        label: 'Assessed',
        scoreMaximum: 10,
        resourceId: 'act-a1',
        resourceLinkId: '1',
        ltiLinkId: '1',
      },
    ]);
  });

  it('are refused without a token that this school gave', async () => {
    const answer = await fetch(`${school.origin}/services/2/lineitems/1/lineitem?tool=1`, {
      headers: { authorization: 'Bearer made-up' },
    });
    expect(answer.status).toBe(401);
  });

  it('are made, replaced and removed as recorded', async () => {
    const token = await school.token(`${AGS}/lineitem`);
    const made = new Map<string, string>();
    const [create, , replace, , remove] =
      recorded('lineitem-create-update-delete').variants ??
      recorded('lineitem-create-update-delete').cases;
    for (const one of [create, replace, remove] as Exchange[]) {
      const address = made.get('id') ?? `${school.origin}/services/2/lineitems?tool=1`;
      const { authorization: _, ...headers } = one.request.headers;
      const answer = await fetch(address, {
        method: one.request.method,
        headers: { ...headers, authorization: `Bearer ${token}` },
        ...(one.request.body === null ? {} : { body: JSON.stringify(one.request.body) }),
      });
      expect(answer.status).toBe(one.response.status);
      expect(answer.headers.get('content-type')).toBe(one.response.headers['content-type']);
      if (answer.status === 204) continue;
      const body = (await answer.json()) as { id: string };
      expect(body).toEqual({ ...(one.request.body as object), id: body.id });
      made.set('id', body.id);
    }
  });
});

describe('results', () => {
  const path = '/services/2/lineitems/1/lineitem/results?tool=1';
  const scope = `${AGS}/result.readonly`;

  it('hold final marks as recorded, the set-by-hand ones too, and leave out who has none', async () => {
    await school.control('PUT', '/grade', {
      lineItem: '1',
      userId: '4',
      mark: 9,
      comment: 'Said.',
    });
    await school.control('PUT', '/grade', { lineItem: '1', userId: '5', locked: false });
    const rows = JSON.parse((await get(path, scope)).text);
    const after = exchanges('results-get').find(
      (one) => one.case === 'results GET after override',
    )!;
    const row = (after.response.body as { comment?: string }[]).find(({ comment }) => comment);
    expect(rows).toHaveLength(1);
    expect(Object.keys(rows[0])).toEqual(Object.keys(row ?? {}));
    expect(rows[0]).toMatchObject({
      userId: '4',
      resultScore: 9,
      resultMaximum: 10,
      comment: 'Said.',
    });
    expect(rows[0].timestamp).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\+00:00$/);
  });

  it.each([
    ['', 200],
    ['&user_id=4', 200],
    ['&limit=1', 404],
  ])('are answered as recorded for "%s"', async (query, status) => {
    const answer = await get(`${path}${query}`, scope);
    expect(answer.status).toBe(status);
    const type = status === 200 ? 'application/vnd.ims.lis.v2.resultcontainer+json' : 'text/html';
    expect(answer.type).toBe(`${type}; charset=utf-8`);
  });
});

describe('the roster', () => {
  const path = '/services/CourseSection/2/bindings/1/memberships';

  it('lists people with the members and short roles of the recorded one', async () => {
    const answer = await get(path, ROSTER);
    const { members } = JSON.parse(answer.text);
    const [first] = recorded('nrps').main.response.body.members;
    expect(members).toHaveLength(7);
    expect(members.map(({ roles }: { roles: string[] }) => roles.join())).toContain('Instructor');
    for (const member of members) expect(Object.keys(member)).toEqual(Object.keys(first));
  });

  it('goes page by page when asked with a limit', async () => {
    let next: string | undefined = `${school.origin}${path}?limit=3`;
    const seen: string[] = [];
    while (next) {
      const answer: Response = await fetch(next, {
        headers: { authorization: `Bearer ${await school.token(ALL)}` },
      });
      const { members } = (await answer.json()) as { members: { user_id: string }[] };
      seen.push(...members.map(({ user_id }) => user_id));
      next = /<(.+)>; rel="next"/.exec(answer.headers.get('link') ?? '')?.[1];
    }
    expect(seen).toEqual(['3', '4', '5', '6', '7', '8', '9']);
  });

  it('needs its scope', async () => {
    expect((await get(path, `${AGS}/score`)).status).toBe(401);
  });
});
