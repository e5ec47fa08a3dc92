import { fail, ok, type Result } from '../result.ts';
import { readBoolean, readFields, readInteger, strangerIn } from '../wire/read.ts';
import type { FirstAttempt } from './first-attempt.ts';
import { parseSubject } from './subject.ts';

/** A first attempt with the problem that it was made at and the day of the work. */
export interface Occasion extends FirstAttempt {
  /** Tells problems apart; two attempts at the same numbers are two problems. */
  readonly problem: string;
  /** Days since 1 January 1970 in the school's own time zone. */
  readonly day: number;
}

const FIELDS = ['problem', 'day', 'subject', 'right', 'aided'] as const;
/** The year 9999: later days are mistakes. */
const LAST_DAY = 2_932_896;

/** Faults: `notAList`, `notText`, `unknownSubject`, `unknownField`, and those of whole numbers. */
export function parseOccasions(value: unknown): Result<Occasion[]> {
  if (!Array.isArray(value)) return fail('notAList', 'occasions');
  const occasions: Occasion[] = [];
  for (const [index, entry] of Array.from(value).entries()) {
    const occasion = parseOccasion(entry, `occasions[${index}]`);
    if (!occasion.ok) return occasion;
    occasions.push(occasion.value);
  }
  return ok(occasions);
}

function parseOccasion(value: unknown, at: string): Result<Occasion> {
  const fields = readFields(value, at);
  if (!fields.ok) return fields;
  const stranger = strangerIn(fields.value, FIELDS, at);
  if (!stranger.ok) return stranger;
  const { problem, day, subject, right, aided } = fields.value;
  if (typeof problem !== 'string') return fail('notText', `${at}.problem`);
  const read = {
    day: readInteger(day, `${at}.day`, 0, LAST_DAY),
    subject: parseSubject(subject, `${at}.subject`),
    right: readBoolean(right, `${at}.right`),
    aided: readBoolean(aided, `${at}.aided`),
  };
  if (!read.day.ok) return read.day;
  if (!read.subject.ok) return read.subject;
  if (!read.right.ok) return read.right;
  if (!read.aided.ok) return read.aided;
  return ok({
    problem,
    day: read.day.value,
    subject: read.subject.value,
    right: read.right.value,
    aided: read.aided.value,
  });
}
