import { amountText, textOf } from '../numerals/numeral.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Stage } from '../vocabulary.ts';
import type { Candidate } from './candidate.ts';
import { smallestConflict } from './conflict.ts';
import { type Constraints, constraintsOf, isCountable, type Size } from './constraints.ts';
import { digitsOf, exchangesOfRow } from './digits.ts';
import { COUNTABLE } from './limits.ts';
import { type Population, populationOf } from './population.ts';
import { distinctBelow, drawsFrom } from './random.ts';
import { numbersIn } from './range.ts';
import type { Clause, Factor, Specification } from './specification.ts';
import { witnessOf } from './witness.ts';

/** A problem made to order; numbers as text, `exchanges` one a row before sliding, units row first. */
export interface MadeProblem {
  readonly stage: Stage;
  readonly multiplicand: string;
  readonly multiplier: string;
  readonly product: string;
  readonly exchanges: readonly number[];
}

/** `count`: how many problems satisfy the specification, exactly; `problems`: those drawn. */
export interface MadeProblems {
  readonly count: number;
  readonly problems: readonly MadeProblem[];
}

/**
 * How many problems satisfy the specification, exactly, as a whole number below 2^53. Faults:
 * - `tooLarge`: a condition on exchanges, piles or facts (`because`) with numbers of more digits than
 *   `limit` names;
 * - `impossible`: `clauses` is a smallest set of clauses, each with path and value, that no problem on
 *   any mat satisfies together.
 */
export function countProblems(specification: Specification): Result<number> {
  const found = open(specification.clauses);
  return found.ok ? ok(found.value.population.count * found.value.points.length) : found;
}

/**
 * Draws `specification.count` different problems, every ordered choice equally likely, reproducible
 * from `specification.seed`. Faults: those of `countProblems`, and `tooFew` (`available`).
 */
export function makeProblems(specification: Specification): Result<MadeProblems> {
  const found = open(specification.clauses);
  if (!found.ok) return found;
  const { population, points } = found.value;
  const count = population.count * points.length;
  if (count < specification.count) return fail('tooFew', 'count', { available: count });
  const ranks = distinctBelow(count, specification.count, drawsFrom(specification.seed));
  const candidates = population.at(ranks.map((rank) => Math.floor(rank / points.length)));
  const stage = stageOf(specification.clauses);
  const problems = candidates.map((candidate, index) =>
    problemOf(stage, candidate, points[ranks[index]! % points.length]!),
  );
  return ok({ count, problems });
}

/** Any one problem of any size that satisfies the specification; fault `impossible` as above. */
export function exampleOf({ clauses }: Specification): Result<MadeProblem> {
  const found = witnessOf(clauses);
  if (found === null) return impossible(clauses);
  return ok(problemOf(stageOf(clauses), found, pointsOf(constraintsOf(clauses))[0]!));
}

/** Places after the point of each number. */
type Points = Readonly<Record<Factor, number>>;

/** Candidates and the points they may be given: each with each is a problem. */
interface Drawable {
  readonly population: Population;
  readonly points: readonly Points[];
}

/** What can be drawn, perhaps nothing. */
export const drawableFrom = (constraints: Constraints): Drawable => ({
  population: populationOf(constraints),
  points: pointsOf(constraints),
});

function open(clauses: readonly Clause[]): Result<Drawable> {
  const constraints = constraintsOf(clauses);
  const large = constraints.coupled && constraints.sizes.find((size) => !isCountable(size));
  if (large) return refuseSize(clauses, large);
  const drawable = drawableFrom(constraints);
  return drawable.population.count > 0 ? ok(drawable) : impossible(clauses);
}

function refuseSize(clauses: readonly Clause[], size: Size): Result<never> {
  const factor = size.multiplicand > COUNTABLE.multiplicand ? 'multiplicand' : 'multiplier';
  const because = clauses.filter(({ kind }) => COUPLING.has(kind)).map(({ at }) => at);
  return fail('tooLarge', `${factor}.digits`, { limit: COUNTABLE, because });
}

const COUPLING: ReadonlySet<Clause['kind']> = new Set([
  'exchanges',
  'largestPile',
  'allowed',
  'required',
  'avoided',
]);

function impossible(clauses: readonly Clause[]): Result<never> {
  const conflict = smallestConflict(clauses).map(({ at, written }) => ({ at, written }));
  return fail('impossible', conflict[0]!.at, { clauses: conflict });
}

const pointsOf = ({ decimals }: Constraints): Points[] =>
  numbersIn(decimals.multiplicand).flatMap((multiplicand) =>
    numbersIn(decimals.multiplier).map((multiplier) => ({ multiplicand, multiplier })),
  );

const stageOf = (clauses: readonly Clause[]): Stage | null =>
  clauses.find((clause) => clause.kind === 'stage')?.stage ?? null;

function problemOf(stage: Stage | null, candidate: Candidate, points: Points): MadeProblem {
  const bottom = digitsOf(candidate.multiplicand);
  const right = digitsOf(candidate.multiplier);
  const product = BigInt(candidate.multiplicand) * BigInt(candidate.multiplier);
  return {
    stage: stage ?? (right.length === 1 ? 'bars1' : 'bars'),
    multiplicand: textOf(bottom, -points.multiplicand),
    multiplier: textOf(right, -points.multiplier),
    product: amountText(product, -points.multiplicand - points.multiplier),
    exchanges: right.map((digit) => exchangesOfRow(bottom, digit)),
  };
}
