import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createGrades, type ServiceToken } from '../../server/lti/grades.ts';
import { underLineItem, withParameter } from '../../server/lti/grades-address.ts';
import { scoreAnswer } from '../../server/lti/grades-answers.ts';
import type { Outbound, OutboundAnswer, OutboundRequest } from '../../server/lti/outbound.ts';
import { START, tokens } from './bench.ts';

interface Recorded {
  case: string;
  request: { method: string; url: string; headers: Record<string, string>; body: never };
  response: { status: number; headers: Record<string, string>; body: unknown };
}

/** Recorded at Moodle 4.5.6; the file names its source. */
const golden = (name: string) =>
  JSON.parse(
    readFileSync(new URL(`../golden/platform-messages/${name}.json`, import.meta.url), 'utf8'),
  );
const SCORES: Recorded[] = golden('score-post').cases;

const answered = ({ status, headers, body }: Recorded['response']): OutboundAnswer => ({
  ...{ status, headers },
  body: typeof body === 'string' ? body : JSON.stringify(body),
});

/** A platform that gives these answers in turn. */
function platform(answers: readonly OutboundAnswer[], token: ServiceToken = tokens().token) {
  const left = [...answers];
  const sent: OutboundRequest[] = [];
  const outbound: Outbound = {
    async send(request) {
      sent.push(request);
      const next = left.shift();
      return next === undefined
        ? { ok: false, fault: { code: 'broken', at: 'url' } }
        : { ok: true, value: next };
    },
    async close() {},
  };
  return { grades: createGrades(outbound, token, () => START), sent };
}

const ITEM = 'https://moodle.example/mod/lti/services.php/2/lineitems/2/lineitem?type_id=1';
const BODY = {
  ...{ userId: '5', scoreGiven: 7.5, scoreMaximum: 10, comment: 'Well placed.' },
  timestamp: '2026-11-24T23:43:39.190Z',
  ...({ activityProgress: 'Completed', gradingProgress: 'FullyGraded' } as const),
};

describe('addresses', () => {
  it('take the service before the query', () => {
    const { request } = SCORES[0] ?? {};
    expect(underLineItem(ITEM, 'scores')).toBe(request?.url);
    expect(underLineItem(ITEM, 'results')).toBe(golden('results-get').main.request.url);
  });

  it('without a query, or with a slash at the end, work as well', () => {
    expect(underLineItem('https://x.example/item/7', 'scores')).toBe(
      'https://x.example/item/7/scores',
    );
    expect(underLineItem('https://x.example/item/7/', 'scores')).toBe(
      'https://x.example/item/7/scores',
    );
  });

  it('keep the parameters they have', () => {
    expect(withParameter(ITEM, 'user_id', 'a b&c')).toBe(`${ITEM}&user_id=a+b%26c`);
  });
});

describe('a score', () => {
  it('goes out as the recorded one that was taken', async () => {
    const taken = SCORES.find((one) => one.case === 'FullyGraded 7.5/10 with comment');
    if (taken === undefined) throw new Error('the recorded case is gone');
    const { grades, sent } = platform([answered(taken.response)]);
    const { answer } = await grades.postScore('school', ITEM, BODY, false);
    expect(answer).toEqual({ kind: 'accepted', status: 200 });
    const [post] = sent;
    expect(post).toMatchObject({ method: 'POST', url: taken.request.url });
    expect(post?.headers?.['content-type']).toBe(taken.request.headers['content-type']);
    expect(JSON.parse(post?.body ?? '')).toEqual(taken.request.body);
  });

  /** What each recorded answer means; the cases that send what we never send are left out. */
  it.each([
    ['FullyGraded 7.5/10 with comment', { kind: 'accepted' }],
    ['same timestamp again', { kind: 'older' }],
    ['same second, later ms', { kind: 'older' }],
    ['earlier timestamp', { kind: 'older' }],
    ['zero', { kind: 'accepted' }],
    ['teacher', { kind: 'refused', reason: 'notGradable' }],
    ['unknown user', { kind: 'refused', reason: 'notGradable' }],
    ['admin (not enrolled)', { kind: 'refused', reason: 'notGradable' }],
    ['now after future', { kind: 'older' }],
    ['content-type application/json', { kind: 'refused', reason: 'refused' }],
    ['wrong url (naive append after query)', { kind: 'refused', reason: 'refused' }],
    ['after teacher override to 9 (post 4)', { kind: 'accepted' }],
    [
      'after grade lock of one student (post 4)',
      { kind: 'later', reason: 'failing', doubtful: true },
    ],
    ['after lock of the whole item (post 3)', { kind: 'later', reason: 'failing', doubtful: true }],
    ['suspended student', { kind: 'accepted' }],
    ['unenrolled student', { kind: 'refused', reason: 'notGradable' }],
  ] as const)('recorded "%s"', (name, meaning) => {
    const one = SCORES.find((recorded) => recorded.case === name);
    if (one === undefined) throw new Error(`no recorded case "${name}"`);
    const sent = { ok: true, value: answered(one.response) } as const;
    expect(scoreAnswer(sent, true, START)).toMatchObject(meaning);
  });

  it.each([
    ['120', 120_000],
    ['0', 0],
    ['99999999', 86_400_000],
    [new Date(START + 60_000).toUTCString(), 59_750],
    [new Date(START - 60_000).toUTCString(), 0],
    ['soon', null],
  ])('is asked to wait: Retry-After %s', (header, retryAfter) => {
    const value = { status: 429, headers: { 'retry-after': header }, body: '' };
    expect(scoreAnswer({ ok: true, value }, true, START)).toMatchObject({
      ...{ kind: 'later', reason: 'busy', retryAfter, doubtful: false },
    });
  });

  it("tells the platform's clock", async () => {
    const date = 'Tue, 24 Nov 2026 09:00:40 GMT';
    const { grades } = platform([{ status: 200, headers: { date }, body: '' }]);
    const { platformClock } = await grades.postScore('school', ITEM, BODY, false);
    expect(platformClock).toBe(Date.parse(date));
  });

  it('to a line item that is no address is refused before anything is sent', async () => {
    const { grades, sent } = platform([]);
    const { answer } = await grades.postScore('school', 'nowhere', BODY, false);
    expect(answer).toEqual({ kind: 'refused', reason: 'badAddress', status: null });
    expect(sent).toEqual([]);
  });
});

describe('a result', () => {
  const RESULTS: Recorded[] = golden('results-get').variants;
  const named = (name: string) => {
    const one = RESULTS.find((recorded) => recorded.case === name);
    if (one === undefined) throw new Error(`no recorded case "${name}"`);
    return one;
  };

  it('is asked for as recorded, and read', async () => {
    const { request, response } = named('results GET user_id');
    const { grades, sent } = platform([answered(response)]);
    expect(await grades.readResult('school', ITEM, '5')).toEqual({
      kind: 'read',
      value: { score: 5.5, maximum: 10, timestamp: Date.parse('2026-11-25T00:43:55Z') },
    });
    expect(sent[0]?.url).toBe(request.url);
    expect(sent[0]?.headers?.accept).toBe(request.headers.accept);
  });

  it.each([
    ['results GET after override', '4', 9],
    ['results GET (0)', '5', 0],
    ['results GET after re-enrol', '6', undefined],
    ['results GET after Pending', '5', undefined],
  ])('recorded "%s" of %s', async (name, subject, score) => {
    const { grades } = platform([answered(named(name).response)]);
    const read = await grades.readResult('school', ITEM, subject);
    expect(read).toMatchObject({ kind: 'read', value: score === undefined ? null : { score } });
  });

  it('that is a web page is not read as "no mark"', async () => {
    const { grades } = platform([{ status: 200, headers: {}, body: '<html></html>' }]);
    expect(await grades.readResult('school', ITEM, '5')).toMatchObject({
      ...{ kind: 'later', reason: 'strangeAnswer', doubtful: false },
    });
  });

  it('renews a token that is no longer taken, once', async () => {
    const unauthorised = { status: 401, headers: {}, body: '' };
    const { token, asked } = tokens();
    const once = platform([unauthorised, answered(named('results GET user_id').response)], token);
    expect(await once.grades.readResult('school', ITEM, '5')).toMatchObject({ kind: 'read' });
    expect(asked.map(({ renew }) => renew)).toEqual([false, true]);
    const twice = platform([unauthorised, unauthorised]);
    expect(await twice.grades.readResult('school', ITEM, '5')).toEqual({
      kind: 'unreadable',
      status: 401,
    });
  });
});

describe('line items', () => {
  it('one is read as recorded, an unknown one is unreadable', async () => {
    const { main, variants } = golden('lineitem-get');
    const gone = variants.find((one: Recorded) => one.case === 'lineitem GET after delete');
    const { grades, sent } = platform([answered(main.response), answered(gone.response)]);
    expect(await grades.readLineItem('school', ITEM)).toEqual({
      kind: 'read',
      value: { id: ITEM, resourceLinkId: '1' },
    });
    expect(sent[0]?.headers?.accept).toBe(main.request.headers.accept);
    expect(await grades.readLineItem('school', ITEM)).toEqual({ kind: 'unreadable', status: 404 });
  });

  it('of a resource link are asked for with the one media type that platforms take', async () => {
    const { main } = golden('lineitems-get');
    const { grades, sent } = platform([answered(main.response)]);
    const found = await grades.findLineItems('school', main.request.url, '1');
    expect(found).toMatchObject({ kind: 'read' });
    expect(found.kind === 'read' && found.value.every((item) => item.resourceLinkId === '1')).toBe(
      true,
    );
    expect(sent[0]?.headers?.accept).toBe('application/vnd.ims.lis.v2.lineitemcontainer+json');
    expect(new URL(sent[0]?.url ?? '').searchParams.get('resource_link_id')).toBe('1');
  });
});
