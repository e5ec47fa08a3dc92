import { type Action, type Problem, parseProblem, replay, type Work } from '../../engine/index.ts';
import { type Beliefs, holdingBoth, RIGHT_WAY } from '../../engine/pupils/beliefs.ts';
import { handOf, USUAL_HABITS } from '../../engine/pupils/hand.ts';
import { playThrough } from '../../engine/pupils/play.ts';
import type { Stage } from '../../engine/vocabulary.ts';

export function problemOf(stage: Stage, multiplicand: string, multiplier: string): Problem {
  const problem = parseProblem({ stage, multiplicand, multiplier });
  if (!problem.ok) throw new Error(JSON.stringify(problem.fault));
  return problem.value;
}

/** Digits written on a line from the right, as they stand in the text. */
function line(name: 'product' | `partial:${number}`, text: string): Action[] {
  return [...text]
    .reverse()
    .map((digit, place) => ({ do: 'write', line: name, place, digit: Number(digit) }));
}

/** Written work as a child leaves it: the rows from the units up, then the product; no carries noted. */
export function written(
  [multiplicand, multiplier]: readonly [string, string],
  rows: readonly string[],
  product: string,
): Work {
  const actions = rows.flatMap((text, row): Action[] => [
    { do: 'begin', line: `partial:${row}`, row },
    ...line(`partial:${row}`, text),
  ]);
  return replay(problemOf('paper', multiplicand, multiplier), [
    ...actions,
    ...line('product', product),
    { do: 'finish', what: 'product' },
    { do: 'finish', what: 'problem' },
  ]);
}

/** The work of a synthetic pupil who holds all of these. */
export function workBy(
  problem: Problem,
  held: readonly Beliefs[],
  seed: number | null = null,
  slip = 0.05,
): Work {
  const beliefs = held.reduce(holdingBoth, RIGHT_WAY);
  const hand = handOf(USUAL_HABITS, seed === null ? 0 : slip, seed);
  return replay(problem, playThrough(problem, beliefs, hand));
}
