import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { databaseForFile } from '../support/database.ts';
import {
  LTI,
  MEMBERSHIP,
  openPlatform,
  recordedClaims,
  type TestPlatform,
} from '../support/platform.ts';
import { arrive, confirm, openTool, type Tool } from './support/tool.ts';

const database = databaseForFile();
let tool: Tool;
let platform: TestPlatform;

beforeAll(async () => {
  platform = await openPlatform();
  tool = await openTool(database().connection);
  await tool.register(platform);
});
afterAll(async () => {
  await tool.close();
  await platform.close();
});

/** A launch up to its session. */
async function enter(changes = {}, recorded?: Record<string, unknown>) {
  const { visit, page } = await arrive(tool, platform, changes, recorded);
  expect(page.refused).toBeNull();
  const answer = await confirm(tool, { code: page.boot?.code }, visit);
  expect(answer.status).toBe(200);
  const session = (await answer.json()) as { token: string };
  return { page, session, launch: tool.admitted[Number(session.token.split('-')[1]) - 1] };
}

const roles = (...names: string[]) => ({ [`${LTI}/roles`]: names });
const unnamed = { name: undefined, given_name: undefined, family_name: undefined };

describe('launches that must land (certification guide 6.1.2 and 6.1.3)', () => {
  const INSTRUCTOR = `${MEMBERSHIP}#Instructor`;
  const LEARNER = `${MEMBERSHIP}#Learner`;
  const UNKNOWN = 'http://purl.imsglobal.org/vocab/lis/v2/uknownrole/unknown#Helper';

  for (const [who, role, short] of [
    ['teacher', INSTRUCTOR, 'Instructor'],
    ['learner', LEARNER, 'Learner'],
  ] as const) {
    test.each([
      ['plain', roles(role), who],
      [
        'with several roles',
        roles('http://purl.imsglobal.org/vocab/lis/v2/institution/person#Staff', role),
        who,
      ],
      ['with a short role', roles(short), who],
      ['with an unknown role', roles(UNKNOWN), 'guest'],
      ['with no role', roles(), 'guest'],
      ['with an e-mail address only', { ...roles(role), ...unnamed }, who],
      ['with names only', { ...roles(role), email: undefined }, who],
      ['without anything personal', { ...roles(role), ...unnamed, email: undefined }, who],
      [
        'with an e-mail address, outside a course',
        { ...roles(role), ...unnamed, [`${LTI}/context`]: undefined },
        who,
      ],
    ])(`${who} %s`, async (_name, changes, expected) => {
      const { launch } = await enter(changes);
      expect(launch?.role).toBe(expected);
    });
  }
});

describe('launches as a real platform sent them', () => {
  test.each([
    ['launch-student', 'learner'],
    ['launch-student-no-name-no-email', 'learner'],
    ['launch-student-new-window', 'learner'],
    ['launch-teacher', 'teacher'],
    ['launch-admin', 'teacher'],
    ['launch-teacher-switched-to-student-role', 'learner'],
    ['launch-course-copy-teacher', 'teacher'],
    ['launch-two-line-items-student', 'learner'],
    ['launch-ungraded-student', 'learner'],
  ])('%s', async (name, role) => {
    const { launch } = await enter({}, recordedClaims(name));
    expect(launch?.role).toBe(role);
  });

  test('carries what the standard gives, and no name', async () => {
    const { launch } = await enter();
    expect(launch).toEqual({
      message: 'resource',
      registration: expect.any(String),
      deployment: '1',
      subject: '4',
      role: 'learner',
      testUser: false,
      context: { id: '2', title: 'Geography 7B' },
      resourceLink: { id: '1', title: 'Map activity a1' },
      custom: expect.objectContaining({ activity_id: 'act-a1', static_x: 'abc=def' }),
      grades: {
        lineitem: 'https://moodle.example/mod/lti/services.php/2/lineitems/2/lineitem?type_id=1',
        lineitems: 'https://moodle.example/mod/lti/services.php/2/lineitems?type_id=1',
        scopes: expect.arrayContaining(['https://purl.imsglobal.org/spec/lti-ags/scope/score']),
      },
      roster: {
        url: 'https://moodle.example/mod/lti/services.php/CourseSection/2/bindings/1/memberships',
      },
      locale: 'en',
      forUser: null,
      mentees: [],
    });
    expect(JSON.stringify(launch)).not.toMatch(/Robin|student1@/);
  });

  test('leaves out variables that the platform did not fill', async () => {
    const { launch } = await enter();
    expect(Object.values(launch?.custom ?? {}).filter((value) => value.startsWith('$'))).toEqual(
      [],
    );
    expect(launch?.custom).not.toHaveProperty('rl_history');
  });

  test('has no line item where the activity is not graded', async () => {
    const { launch } = await enter({}, recordedClaims('launch-ungraded-student'));
    expect(launch?.grades?.lineitem ?? null).toBeNull();
  });
});

describe('launches beyond the usual two messages', () => {
  test('an anonymous launch looks on as a guest, whatever its role says', async () => {
    const { launch } = await enter({ sub: undefined, ...roles(`${MEMBERSHIP}#Instructor`) });
    expect(launch).toMatchObject({ subject: null, role: 'guest' });
  });

  test('the test person of a platform is marked as such', async () => {
    const TEST_USER = 'http://purl.imsglobal.org/vocab/lti/system/person#TestUser';
    const { launch } = await enter(roles(`${MEMBERSHIP}#Learner`, TEST_USER));
    expect(launch).toMatchObject({ role: 'learner', testUser: true });
  });

  test('a teacher reviews the work of a child', async () => {
    const { launch } = await enter({}, recordedClaims('launch-submission-review', 0));
    expect(launch).toMatchObject({ message: 'review', role: 'teacher', forUser: '4' });
  });

  test('a review from the column head names no child', async () => {
    const { launch } = await enter({}, recordedClaims('launch-submission-review', 1));
    expect(launch).toMatchObject({ message: 'review', role: 'teacher', forUser: null });
  });

  test('a child reviews the own work', async () => {
    const { launch } = await enter({}, recordedClaims('launch-submission-review', 3));
    expect(launch).toMatchObject({
      message: 'review',
      role: 'learner',
      subject: '4',
      forUser: '4',
    });
  });

  test('a child may not review the work of another, though the platform signs it', async () => {
    const before = tool.admitted.length;
    const { page } = await arrive(
      tool,
      platform,
      {},
      recordedClaims('launch-submission-review', 4),
    );
    expect(page).toMatchObject({ status: 403, refused: 'reviewNotAllowed', boot: null });
    expect(tool.admitted).toHaveLength(before);
  });

  test('a mentor reviews the work of an own learner only', async () => {
    const mentor = {
      ...roles(`${MEMBERSHIP}#Mentor`),
      [`${LTI}/role_scope_mentor`]: ['5', '6'],
      sub: '9',
    };
    const other = recordedClaims('launch-submission-review', 4);
    expect((await enter(mentor, other)).launch).toMatchObject({ role: 'mentor', forUser: '5' });
    const strange = { ...mentor, [`${LTI}/for_user`]: { user_id: '4' } };
    expect((await arrive(tool, platform, strange, other)).page.refused).toBe('reviewNotAllowed');
  });

  test('a platform whose clock is slow by less than a minute is let in', async () => {
    const now = Math.floor(Date.now() / 1000);
    const { launch } = await enter({ iat: now - 90, exp: now - 30 });
    expect(launch?.subject).toBe('4');
  });

  test('a token for several audiences lands when azp names us', async () => {
    const { launch } = await enter({
      aud: [platform.clientId, 'https://other.example'],
      azp: platform.clientId,
    });
    expect(launch?.subject).toBe('4');
  });
});
