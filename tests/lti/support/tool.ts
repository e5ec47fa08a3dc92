import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import express from 'express';
import type { Connection } from 'mongoose';
import { httpServer } from '../../../server/http.ts';
import { createLog } from '../../../server/log.ts';
import { createLti, type Lti } from '../../../server/lti/index.ts';
import type { VerifiedLaunch } from '../../../server/lti/launch.ts';
import { createOutbound } from '../../../server/lti/outbound.ts';
import type { Registration } from '../../../server/platforms/registration.ts';
import { type Platforms, platformStore } from '../../../server/platforms/store.ts';
import { type Claims, LTI, recordedClaims, type TestPlatform } from '../../support/platform.ts';

/** The tool's address in the recorded messages. */
export const TOOL_URL = 'https://placeweave.example';
export const SECRET = 'a secret of at least thirty-two characters';

export interface LogLine {
  code?: string;
  registration?: string | null;
  [key: string]: unknown;
}

export interface Tool {
  lti: Lti;
  platforms: Platforms;
  /** Launches that became sessions. */
  admitted: VerifiedLaunch[];
  lines: LogLine[];
  /** Whether the disk is said to have room. */
  disk: { room: boolean };
  /** All that was logged, as text. */
  logged(): string;
  fetch(path: string, init?: RequestInit): Promise<Response>;
  register(platform: TestPlatform, more?: Partial<Registration>): Promise<Registration>;
  close(): Promise<void>;
}

/** The launch part of the server on a free port, with the pages reduced to their data and sessions that only count. */
export async function openTool(
  connection: Connection,
  admit: (launch: VerifiedLaunch) => Promise<void> = async () => {},
): Promise<Tool> {
  const admitted: VerifiedLaunch[] = [];
  const lines: LogLine[] = [];
  const disk = { room: true };
  const outbound = createOutbound({ production: false });
  const pages = testPages();
  const platforms = platformStore(connection);
  const lti = await createLti({
    url: TOOL_URL,
    secret: SECRET,
    connection,
    platforms,
    outbound,
    pages,
    hasRoom: () => disk.room,
    log: createLog('debug', { write: (line) => lines.push(JSON.parse(line)) }),
    admit: async (launch) => {
      admitted.push(launch);
      await admit(launch);
      const value = { token: `session-${admitted.length}`, expiresIn: 3600, view: 'work' };
      return { ok: true, value };
    },
  });
  const app = express();
  app.set('trust proxy', 'loopback');
  app.use(lti.router);
  const server = httpServer(app).listen(0, '127.0.0.1');
  await new Promise((done) => server.once('listening', done));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    lti,
    platforms,
    admitted,
    lines,
    disk,
    logged: () => lines.map((line) => JSON.stringify(line)).join('\n'),
    fetch: (path, init) => fetch(origin + path, { redirect: 'manual', ...init }),
    async register(platform, more = {}) {
      const { issuer, clientId, jwksUrl, tokenUrl } = platform;
      await platforms.save(platform, {
        name: 'Harbour Lane School',
        authUrl: `${issuer}/mod/lti/auth.php`,
        deployments: ['1'],
        kid: `kid of ${issuer} ${clientId}`,
        ...{ jwksUrl, tokenUrl, ...more },
      });
      const [made] = await platforms.byIssuer(issuer, clientId);
      if (made === undefined) throw new Error('not registered');
      return made;
    },
    async close() {
      await new Promise((done) => {
        server.close(done);
        server.closeAllConnections();
      });
      await outbound.close();
      rmSync(pages, { recursive: true });
    },
  };
}

function testPages(): string {
  const folder = mkdtempSync(join(tmpdir(), 'pages-'));
  mkdirSync(join(folder, '.vite'));
  writeFileSync(join(folder, 'index.html'), '<main></main><!--boot-->');
  const manifest = { 'launch/login.ts': { file: 'assets/login-0.js' } };
  writeFileSync(join(folder, '.vite', 'manifest.json'), JSON.stringify(manifest));
  return folder;
}

/** A login as the browser and the platform see it. */
export interface Visit {
  state: string;
  nonce: string;
  /** The browser's cookies. */
  cookie: string;
  authorize: URL;
  response: Response;
}

/** What the platform posts to begin (recorded: login-initiation.json). */
export function initiation({ issuer, clientId }: TestPlatform): Record<string, string> {
  return {
    iss: issuer,
    target_link_uri: `${TOOL_URL}/launch`,
    login_hint: '4',
    lti_message_hint: '{"cmid":2,"launchid":"ltilaunch1_1363927072"}',
    client_id: clientId,
    lti_deployment_id: '1',
  };
}

/** Headers that a browser adds in the platform's frame with cookies allowed. */
const IN_FRAME = {
  'sec-fetch-site': 'cross-site',
  'sec-fetch-dest': 'iframe',
  'sec-fetch-storage-access': 'active',
};

export function post(form: Record<string, string>, headers: Record<string, string> = {}) {
  return { method: 'POST', body: new URLSearchParams(form), headers };
}

export async function login(tool: Tool, platform: TestPlatform): Promise<Visit> {
  const response = await tool.fetch('/lti/login', post(initiation(platform), IN_FRAME));
  const authorize = new URL(response.headers.get('location') ?? '');
  return {
    state: authorize.searchParams.get('state') ?? '',
    nonce: authorize.searchParams.get('nonce') ?? '',
    cookie: response.headers.getSetCookie()[0]?.split(';')[0] ?? '',
    authorize,
    response,
  };
}

/** Recorded claims, made fit for this login at this moment. `undefined` takes a claim away. */
export function claimsFor(
  { issuer, clientId }: TestPlatform,
  { nonce }: Visit,
  changes: Claims = {},
  recorded = recordedClaims('launch-student'),
): Claims {
  const now = Math.floor(Date.now() / 1000);
  const own = { iss: issuer, aud: clientId, nonce, iat: now, exp: now + 60 };
  const claims = { ...recorded, [`${LTI}/version`]: '1.3.0', ...own, ...changes };
  return Object.fromEntries(Object.entries(claims).filter(([, value]) => value !== undefined));
}

/** The page that a launch was answered with. */
export interface Landing {
  status: number;
  html: string;
  headers: Headers;
  /** The boot block, if it holds one. */
  boot: { code: string; proofKey: string; storage: unknown } | null;
  /** The code on a refusal page, if it is one. */
  refused: string | null;
}

export async function launch(
  tool: Tool,
  form: Record<string, string>,
  headers: Record<string, string> = {},
): Promise<Landing> {
  return landing(await tool.fetch('/lti/launch', post(form, headers)));
}

export async function landing(response: Response): Promise<Landing> {
  const html = await response.text();
  const boot = /<script type="application\/json" id="boot">(.*)<\/script>/.exec(html)?.[1];
  return {
    status: response.status,
    html,
    headers: response.headers,
    boot: boot === undefined ? null : JSON.parse(boot),
    refused: /<code>(\w+)<\/code>/.exec(html)?.[1] ?? null,
  };
}

/** A whole good launch with these changes of the claims, up to the page it lands on. */
export async function arrive(
  tool: Tool,
  platform: TestPlatform,
  changes: Claims = {},
  recorded?: Claims,
): Promise<{ visit: Visit; page: Landing }> {
  const visit = await login(tool, platform);
  const claims = claimsFor(platform, visit, changes, recorded);
  const token = await platform.sign(claims);
  return { visit, page: await launch(tool, { id_token: token, state: visit.state }) };
}

/** What the page asks of the server once it is there. */
export function confirm(
  tool: Tool,
  body: object,
  { cookie }: Partial<Visit> = {},
): Promise<Response> {
  return tool.fetch('/lti/launch/confirm', {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(cookie && { cookie }) },
    body: JSON.stringify(body),
  });
}
