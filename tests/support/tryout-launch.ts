import { formIn } from './tryout-school.ts';

const cookiesOf = (answer: Response): string =>
  answer.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0])
    .join('; ');

/** What a browser says of a form that another site's page posts into a window. */
const FROM_PLATFORM = { 'sec-fetch-site': 'cross-site', 'sec-fetch-dest': 'document' };

const post = (url: string, fields: Record<string, string>, cookie: string): Promise<Response> =>
  fetch(url, {
    method: 'POST',
    redirect: 'manual',
    headers: { ...FROM_PLATFORM, cookie },
    body: new URLSearchParams(fields),
  });

const block = <T>(page: string, id: string): T =>
  JSON.parse(new RegExp(`id="${id}">([^<]*)<`).exec(page)?.[1] ?? 'null') as T;

/** A launch as a browser does it, by HTTP alone: from a person's click in the school to the tool's session. */
export const launchByHttp = async (
  { school, tool }: { school: string; tool: string },
  person: string,
  activity: string,
): Promise<{ token: string; view: string }> => {
  const cookie = cookiesOf(await post(`${school}/enter`, { person, back: '/course' }, ''));
  const begin = await fetch(`${school}/launch/${activity}`, { headers: { cookie } });
  const login = formIn(await begin.text());
  const between = await post(login.action, login.fields, '');
  const proof = cookiesOf(between);
  const next = between.headers.get('location') ?? '';
  const signed = formIn(await (await fetch(next, { headers: { cookie } })).text());
  const launch = await post(signed.action, signed.fields, proof);
  const { code } = block<{ code: string }>(await launch.text(), 'boot');
  const confirmed = await fetch(`${tool}/lti/launch/confirm`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', cookie: proof },
    body: JSON.stringify({ code }),
  });
  return (await confirmed.json()) as { token: string; view: string };
};
