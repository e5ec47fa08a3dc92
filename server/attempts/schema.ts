import { Schema } from 'mongoose';
import type { Action } from '../../engine/index.ts';
import type { Person } from '../sessions/schema.ts';

/** What a learner did, as it is kept and as it travels. */
export interface Entry {
  /** Random id of the page it was done on. */
  readonly client: string;
  /** Counts that page's actions from 0. */
  readonly n: number;
  /** Milliseconds since that page opened the attempt, by its monotonic clock. */
  readonly at: number;
  /** Index of the problem in the activity. */
  readonly problem: number;
  readonly action: Action;
  /** Why it is not judged: a code of the mat's physics, or `afterFinish`. */
  readonly aside?: string;
}

/** Exact fractions as reduced text, such as "118/5". */
export interface ScoreText {
  readonly awarded: string;
  readonly available: string;
  readonly fraction: string;
}

/** One learner's work on one placement of one activity version, all its problems. `actions` only ever grows. */
export interface Attempt extends Person {
  readonly _id: string;
  readonly context: string;
  readonly placement: string;
  readonly activity: string;
  readonly version: number;
  readonly trial: boolean;
  /** Index of the problem that the learner picked, where the activity lets them; `null`: nothing is picked. */
  readonly chosen: number | null;
  readonly length: number;
  readonly actions: readonly Entry[];
  readonly problemsFinished: number;
  readonly openedAt: Date;
  readonly finishedAt: Date | null;
  /** When the learner may see the score; the gradebook gets it then. */
  readonly releasedAt: Date | null;
  readonly score: ScoreText | null;
}

const text = { type: String, required: true } as const;
const count = { type: Number, required: true } as const;
const options = { strict: 'throw', versionKey: false, id: false } as const;

const entrySchema = new Schema<Entry>(
  {
    client: text,
    n: count,
    at: count,
    problem: count,
    action: { type: Schema.Types.Mixed, required: true },
    aside: { type: String },
  },
  { ...options, _id: false },
);

const scoreSchema = new Schema<ScoreText>(
  { awarded: text, available: text, fraction: text },
  { ...options, _id: false },
);

export const attemptSchema = new Schema<Attempt>(
  {
    _id: text,
    registration: text,
    deployment: text,
    subject: text,
    context: { type: String },
    placement: text,
    activity: text,
    version: count,
    trial: { type: Boolean, required: true },
    chosen: { type: Number, default: null },
    length: count,
    actions: [entrySchema],
    problemsFinished: count,
    openedAt: { type: Date, required: true },
    finishedAt: { type: Date, default: null },
    releasedAt: { type: Date, default: null },
    score: { type: scoreSchema, default: null },
  },
  options,
)
  .index(
    { registration: 1, deployment: 1, subject: 1, placement: 1, activity: 1 },
    { unique: true },
  )
  .index({ placement: 1, openedAt: 1 });
