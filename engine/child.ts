/**
 * The small door: what the child's page uses of the engine, and nothing more. What comes from outside goes through
 * `parseProblem` and `parseAction`, which name the argument that is wrong; everything else takes only what they gave.
 */

export type { Hint } from './hint.ts';
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
export { act, hint, nextMove, refusalOf, replay, startWork, worked } from './replay.ts';
export type { Fault, Result } from './result.ts';
export type { Score } from './score.ts';
export { score, scoreBySkill, toPoints } from './score.ts';
export { loadStage } from './stages/load.ts';
export * from './vocabulary.ts';
export { parseAction, parseProblem, writeProblem } from './wire.ts';
