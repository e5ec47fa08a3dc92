/** The small door: what the child's page uses of the engine, and nothing more. */

export type {
  Judgement,
  Lifted,
  LogEntry,
  Say,
  Step,
  StepStatus,
  Suggestion,
  Work,
} from './judge/work.ts';
export type { Action, ActionOf, Finishable, Line, PointOn } from './mat/action.ts';
export type { Mat, Square } from './mat/geometry.ts';
export { onMat, placeName, placeOf } from './mat/geometry.ts';
export type { Pile, Position } from './mat/position.ts';
export { pileValue } from './mat/position.ts';
export type { Fraction } from './numerals/fraction.ts';
export { fractionText } from './numerals/fraction.ts';
export type { Numeral } from './numerals/numeral.ts';
export type { Policy, Problem, Prompt, WrittenPolicy, WrittenProblem } from './problem.ts';
export type { Fault, Result } from './result.ts';
export * from './vocabulary.ts';
export { parseAction, parseProblem, writeProblem } from './wire.ts';

import type { Say, Suggestion, Work } from './judge/work.ts';
import type { Action } from './mat/action.ts';
import type { Fraction } from './numerals/fraction.ts';
import type { Problem } from './problem.ts';
import type { HintLevel, RefusalCode } from './vocabulary.ts';

// Signatures first; the modules that hold them replace these lines one by one.
export declare function startWork(problem: Problem): Work;
export declare function act(work: Work, action: Action): Work;
export declare function replay(problem: Problem, actions: readonly Action[]): Work;
export declare function refusalOf(work: Work, action: Action): RefusalCode | null;
export declare function nextMove(work: Work): Suggestion | null;
export declare function hint(
  work: Work,
  level: HintLevel,
  step?: string,
): { readonly step: string; readonly say: Say } | null;
export declare function worked(problem: Problem): readonly Suggestion[];
export declare function score(works: readonly Work[]): {
  readonly awarded: Fraction;
  readonly available: Fraction;
  readonly fraction: Fraction;
};
/** × the line item's maximum, rounded half up to two decimals, once: "11.80". */
export declare function toPoints(fraction: Fraction, maximum: string | number): string;
