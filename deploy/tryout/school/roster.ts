import { type Request, type Response, Router } from 'express';
import { COURSE, PEOPLE, type Person, SCHOOL } from './scenario.ts';
import type { School } from './school.ts';
import { ROSTER_READ } from './scopes.ts';
import { accepts, needs } from './services.ts';
import { rosterUrl } from './urls.ts';

const CONTAINER = 'application/vnd.ims.lti-nrps.v2.membershipcontainer+json';

// Short role names, unlike the launch (seen at a real platform).
const member = (person: Person) => ({
  status: 'Active',
  roles: [person.role],
  user_id: person.id,
  lis_person_sourcedid: person.record,
  name: `${person.given} ${person.family}`,
  given_name: person.given,
  family_name: person.family,
  email: `${person.username}@${SCHOOL.short}.example`,
  ext_user_username: person.username,
});

const inRole = (person: Person, role: unknown): boolean =>
  role === undefined || role === person.role || String(role).endsWith(`membership#${person.role}`);

const nextLink = (school: School, limit: number, from: number): string =>
  `<${rosterUrl(school)}?limit=${limit}&from=${from + limit}>; rel="next"`;

const list = (school: School, request: Request, response: Response): void => {
  const { role } = request.query;
  const limit = Number(request.query.limit ?? 0);
  const from = Number(request.query.from ?? 0);
  const people = PEOPLE.filter((person) => inRole(person, role));
  const page = limit > 0 ? people.slice(from, from + limit) : people;
  if (limit > 0 && from + limit < people.length) {
    response.setHeader('Link', nextLink(school, limit, from));
  }
  response.setHeader('Content-Type', `${CONTAINER}; charset=utf-8`);
  const { id, label, title } = COURSE;
  response.send(
    JSON.stringify({
      id: rosterUrl(school),
      context: { id, label, title },
      members: page.map(member),
    }),
  );
};

/** Names and roles of the course (NRPS 2.0). */
export const rosterRoutes = (school: School): Router =>
  Router().get(
    `/services/CourseSection/${COURSE.id}/bindings/1/memberships`,
    school.troubles.meet('roster'),
    accepts(CONTAINER, true),
    needs(school, ROSTER_READ),
    (request, response) => list(school, request, response),
  );
