import { parseFraction } from '../numerals/fraction.ts';
import { DEFAULT_POLICY, type Policy, type WrittenPolicy } from '../problem.ts';
import { fail, ok, type Result } from '../result.ts';
import { CONTROLS, LAYINGS, STATUSES } from '../vocabulary.ts';
import { readBoolean, readFields, readOneOf, strangerIn } from './read.ts';

/** What is not said is as by default; a mark is a value from 0 to 1. */
export function parsePolicy(written: unknown): Result<Policy> {
  if (written === undefined) return ok(DEFAULT_POLICY);
  const fields = readFields(written, 'policy');
  if (!fields.ok) return fields;
  const stranger = strangerIn(fields.value, Object.keys(DEFAULT_POLICY), 'policy');
  if (!stranger.ok) return stranger;
  const given = { ...DEFAULT_POLICY, ...definedOf(fields.value) };
  const control = readOneOf(given.control, 'policy.control', CONTROLS);
  if (!control.ok) return control;
  const laying = readOneOf(given.laying, 'policy.laying', LAYINGS);
  if (!laying.ok) return laying;
  const readRows = readBoolean(given.readRows, 'policy.readRows');
  if (!readRows.ok) return readRows;
  const bounce = readBoolean(given.bounce, 'policy.bounce');
  if (!bounce.ok) return bounce;
  const presentation = readBoolean(given.presentation, 'policy.presentation');
  if (!presentation.ok) return presentation;
  const marks = parseMarks(given.marks);
  if (!marks.ok) return marks;
  return ok({
    // Taking a wrong action back at once is an answer at each step, whatever else was asked for.
    control: bounce.value ? 'eachStep' : control.value,
    laying: laying.value,
    readRows: readRows.value,
    marks: marks.value,
    bounce: bounce.value,
    presentation: presentation.value,
  });
}

function definedOf(fields: Readonly<Record<string, unknown>>): Partial<Policy> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}

function parseMarks(written: unknown): Result<Policy['marks']> {
  const fields = readFields(written, 'policy.marks');
  if (!fields.ok) return fields;
  const stranger = strangerIn(fields.value, STATUSES, 'policy.marks');
  if (!stranger.ok) return stranger;
  const marks: Record<string, string> = { ...DEFAULT_POLICY.marks };
  for (const status of STATUSES) {
    const value = fields.value[status];
    if (value === undefined) continue;
    const text = typeof value === 'number' ? String(value) : value;
    const mark = typeof text === 'string' ? parseFraction(text) : null;
    if (mark === null || mark.num > mark.den) return fail('notAMark', `policy.marks.${status}`);
    marks[status] = text as string;
  }
  return ok(marks as Policy['marks']);
}

export function writePolicy(policy: Policy): WrittenPolicy {
  return { ...policy, marks: { ...policy.marks } };
}
