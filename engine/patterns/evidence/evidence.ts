/**
 * One decision that the child took, beside what a belief would have had it be, all that went before
 * being the child's own. `among`: how many answers were possible.
 */
export interface Expectation {
  /** The same decision has the same key whatever is believed. */
  readonly key: string;
  /** The judge's step that it belongs to. */
  readonly step: string;
  readonly given: Answer;
  readonly expected: Answer;
  readonly among: number;
}

/** null: nothing there, not done. */
export type Answer = number | string | null;

export const DIGITS = 10;
