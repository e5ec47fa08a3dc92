import { fail, ok, type Result } from '../result.ts';
import type { TracingParameters } from './parameters.ts';

/** Probabilities, 0 to 1, one entry an answer. */
export interface Trace {
  /** That the child knows, before each answer. */
  readonly knownBefore: readonly number[];
  /** That the answer will be right, before each answer. */
  readonly correctBefore: readonly number[];
  readonly knownAfterLast: number;
}

/** P(right) = L(1 − S) + (1 − L)G, with L known, S slip, G guess (Corbett and Anderson 1995). */
export const correctChance = (known: number, { guess, slip }: TracingParameters): number =>
  known * (1 - slip) + (1 - known) * guess;

/**
 * What is believed after an answer, and after the chance of learning that follows it.
 * Right: L' = L(1 − S) ÷ (L(1 − S) + (1 − L)G). Wrong: L' = LS ÷ (LS + (1 − L)(1 − G)).
 * Then L' + (1 − L')T, with T learn (Corbett and Anderson 1995). Nothing is forgotten.
 */
export function knownAfter(known: number, right: boolean, parameters: TracingParameters): number {
  const { guess, slip, learn } = parameters;
  const knowing = known * (right ? 1 - slip : slip);
  const notKnowing = (1 - known) * (right ? guess : 1 - guess);
  const believed = knowing + notKnowing === 0 ? known : knowing / (knowing + notKnowing);
  return believed + (1 - believed) * learn;
}

/**
 * Follows a row of answers, first to last. Faults: `notAChance` with the parameter in `at` (a number
 * from 0 to 1), `evidenceReversed` (guess + slip of 1 or more).
 */
export function traceKnowledge(
  answers: readonly boolean[],
  parameters: TracingParameters,
): Result<Trace> {
  const wrong = PARAMETER_NAMES.find((name) => !isChance(parameters[name]));
  if (wrong !== undefined) return fail('notAChance', `parameters.${wrong}`);
  if (parameters.guess + parameters.slip >= 1) return fail('evidenceReversed', 'parameters.guess');
  const known = [parameters.prior];
  for (const right of answers) known.push(knownAfter(known.at(-1)!, right, parameters));
  const knownBefore = known.slice(0, -1);
  return ok({
    knownBefore,
    correctBefore: knownBefore.map((chance) => correctChance(chance, parameters)),
    knownAfterLast: known.at(-1)!,
  });
}

const PARAMETER_NAMES = ['prior', 'learn', 'guess', 'slip'] as const;

const isChance = (value: unknown): boolean => typeof value === 'number' && value >= 0 && value <= 1;
