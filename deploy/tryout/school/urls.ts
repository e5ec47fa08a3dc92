import { COURSE } from './scenario.ts';
import type { School } from './school.ts';

const services = ({ settings }: School) => `${settings.origin}/services`;

// The query is part of the address: `/scores` and `/results` belong before it.
export const lineItemsUrl = (school: School) => `${services(school)}/${COURSE.id}/lineitems?tool=1`;

export const lineItemUrl = (school: School, id: string) =>
  `${services(school)}/${COURSE.id}/lineitems/${id}/lineitem?tool=1`;

export const resultUrl = (school: School, id: string, user: string) =>
  `${services(school)}/${COURSE.id}/lineitems/${id}/lineitem/results?tool=1&user_id=${user}`;

export const rosterUrl = (school: School) =>
  `${services(school)}/CourseSection/${COURSE.id}/bindings/1/memberships`;
