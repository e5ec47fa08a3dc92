import { type Problem, type WrittenProblem, writeProblem } from '../../engine/child.ts';

/**
 * That something was presented, as a file: the teacher's, on the teacher's device.
 * - `kind`, `version`: always these, so that a later page can read it back
 * - `presentedTo`: names or groups as the teacher wrote them, at least one
 * - `on`: the day, `YYYY-MM-DD`
 * - `activity`: its title; null for a problem of the teacher's own
 * - `problem`: stage and numbers (exact texts, "." for the point), in the shape that `parseProblem` reads
 */
export interface PresentationNote {
  readonly kind: 'placeweave presentation';
  readonly version: 1;
  readonly presentedTo: readonly string[];
  readonly on: string;
  readonly activity: string | null;
  readonly problem: WrittenProblem;
}

interface Told {
  readonly to: string;
  readonly on: string;
  readonly activity: string | null;
  readonly problem: Problem;
}

/** Null without anybody to whom it was presented, or without a day. */
export const noteOf = ({ to, on, activity, problem }: Told): PresentationNote | null => {
  const presentedTo = to
    .split(/[,;\n]/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
  if (presentedTo.length === 0 || !/^\d{4}-\d{2}-\d{2}$/.test(on)) return null;
  const { policy: _policy, ...written } = writeProblem(problem);
  return {
    kind: 'placeweave presentation',
    version: 1,
    presentedTo,
    on,
    activity,
    problem: written,
  };
};

/** `presented-2026-03-09-934x314.json`; the stage where there are no numbers. */
export const fileNameOf = ({ on, problem }: PresentationNote): string => {
  const { stage, multiplicand, multiplier } = problem;
  const what = multiplicand === undefined ? stage : `${multiplicand}x${multiplier}`;
  return `presented-${on}-${what}.json`;
};
