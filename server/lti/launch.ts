/** Roles a launch can give. `guest` may look; nothing of a guest is stored. */
export const ROLES = [
  'teacher',
  'assistant',
  'learner',
  'mentor',
  'administrator',
  'guest',
] as const;
export type Role = (typeof ROLES)[number];

/**
 * What is left of a platform's signed message once every check has passed: data only, no token,
 * no name, no address. A person is (registration, deployment, subject), because hosted platforms
 * share one issuer between schools.
 */
export interface VerifiedLaunch {
  message: 'resource' | 'review';
  /** Id of our registration record. */
  registration: string;
  deployment: string;
  /** Null for an anonymous launch; the role is then `guest`. */
  subject: string | null;
  role: Role;
  /** The platform's test person: may work, but nothing is sent and no figure counts it. */
  testUser: boolean;
  context: { id: string; title: string | null } | null;
  resourceLink: { id: string; title: string | null };
  /** Values that a platform left unfilled (they start with "$") are removed. Teachers can edit these. */
  custom: Record<string, string>;
  grades: { lineitem: string | null; lineitems: string | null; scopes: string[] } | null;
  roster: { url: string } | null;
  /** BCP 47, hyphens. */
  locale: string | null;
  /** Whose work a review is about; already allowed for this role. */
  forUser: string | null;
  /** Subjects a mentor may see. */
  mentees: string[];
}
