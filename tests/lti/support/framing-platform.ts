import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { LTI, recordedClaims, type TestPlatform } from '../../support/platform.ts';

/** The platform's pages in a browser: a course page with the activity in a frame, and the sign-in behind it. */
export interface FramingPlatform {
  origin: string;
  /** Fields added to the login, such as `lti_storage_target`. */
  extra: Record<string, string>;
  close(): Promise<void>;
}

const escaped = (text: string) => text.replaceAll('&', '&amp;').replaceAll('"', '&quot;');

/** A page that posts a form at once. */
const posting = (action: string, fields: Record<string, string>, more = '') =>
  `<!doctype html><form method="post" action="${action}" ${more}>${Object.entries(fields)
    .map(([name, value]) => `<input type="hidden" name="${name}" value="${escaped(value)}">`)
    .join('')}</form><script>document.forms[0].submit()</script>`;

/** Keeps what it is asked to keep, as "LTI postMessage Storage" 0.1 describes. */
const STORAGE = `<script>
const kept = {};
addEventListener('message', ({ data, source, origin }) => {
  const { subject, key, message_id } = data;
  if (subject === 'lti.put_data') kept[key] = data.value;
  source.postMessage({ subject: subject + '.response', message_id, key, value: kept[key] }, origin);
});
</script>`;

export async function openFramingPlatform(
  platform: () => TestPlatform,
  tool: () => string,
): Promise<FramingPlatform> {
  const course = (origin: string, target: string) =>
    STORAGE +
    (target === 'frame' ? '<iframe name="activity" width="800" height="600"></iframe>' : '') +
    posting(
      `${tool()}/lti/login`,
      {
        ...{ iss: origin, client_id: platform().clientId, login_hint: '4', lti_message_hint: '{}' },
        ...{ target_link_uri: `${tool()}/lti/launch`, ...framing.extra },
      },
      target === 'frame' ? 'target="activity"' : '',
    );

  async function authorize(address: URL, origin: string): Promise<string> {
    const asked = Object.fromEntries(address.searchParams);
    const now = Math.floor(Date.now() / 1000);
    const token = await platform().sign({
      ...recordedClaims('launch-student'),
      ...{ iss: origin, aud: asked.client_id, nonce: asked.nonce, iat: now, exp: now + 60 },
      [`${LTI}/target_link_uri`]: `${tool()}/lti/launch`,
      [`${LTI}/tool_platform`]: { product_family_code: 'tryout' },
    });
    return posting(asked.redirect_uri ?? '', { id_token: token, state: asked.state ?? '' });
  }

  const server: Server = createServer(async (request, response) => {
    const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const address = new URL(request.url ?? '/', origin);
    response.setHeader('content-type', 'text/html');
    const page =
      address.pathname === '/auth'
        ? await authorize(address, origin)
        : course(origin, address.pathname.slice(1));
    response.end(page);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const framing: FramingPlatform = {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    extra: {},
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
  return framing;
}
