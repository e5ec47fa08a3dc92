import { Schema } from 'mongoose';
import type { WrittenProblem } from '../../engine/index.ts';

export const RELEASES = ['onFinish', 'byTeacher'] as const;
export type Release = (typeof RELEASES)[number];

/** Colours of the bead bars, as classrooms have them; the pages know which colours these are. */
export const BEADS = ['blueFive', 'mauveFive', 'gold'] as const;
export type Beads = (typeof BEADS)[number];

/** What is assigned, one version of it; what a child has begun stays at the version it began with. */
export interface ActivityVersion {
  readonly activity: string;
  readonly version: number;
  /** Whose activity it is: a placement may ask only for one of its own platform. */
  readonly registration: string;
  readonly title: string;
  readonly problems: readonly WrittenProblem[];
  readonly release: Release;
  /** The maximum that is told to the gradebook, as a decimal numeral. */
  readonly points: string;
  /** Whether the learner picks one of the problems instead of working all of them; absent: no. */
  readonly choice?: boolean;
  /** Absent: the first of the list. */
  readonly beads?: Beads;
  readonly createdAt: Date;
}

const text = { type: String, required: true } as const;

export const activityVersionSchema = new Schema<ActivityVersion>(
  {
    activity: text,
    version: { type: Number, required: true },
    registration: text,
    title: text,
    problems: [{ type: Schema.Types.Mixed, required: true }],
    release: { type: String, enum: RELEASES, required: true },
    points: text,
    choice: { type: Boolean },
    beads: { type: String, enum: BEADS },
    createdAt: { type: Date, required: true },
  },
  { strict: 'throw', versionKey: false, id: false },
).index({ activity: 1, version: 1 }, { unique: true });
