import { describe, expect, test } from 'vitest';
import { standing } from '../../server/lti/roles.ts';

const VOCABULARY = 'http://purl.imsglobal.org/vocab/lis/v2';
const COURSE = `${VOCABULARY}/membership`;
const INSTITUTION = `${VOCABULARY}/institution/person`;
const SYSTEM = `${VOCABULARY}/system/person`;

const roleOf = (...roles: string[]) => standing(roles).role;

describe('roles in the course decide (LTI 1.3 Core, A.2)', () => {
  test.each([
    [`${COURSE}#Instructor`, 'teacher'],
    ['Instructor', 'teacher'],
    [`${COURSE}/Instructor#PrimaryInstructor`, 'teacher'],
    [`${COURSE}/Instructor#Lecturer`, 'teacher'],
    [`${COURSE}/Instructor#Grader`, 'teacher'],
    [`${COURSE}/Instructor#TeachingAssistant`, 'assistant'],
    [`${COURSE}/Instructor#TeachingAssistantSection`, 'assistant'],
    [`${COURSE}/Instructor#TeachingAssistantOffering`, 'assistant'],
    [`${COURSE}/Instructor#TeachingAssistantOfferuing`, 'assistant'],
    [`${COURSE}#Administrator`, 'administrator'],
    [`${COURSE}#Learner`, 'learner'],
    ['Learner', 'learner'],
    [`${COURSE}/Learner#NonCreditLearner`, 'learner'],
    [`${COURSE}#Mentor`, 'mentor'],
    [`${COURSE}#ContentDeveloper`, 'guest'],
    [`${COURSE}/Instructor#SomethingNew`, 'guest'],
  ])('%s → %s', (role, expected) => {
    expect(roleOf(role)).toBe(expected);
  });

  test('an assistant who is also called instructor stays an assistant', () => {
    expect(roleOf(`${COURSE}#Instructor`, `${COURSE}/Instructor#TeachingAssistant`)).toBe(
      'assistant',
    );
  });

  test('a teacher elsewhere who is a learner here is a learner', () => {
    expect(roleOf(`${INSTITUTION}#Instructor`, `${COURSE}#Learner`)).toBe('learner');
  });

  test('an administrator of the platform who teaches here is a teacher', () => {
    const roles = [
      `${INSTITUTION}#Administrator`,
      `${COURSE}#Instructor`,
      `${SYSTEM}#Administrator`,
    ];
    expect(roleOf(...roles)).toBe('teacher');
  });
});

describe('roles outside the course', () => {
  test.each([
    [`${INSTITUTION}#Instructor`, 'guest'],
    [`${INSTITUTION}#Faculty`, 'guest'],
    [`${INSTITUTION}#Student`, 'guest'],
    [`${INSTITUTION}#Administrator`, 'administrator'],
    [`${SYSTEM}#SysAdmin`, 'administrator'],
    [`${INSTITUTION}#Observer`, 'mentor'],
  ])('%s → %s', (role, expected) => {
    expect(roleOf(role)).toBe(expected);
  });
});

describe('what gives nothing', () => {
  test.each([
    '',
    'urn:lti:role:ims/lis/Instructor',
    `https${COURSE.slice(4)}#Instructor`,
    `${COURSE}#Instructor `,
    `x ${COURSE}#Instructor`,
    `${VOCABULARY}/institution/membership#Instructor`,
    'instructor',
  ])('%j', (role) => {
    expect(roleOf(role)).toBe('guest');
  });

  test('no role at all', () => {
    expect(standing([])).toEqual({ role: 'guest', testUser: false });
  });
});
