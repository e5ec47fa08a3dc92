/** What a child seems to know, from first unaided attempts, and what might come next. */
export { type FirstAttempt, firstAttemptsOf } from './first-attempt.ts';
export { nextWork, type Proposal } from './next-work.ts';
export { type Occasion, parseOccasions } from './occasion.ts';
export {
  FACT_PARAMETERS,
  FEWEST_DAYS,
  FEWEST_PROBLEMS,
  KNOWN_FROM,
  SKILL_PARAMETERS,
  type TracingParameters,
} from './parameters.ts';
export { type Standing, standingsOf } from './standing.ts';
export { digitsOfFact, type FactName, type Subject } from './subject.ts';
export { type Trace, traceKnowledge } from './tracing.ts';
