import type { Problem } from '../../problem.ts';
import { type Draws, drawsFrom } from '../../problems/random.ts';
import type { Stage } from '../../vocabulary.ts';
import { parseProblem } from '../../wire.ts';

/** Sizes in digits, and whether the numbers may have a point. */
export interface PoolShape {
  readonly multiplicand: number;
  readonly multiplier: number;
  readonly decimals: boolean;
}

/** Half of the numbers have a zero somewhere: patterns with zeros show nowhere else. */
function digitsFor(draws: Draws, length: number): number[] {
  const digits = Array.from({ length }, () => 1 + draws.below(9));
  if (draws.below(2) === 0) digits[draws.below(length - 1)] = 0;
  return digits;
}

function numberFor(draws: Draws, length: number, decimals: boolean): string {
  const text = digitsFor(draws, length).reverse().join('');
  const places = decimals ? draws.below(length) : 0;
  return places === 0 ? text : `${text.slice(0, -places)}.${text.slice(-places)}`;
}

/** Problems of one stage, drawn at random, reproducible from the seed. */
export function randomProblems(
  stage: Stage,
  shape: PoolShape,
  count: number,
  seed: number,
): Problem[] {
  const draws = drawsFrom(seed);
  const problems: Problem[] = [];
  while (problems.length < count) {
    const problem = parseProblem({
      stage,
      multiplicand: numberFor(draws, shape.multiplicand, shape.decimals),
      multiplier: numberFor(draws, shape.multiplier, shape.decimals),
    });
    if (problem.ok) problems.push(problem.value);
  }
  return problems;
}
