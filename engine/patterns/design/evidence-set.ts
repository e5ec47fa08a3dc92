import type { Problem } from '../../problem.ts';
import type { Variant } from '../variants.ts';
import { showingOf } from './showing.ts';

/** What each pattern makes of one problem: in how many steps it shows, and which outcome (by number) it has. */
interface Column {
  readonly steps: readonly number[];
  readonly outcomes: readonly number[];
}

/** More steps than this say little more about a pattern. */
const PLENTY = 12;
/** What a pair that is told apart is worth beside a pattern that shows. */
const APART = 0.3;

/** A pattern that shows in a smaller part of the pool is looked for among the spare problems. */
const RARE = 0.25;

/**
 * Problems out of a pool with which every pattern shows in as many steps as may be, and any two
 * differ: greedily by the worst served, then by exchanging single problems while that helps.
 */
export function evidenceSet(
  pool: readonly Problem[],
  variants: readonly Variant[],
  size: number,
  spare: readonly Problem[] = [],
): readonly Problem[] {
  const [all, columns] = withRare(pool, variants, spare);
  const chosen: number[] = [];
  while (chosen.length < Math.min(size, all.length)) chosen.push(bestBeside(columns, chosen));
  for (let round = 0; round < 2; round += 1)
    for (const index of chosen.keys()) {
      const others = chosen.filter((_, at) => at !== index);
      chosen[index] = bestBeside(columns, others);
    }
  return chosen.map((index) => all[index]!);
}

/** The pool, and those of the spare problems in which something shows that seldom does. */
function withRare(
  pool: readonly Problem[],
  variants: readonly Variant[],
  spare: readonly Problem[],
): [readonly Problem[], readonly Column[]] {
  const columns = pool.map((problem) => columnOf(problem, variants));
  const shownIn = (at: number) => columns.filter(({ steps }) => steps[at]! > 0).length;
  const rare = variants.filter((_, at) => shownIn(at) < RARE * pool.length);
  const more = spare.filter((problem) =>
    rare.some((variant) => showingOf(problem, variant).steps.length > 0),
  );
  return [
    [...pool, ...more],
    [...columns, ...more.map((each) => columnOf(each, variants))],
  ];
}

function columnOf(problem: Problem, variants: readonly Variant[]): Column {
  const showings = variants.map((variant) => showingOf(problem, variant));
  const numbers = new Map<string, number>();
  const outcomes = showings.map(({ outcome }) => {
    numbers.set(outcome, numbers.get(outcome) ?? numbers.size);
    return numbers.get(outcome)!;
  });
  return { steps: showings.map(({ steps }) => steps.length), outcomes };
}

function bestBeside(columns: readonly Column[], chosen: readonly number[]): number {
  const beside = chosen.map((index) => columns[index]!);
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  for (const [index, column] of columns.entries()) {
    if (chosen.includes(index)) continue;
    const worth = worthOf([...beside, column]);
    if (worth <= most) continue;
    most = worth;
    best = index;
  }
  return best;
}

/** The first steps count most: all patterns should have some before any has many; so with pairs. */
function worthOf(set: readonly Column[]): number {
  const { length } = set[0]!.steps;
  let worth = 0;
  for (let one = 0; one < length; one += 1) {
    const steps = set.reduce((sum, column) => sum + column.steps[one]!, 0);
    worth += 1 - 0.7 ** Math.min(steps, PLENTY);
    for (let other = 0; other < one; other += 1) {
      const apart = set.filter(({ outcomes }) => outcomes[one] !== outcomes[other]).length;
      worth += APART * (1 - 0.5 ** apart);
    }
  }
  return worth;
}
