import { fail, ok, type Result } from '../result.ts';
import { SKILLS, type Skill } from '../vocabulary.ts';

/** A multiplication fact by its digits, the smaller first: "6x7" stands for 6 × 7 and 7 × 6. */
export type FactName = `${number}x${number}`;

/** What is traced: a skill of the mat, or one fact. */
export type Subject = Skill | FactName;

export const factName = (a: number, b: number): FactName => `${Math.min(a, b)}x${Math.max(a, b)}`;

const FACT = /^([1-9])x([1-9])$/;

/** The two digits of a fact; null for a skill. */
export function digitsOfFact(subject: Subject): readonly [number, number] | null {
  const found = FACT.exec(subject);
  return found ? [Number(found[1]), Number(found[2])] : null;
}

/** Fault `unknownSubject`: neither a skill nor a fact with its smaller digit first. */
export function parseSubject(value: unknown, at: string): Result<Subject> {
  if (SKILLS.includes(value as Skill)) return ok(value as Skill);
  const digits = typeof value === 'string' ? FACT.exec(value) : null;
  return digits && Number(digits[1]) <= Number(digits[2])
    ? ok(value as FactName)
    : fail('unknownSubject', at);
}
