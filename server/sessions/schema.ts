import { Schema } from 'mongoose';
import { ROLES, type Role } from '../lti/launch.ts';

/** Who: hosted platforms share one issuer between schools, so a subject alone names nobody. */
export interface Person {
  readonly registration: string;
  readonly deployment: string;
  readonly subject: string;
}

/** A signed-in page. The token itself is not kept, only its digest. */
export interface Session extends Person {
  /** Digest of the token. */
  readonly _id: string;
  readonly context: string;
  readonly placement: string;
  readonly role: Role;
  /** Work that counts for nothing: a teacher's, a test user's. */
  readonly trial: boolean;
  /** Id of the attempt of this person at this placement. */
  readonly attempt: string;
  readonly expiresAt: Date;
}

/** A person in a course. */
export interface Enrolment extends Person {
  readonly context: string;
  /** As of the last launch. */
  readonly role: Role;
  readonly trial: boolean;
  readonly firstSeenAt: Date;
  readonly seenAt: Date;
}

/** An activity at one place of one course. */
export interface Placement {
  readonly _id: string;
  readonly registration: string;
  readonly deployment: string;
  readonly context: string;
  readonly resourceLink: string;
  readonly activity: string | null;
  readonly lineitem: string | null;
  readonly lineitems: string | null;
  readonly scopes: readonly string[];
  readonly roster: string | null;
  readonly launchedAt: Date;
}

const text = { type: String, required: true } as const;
const maybe = { type: String, default: null } as const;
const date = { type: Date, required: true } as const;
const flag = { type: Boolean, required: true } as const;
const role = { type: String, enum: ROLES, required: true } as const;
const options = { strict: 'throw', versionKey: false, id: false } as const;
const person = { registration: text, deployment: text, subject: text };

export const sessionSchema = new Schema<Session>(
  {
    _id: text,
    ...person,
    context: { type: String },
    placement: text,
    role,
    trial: flag,
    attempt: text,
    expiresAt: date,
  },
  options,
).index({ expiresAt: 1 }, { expireAfterSeconds: 0 });

export const enrolmentSchema = new Schema<Enrolment>(
  { ...person, context: { type: String }, role, trial: flag, firstSeenAt: date, seenAt: date },
  options,
).index({ registration: 1, deployment: 1, context: 1, subject: 1 }, { unique: true });

export const placementSchema = new Schema<Placement>(
  {
    _id: text,
    registration: text,
    deployment: text,
    context: { type: String },
    resourceLink: text,
    activity: maybe,
    lineitem: maybe,
    lineitems: maybe,
    scopes: [String],
    roster: maybe,
    launchedAt: date,
  },
  options,
).index({ registration: 1, deployment: 1, context: 1, resourceLink: 1 }, { unique: true });
