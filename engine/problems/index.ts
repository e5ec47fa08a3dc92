/** Problems made to order: a specification, how many problems satisfy it, and some drawn from them. */
export {
  countProblems,
  exampleOf,
  type MadeProblem,
  type MadeProblems,
  makeProblems,
} from './make.ts';
export { parseSpecification } from './parse.ts';
export type {
  Specification,
  WrittenFactor,
  WrittenRange,
  WrittenSpecification,
  WrittenZeros,
} from './specification.ts';
