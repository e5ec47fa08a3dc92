/** From the platform's role names to what a person may do here. Only roles in this course count for the course. */
import type { Role } from './launch.ts';

/** `http://purl.imsglobal.org/vocab/lis/v2/membership#Instructor`, `…/membership/Instructor#Grader` (LTI 1.3 Core, A.2). */
const IN_COURSE = /^http:\/\/purl\.imsglobal\.org\/vocab\/lis\/v2\/membership(?:\/(\w+))?#(\w+)$/;
/** `Instructor`: the short form of a role in the course. */
const SHORT = /^\w+$/;
const ADMINISTRATORS: readonly string[] = [
  'http://purl.imsglobal.org/vocab/lis/v2/institution/person#Administrator',
  'http://purl.imsglobal.org/vocab/lis/v2/system/person#Administrator',
  'http://purl.imsglobal.org/vocab/lis/v2/system/person#SysAdmin',
  'http://purl.imsglobal.org/vocab/lis/v2/system/person#AccountAdmin',
];
const MENTORS: readonly string[] = [
  'http://purl.imsglobal.org/vocab/lis/v2/institution/person#Mentor',
  'http://purl.imsglobal.org/vocab/lis/v2/institution/person#Observer',
];
const TEST_USER = 'http://purl.imsglobal.org/vocab/lti/system/person#TestUser';

/** Sub-roles of Instructor that teach; the assistants' names vary, one of them by a misprint in the vocabulary. */
const TEACHING: readonly string[] = [
  'PrimaryInstructor',
  'SecondaryInstructor',
  'Lecturer',
  'GuestInstructor',
  'ExternalInstructor',
  'Grader',
];

interface CourseRole {
  principal: string;
  sub: string | null;
}

export interface Standing {
  role: Role;
  testUser: boolean;
}

/** Unknown roles give nothing and break nothing. */
export function standing(roles: readonly string[]): Standing {
  return { role: roleOf(roles), testUser: roles.includes(TEST_USER) };
}

function roleOf(roles: readonly string[]): Role {
  const inCourse = roles.flatMap(courseRole);
  const has = (principal: string) => inCourse.some((one) => one.principal === principal);
  if (inCourse.some(isAssistant)) return 'assistant';
  if (inCourse.some(isTeacher)) return 'teacher';
  if (has('Administrator')) return 'administrator';
  if (has('Learner')) return 'learner';
  if (has('Mentor')) return 'mentor';
  if (roles.some((role) => ADMINISTRATORS.includes(role))) return 'administrator';
  return roles.some((role) => MENTORS.includes(role)) ? 'mentor' : 'guest';
}

function courseRole(role: string): CourseRole[] {
  if (SHORT.test(role)) return [{ principal: role, sub: null }];
  const [, over, name] = IN_COURSE.exec(role) ?? [];
  if (name === undefined) return [];
  return [over === undefined ? { principal: name, sub: null } : { principal: over, sub: name }];
}

function isAssistant({ principal, sub }: CourseRole): boolean {
  return principal === 'Instructor' && sub !== null && sub.startsWith('TeachingAssistant');
}

function isTeacher({ principal, sub }: CourseRole): boolean {
  return principal === 'Instructor' && (sub === null || TEACHING.includes(sub));
}
