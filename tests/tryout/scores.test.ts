import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { openTestSchool, recorded, type TestSchool } from '../support/tryout-school.ts';

const SCORE = 'https://purl.imsglobal.org/spec/lti-ags/scope/score';
const LINE_ITEM = 'https://purl.imsglobal.org/spec/lti-ags/scope/lineitem';
const SCORE_TYPE = 'application/vnd.ims.lis.v1.score+json';
const ITEM_TYPE = 'application/vnd.ims.lis.v2.lineitem+json';

interface GradeRow {
  userId: string;
  rawgrade: number | null;
  rawgrademax: number;
  finalgrade: number | null;
  feedback: string | null;
  timemodified: number | null;
  overridden: boolean;
  locked: boolean;
}

interface Case {
  case: string;
  request: { url: string; headers: Record<string, string>; body: { timestamp?: string } };
  response: { status: number; headers: Record<string, string>; body: unknown };
  gradebook_after: GradeRow[];
}

// In the recordings the assessed activity's column is number 2 of its course; here it is number 1.
const RECORDED_COLUMN: Record<string, string> = { '2': '1', '3': '2' };

const addressOf = (school: TestSchool, { request }: Case): string => {
  const [, item = '', rest] = /lineitems\/(\d+)(\/.*)$/.exec(request.url) ?? [];
  return `${school.origin}/services/2/lineitems/${RECORDED_COLUMN[item]}${rest?.replace('type_id', 'tool')}`;
};

const post = async (school: TestSchool, one: Case, token: string) => {
  const answer = await fetch(addressOf(school, one), {
    method: 'POST',
    headers: {
      authorization: `Bearer ${token}`,
      'content-type': one.request.headers['content-type'] ?? '',
    },
    body: JSON.stringify(one.request.body),
  });
  return { answer, text: await answer.text() };
};

interface Control {
  grades: Record<
    string,
    Record<
      string,
      {
        raw: unknown;
        final: unknown;
        comment: unknown;
        modified: unknown;
        overridden: boolean;
        locked: boolean;
      }
    >
  >;
  accepted: { userId: string; timestamp: string; scoreGiven: number | null }[];
}

const gradebook = async (school: TestSchool): Promise<Control> =>
  (await (await school.control('GET', '')).json()) as Control;

/** The rows of the first column (10 points) as the recordings write them. */
const rows = async (school: TestSchool, people: readonly string[]): Promise<GradeRow[]> => {
  const { grades } = await gradebook(school);
  return people.map((userId) => {
    const grade = grades['1']?.[userId];
    return {
      userId,
      rawgrade: (grade?.raw ?? null) as number | null,
      rawgrademax: 10,
      finalgrade: (grade?.final ?? null) as number | null,
      feedback: (grade?.comment ?? null) as string | null,
      timemodified: (grade?.modified ?? null) as number | null,
      overridden: grade?.overridden ?? false,
      locked: grade?.locked ?? false,
    };
  });
};

const setPoints = (school: TestSchool, token: string, scoreMaximum: number) =>
  fetch(`${school.origin}/services/2/lineitems/1/lineitem?tool=1`, {
    method: 'PUT',
    headers: { authorization: `Bearer ${token}`, 'content-type': ITEM_TYPE },
    body: JSON.stringify({ label: 'Assessed', scoreMaximum }),
  });

/** What happened at the platform between two recorded posts, done here by the control page. */
const BEFORE: Record<string, (school: TestSchool, token: string) => Promise<unknown>> = {
  'after teacher override to 9 (post 4)': (school) => {
    vi.setSystemTime(new Date('2026-11-24T23:44:47Z'));
    const change = { lineItem: '1', userId: '4', mark: 9, comment: 'Teacher says.' };
    return school.control('PUT', '/grade', change);
  },
  'after grade lock of one student (post 4)': (school) =>
    school.control('PUT', '/grade', { lineItem: '1', userId: '6', locked: true }),
  'suspended student': (school) =>
    school.control('PUT', '/grade', { lineItem: '1', userId: '6', locked: false }),
  // The points were doubled and halved again: that gives every mark a new time, but for one set by hand.
  'user5: FullyGraded 6 with comment': async (school, token) => {
    vi.setSystemTime(new Date('2026-11-24T23:45:30Z'));
    await setPoints(school, token, 20);
    await setPoints(school, token, 10);
  },
};

/** This school locks one child's mark, not a whole column, and nobody leaves it: these cannot be replayed. */
const NOT_HERE = ['after lock of the whole item (post 3)', 'unenrolled student'];

describe('the recorded scores, in their order', () => {
  let school: TestSchool;
  let token = '';

  beforeAll(async () => {
    vi.useFakeTimers({ toFake: ['Date'] });
    vi.setSystemTime(new Date('2026-11-24T23:43:30Z'));
    school = await openTestSchool();
    token = await school.token(`${SCORE} ${LINE_ITEM}`);
    await fetch(`${school.origin}/services/2/lineitems?tool=1`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': ITEM_TYPE, accept: ITEM_TYPE },
      body: JSON.stringify({ label: 'Extra column', scoreMaximum: 20 }),
    });
  });
  afterAll(async () => {
    await school.close();
    vi.useRealTimers();
  });

  it('are answered as recorded and leave the gradebook as recorded', async () => {
    const cases = (recorded('score-post').cases as Case[]).filter(
      (one) => !NOT_HERE.includes(one.case),
    );
    expect(cases.length).toBeGreaterThanOrEqual(40);
    for (const one of cases) {
      await BEFORE[one.case]?.(school, token);
      // Answered within the second in which the work was done; one case claims to come from an hour ahead.
      const time = one.request.body.timestamp;
      if (time && !one.case.startsWith('future')) vi.setSystemTime(new Date(time));
      const { answer, text } = await post(school, one, token);
      expect([one.case, answer.status]).toEqual([one.case, one.response.status]);
      const type = answer.headers.get('content-type');
      expect([one.case, type]).toEqual([one.case, one.response.headers['content-type']]);
      if (answer.status === 200) expect(text).toBe('');
      else if (type?.startsWith(SCORE_TYPE)) expect(text).toBe('[]');
      else expect(Object.keys(JSON.parse(text))).toEqual(Object.keys(one.response.body as object));
      const people = one.gradebook_after.map(({ userId }) => userId);
      expect([one.case, await rows(school, people)]).toEqual([one.case, one.gradebook_after]);
    }
  });
});

describe('scores', () => {
  let school: TestSchool;
  let token = '';
  beforeEach(async () => {
    school = await openTestSchool();
    token = await school.token(SCORE);
  });
  afterEach(() => school.close());

  const send = (body: object, type = SCORE_TYPE) =>
    fetch(`${school.origin}/services/2/lineitems/1/lineitem/scores?tool=1`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': type },
      body: JSON.stringify(body),
    });
  const score = (change: object = {}) => ({
    userId: '4',
    timestamp: '2026-11-24T10:00:00.100Z',
    scoreGiven: 7,
    scoreMaximum: 10,
    activityProgress: 'Completed',
    gradingProgress: 'FullyGraded',
    ...change,
  });

  it('posted twelve at once within one second are taken once', async () => {
    const posts = Array.from({ length: 12 }, (_, index) =>
      send(score({ timestamp: `2026-11-24T10:00:00.${100 + index}Z`, scoreGiven: index })),
    );
    const statuses = (await Promise.all(posts)).map(({ status }) => status).sort();
    expect(statuses).toEqual([200, ...Array(11).fill(409)]);
    expect((await gradebook(school)).accepted).toHaveLength(1);
  });

  it('are in the log with what was sent, only when they were taken', async () => {
    await send(score({ comment: 'Well done.' }));
    await send(score());
    expect((await gradebook(school)).accepted).toMatchObject([
      { lineItem: '1', userId: '4', scoreGiven: 7, scoreMaximum: 10, comment: 'Well done.' },
    ]);
  });

  it('need the scope', async () => {
    token = await school.token(LINE_ITEM);
    expect((await send(score())).status).toBe(401);
  });

  it('are on the disk when they are acknowledged', async () => {
    await send(score());
    const { readFile } = await import('node:fs/promises');
    const stored = JSON.parse(await readFile(school.file, 'utf8')) as Control;
    expect(stored.grades['1']?.['4']).toMatchObject({ raw: 7, final: 7 });
    expect(stored.accepted).toHaveLength(1);
  });
});
