import type { JWTPayload } from 'jose';
import type { Launch } from './launches.ts';
import { COURSE, type Person, SCHOOL } from './scenario.ts';
import type { Activity, School } from './school.ts';
import { AGS_SCOPES } from './scopes.ts';
import { lineItemsUrl, lineItemUrl, rosterUrl } from './urls.ts';

const LTI = 'https://purl.imsglobal.org/spec/lti/claim';
const MEMBERSHIP = 'http://purl.imsglobal.org/vocab/lis/v2/membership';

/** The single line item of the link; two or more are not named (seen at a real platform). */
const endpoint = (school: School, activity: Activity) => {
  const items = school.state.lineItems.filter((item) => item.resourceLinkId === activity.id);
  const [item] = items;
  return {
    scope: AGS_SCOPES,
    lineitems: lineItemsUrl(school),
    ...(item && items.length === 1 ? { lineitem: lineItemUrl(school, item.id) } : {}),
  };
};

const presentation = ({ settings }: School, launch: Launch) => ({
  locale: 'en',
  document_target: launch.target,
  return_url: `${settings.origin}/return?course=${COURSE.id}&activity=${launch.activity}&sesskey=${launch.session}`,
});

const personal = (person: Person) => ({
  given_name: person.given,
  family_name: person.family,
  name: `${person.given} ${person.family}`,
  email: `${person.username}@${SCHOOL.short}.example`,
});

/** The claims of the message, with the members and forms that a real platform was seen to send. */
export const claimsOf = (
  school: School,
  launch: Launch,
  activity: Activity,
  person: Person,
  nonce: string,
): JWTPayload => {
  const { issuer, tool } = school.settings;
  const iat = Math.floor(Date.now() / 1000);
  return {
    nonce,
    iat,
    exp: iat + 60,
    iss: issuer,
    aud: tool.clientId,
    sub: person.id,
    ...personal(person),
    [`${LTI}/version`]: '1.3.0',
    [`${LTI}/message_type`]: launch.message,
    [`${LTI}/deployment_id`]: tool.deploymentId,
    [`${LTI}/target_link_uri`]: tool.targetLinkUri,
    [`${LTI}/lis`]: { person_sourcedid: person.record, course_section_sourcedid: COURSE.record },
    [`${LTI}/roles`]: [`${MEMBERSHIP}#${person.role}`],
    [`${LTI}/context`]: {
      id: COURSE.id,
      label: COURSE.label,
      title: COURSE.title,
      type: ['CourseSection'],
    },
    [`${LTI}/resource_link`]: {
      id: activity.id,
      title: activity.title,
      description: activity.description,
    },
    ...(launch.forUser ? { [`${LTI}/for_user`]: { user_id: launch.forUser } } : {}),
    [`${LTI}/ext`]: { user_username: person.username, lms: SCHOOL.family },
    [`${LTI}/launch_presentation`]: presentation(school, launch),
    [`${LTI}/tool_platform`]: {
      product_family_code: SCHOOL.family,
      version: SCHOOL.version,
      guid: SCHOOL.guid,
      name: SCHOOL.short,
      description: SCHOOL.name,
    },
    [`${LTI}/custom`]: { ...activity.custom, context_memberships_url: rosterUrl(school) },
    'https://purl.imsglobal.org/spec/lti-ags/claim/endpoint': endpoint(school, activity),
    'https://purl.imsglobal.org/spec/lti-nrps/claim/namesroleservice': {
      context_memberships_url: rosterUrl(school),
      service_versions: ['1.0', '2.0'],
    },
  };
};
