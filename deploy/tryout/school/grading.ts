import type { Grade } from './state.ts';

/** A score as it is posted; nothing about it is certain. */
export interface PostedScore {
  userId?: unknown;
  timestamp?: unknown;
  activityProgress?: unknown;
  gradingProgress?: unknown;
  scoreGiven?: unknown;
  scoreMaximum?: unknown;
  comment?: unknown;
}

const ISO_DATE = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:?\d\d)$/;

const isNumeric = (value: unknown): boolean =>
  (typeof value === 'number' || (typeof value === 'string' && value.trim() !== '')) &&
  Number.isFinite(Number(value));

const isSet = (value: unknown): boolean => value !== undefined && value !== null && value !== '';

/** What the platform asks of a score before it looks at the gradebook. Words of progress are not checked. */
export const isScore = (posted: PostedScore): boolean => {
  const { userId, timestamp, activityProgress, gradingProgress, scoreGiven, scoreMaximum } = posted;
  if (![userId, activityProgress, gradingProgress].every(isSet)) return false;
  if (typeof timestamp !== 'string' || !ISO_DATE.test(timestamp)) return false;
  return !isSet(scoreGiven) || (isNumeric(scoreGiven) && isNumeric(scoreMaximum));
};

/** Whole seconds since 1970: fractions of a second do not count. */
export const secondOf = (timestamp: string): number => Math.floor(Date.parse(timestamp) / 1000);

export const NO_GRADE: Grade = {
  raw: null,
  final: null,
  comment: null,
  modified: null,
  overridden: false,
  locked: false,
};

const given = (posted: PostedScore, maximum: number): number | null => {
  if (posted.gradingProgress !== 'FullyGraded' || !isSet(posted.scoreGiven)) return null;
  const of = Number(posted.scoreMaximum);
  const raw = of === 0 ? Number(posted.scoreGiven) : (Number(posted.scoreGiven) * maximum) / of;
  return Math.round(raw * 1e5) / 1e5;
};

const bounded = (raw: number, maximum: number): number => Math.min(Math.max(raw, 0), maximum);

/**
 * The grade after a score. Anything but a FullyGraded number erases, the comment goes with every score, and a
 * mark that the teacher set by hand stays: only `raw` follows the tool. `now` in seconds since 1970.
 */
export const graded = (grade: Grade, posted: PostedScore, maximum: number, now: number): Grade => {
  const raw = given(posted, maximum);
  if (grade.overridden) return { ...grade, raw };
  const comment = isSet(posted.comment) ? String(posted.comment) : null;
  if (raw === null) {
    return { ...grade, raw, final: null, comment, modified: comment === null ? null : now };
  }
  const modified = secondOf(String(posted.timestamp));
  return { ...grade, raw, final: bounded(raw, maximum), comment, modified };
};

const round = (value: number | null, times: number): number | null =>
  value === null ? null : Math.round(value * times * 1e5) / 1e5;

/** The grade after the column's points were multiplied; a mark set by hand stays. `now` in seconds since 1970. */
export const rescaled = (grade: Grade, times: number, now: number): Grade =>
  grade.overridden || grade.raw === null
    ? grade
    : { ...grade, raw: round(grade.raw, times), final: round(grade.final, times), modified: now };

/** Whether the gradebook already holds something of the same second or later. */
export const isStale = (grade: Grade, posted: PostedScore): boolean =>
  grade.modified !== null && grade.modified >= secondOf(String(posted.timestamp));
