import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { JWK } from 'jose';
import { createApp } from '../../deploy/tryout/school/app.ts';
import { newSigningKey, publicKeySet, sign } from '../../deploy/tryout/school/keys.ts';
import { openSchool } from '../../deploy/tryout/school/school.ts';
import type { ActivitySettings, Settings } from '../../deploy/tryout/school/settings.ts';

/** A message as it was recorded at a real platform. */
export const recorded = (name: string) =>
  JSON.parse(
    readFileSync(new URL(`../golden/platform-messages/${name}.json`, import.meta.url), 'utf8'),
  );

const listen = async (server: Server): Promise<string> => {
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
};

const close = (server: Server): Promise<void> =>
  new Promise((done) => {
    server.close(() => done());
    server.closeAllConnections();
  });

/** The fields of a page's form that posts itself, and where it goes. */
export const formIn = (page: string) => {
  const plain = (text: string) =>
    text.replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('&amp;', '&');
  const fields = [...page.matchAll(/name="([^"]*)" value="([^"]*)"/g)].map(
    ([, name = '', value = '']) => [name, plain(value)] as const,
  );
  const action = plain(/action="([^"]*)"/.exec(page)?.[1] ?? '');
  return { action, fields: Object.fromEntries(fields) as Record<string, string> };
};

const ACTIVITIES: ActivitySettings[] = [
  { title: 'Assessed', description: 'Two problems.', points: 10, custom: { activity: 'act-a1' } },
  { title: 'Practice', description: 'One problem.', points: null, custom: { activity: 'act-n1' } },
];

export const TOOL = 'http://localhost:4600';

interface Options {
  /** The tool's origin when there is a real one; else the school gets a key set such as a tool publishes. */
  tool?: string;
  /** Asked for once the school's origin is known. */
  activities?: (origin: string) => Promise<ActivitySettings[]>;
}

// Made once for a test file: a key pair takes its time.
let toolKey: JWK | undefined;

/** The school, served in this process on a free port. */
export const openTestSchool = async ({ tool = TOOL, activities }: Options = {}) => {
  const folder = await mkdtemp(join(tmpdir(), 'school-'));
  toolKey ??= await newSigningKey();
  const key = toolKey;
  const keys = createServer((_request, response) => {
    response.setHeader('Content-Type', 'application/json');
    response.end(JSON.stringify(publicKeySet(key)));
  });
  const ownKeys = `${await listen(keys)}/keys`;
  const server = createServer();
  const origin = await listen(server);
  const settings: Settings = {
    origin,
    issuer: origin,
    tool: {
      clientId: 'tool-client',
      deploymentId: '1',
      loginUrl: `${tool}/lti/login`,
      redirectUris: [`${tool}/lti/launch`],
      targetLinkUri: `${tool}/lti/launch`,
      keySetUrl: tool === TOOL ? ownKeys : `${tool}/lti/keys`,
    },
    activities: (await activities?.(origin)) ?? ACTIVITIES,
  };
  const file = join(folder, 'school.json');
  server.on('request', createApp(await openSchool(settings, file)));

  const assertion = (claims: object = {}, signer = key) => {
    const iat = Math.floor(Date.now() / 1000);
    const { clientId } = settings.tool;
    const own = { iss: clientId, sub: clientId, aud: `${origin}/token`, iat, exp: iat + 60 };
    return sign(signer, { ...own, jti: crypto.randomUUID(), ...claims });
  };
  const askToken = async (scope: string, client_assertion?: string) =>
    fetch(`${origin}/token`, {
      method: 'POST',
      body: new URLSearchParams({
        grant_type: 'client_credentials',
        client_assertion_type: 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer',
        client_assertion: client_assertion ?? (await assertion()),
        scope,
      }),
    });
  const token = async (scope: string): Promise<string> =>
    (JSON.parse(await (await askToken(scope)).text()) as { access_token: string }).access_token;
  const signIn = async (person: string): Promise<string> => {
    const answer = await fetch(`${origin}/enter`, {
      method: 'POST',
      redirect: 'manual',
      body: new URLSearchParams({ person, back: '/course' }),
    });
    return answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  };
  const control = async (method: string, path: string, body: object = {}) =>
    fetch(`${origin}/control${path}`, {
      method,
      headers: { 'Content-Type': 'application/json' },
      ...(method === 'GET' ? {} : { body: JSON.stringify(body) }),
    });
  return {
    origin,
    settings,
    file,
    assertion,
    askToken,
    token,
    signIn,
    control,
    async close() {
      await Promise.all([close(server), close(keys)]);
      await rm(folder, { recursive: true, force: true });
    },
  };
};

export type TestSchool = Awaited<ReturnType<typeof openTestSchool>>;
