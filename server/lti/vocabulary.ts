/** Names of claims and messages (1EdTech LTI 1.3 Core; Assignment and Grade Services 2.0; Names and Role Provisioning Services 2.0). */
const LTI = 'https://purl.imsglobal.org/spec/lti/claim';

export const CLAIM = {
  version: `${LTI}/version`,
  messageType: `${LTI}/message_type`,
  deployment: `${LTI}/deployment_id`,
  target: `${LTI}/target_link_uri`,
  resourceLink: `${LTI}/resource_link`,
  roles: `${LTI}/roles`,
  mentees: `${LTI}/role_scope_mentor`,
  context: `${LTI}/context`,
  custom: `${LTI}/custom`,
  presentation: `${LTI}/launch_presentation`,
  platform: `${LTI}/tool_platform`,
  forUser: `${LTI}/for_user`,
  grades: 'https://purl.imsglobal.org/spec/lti-ags/claim/endpoint',
  roster: 'https://purl.imsglobal.org/spec/lti-nrps/claim/namesroleservice',
} as const;

export const MESSAGE = {
  resource: 'LtiResourceLinkRequest',
  review: 'LtiSubmissionReviewRequest',
  deepLinking: 'LtiDeepLinkingRequest',
} as const;

/** The payload of a verified id token: nothing in it has a known type yet. */
export type Claims = Readonly<Record<string, unknown>>;

/** A member of a claim that should be an object; undefined if it is none or lacks it. */
export function member(claim: unknown, key: string): unknown {
  return typeof claim === 'object' && claim !== null
    ? (claim as Record<string, unknown>)[key]
    : undefined;
}

/** An identifier as LTI knows them: 1 to 255 characters. */
export function isId(value: unknown): value is string {
  return typeof value === 'string' && value.length > 0 && value.length <= 255;
}

export function textOf(value: unknown): string | null {
  return typeof value === 'string' && value !== '' ? value.slice(0, 255) : null;
}

export function stringsOf(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];
}
