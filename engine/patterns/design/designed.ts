import type { Problem } from '../../problem.ts';
import { canPlay } from '../../pupils/play.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Stage } from '../../vocabulary.ts';
import { CATALOGUE } from '../catalogue/index.ts';
import { doneWork } from '../done.ts';
import { type Variant, variantsFor } from '../variants.ts';
import { evidenceSet } from './evidence-set.ts';
import { type PoolShape, randomProblems } from './pool.ts';
import { alwaysAlike, separatingSet, shareParted } from './separating.ts';

/** Numbers large enough for three steps of every pattern in six problems. */
const FOR_EVIDENCE: PoolShape = { multiplicand: 4, multiplier: 3, decimals: true };
/** Numbers as in the comparison of procedures in sources C. */
const FOR_PARTING: PoolShape = { multiplicand: 3, multiplier: 2, decimals: true };
const POOL = 60;
/** The pool is the same for everyone: a designed set is a fixed thing. */
const POOL_SEED = 20_260;
/** A family of more members is designed for by its facts, not member by member. */
const LARGE_FAMILY = 10;

function variantsIn(pool: readonly Problem[]): readonly Variant[] {
  const untouched = pool.map((problem) => doneWork(problem, []));
  const small = CATALOGUE.filter(({ beliefs }) => Object.keys(beliefs).length < LARGE_FAMILY);
  return variantsFor(small, untouched);
}

/** Problems of a stage chosen so that its patterns show, each in as many steps as may be. */
export function designedProblems(stage: Stage, size: number): readonly Problem[] {
  const pool = randomProblems(stage, FOR_EVIDENCE, POOL, POOL_SEED);
  const spare = randomProblems(stage, FOR_EVIDENCE, 2 * POOL, POOL_SEED + 1);
  return evidenceSet(pool, variantsIn(pool), size, spare);
}

/** Problems of the same kind, drawn at random. */
export function undesignedProblems(stage: Stage, size: number, seed: number): readonly Problem[] {
  return randomProblems(stage, FOR_EVIDENCE, size, seed);
}

export interface SetDesign {
  /** The smallest set of the pool in which any two patterns are done differently. */
  readonly problems: readonly (readonly [multiplicand: string, multiplier: string])[];
  /** How many problems it was chosen from. */
  readonly pool: number;
  /** By problem: how many pairs it parts, and those that no other of the set parts (null: the right way). */
  readonly parting: readonly {
    readonly parts: number;
    readonly alone: readonly (readonly [string | null, string])[];
  }[];
  /** By pattern: the number of its outcome in each problem, 0 where all is right. */
  readonly table: Readonly<Record<string, readonly number[]>>;
  /** Pairs that are done alike in every problem of three by two digits, and in all of the pool. */
  readonly inseparable: readonly (readonly [string, string])[];
  /** Part of the pairs that random sets of the same size tell apart, 0..1: least, mean, most. */
  readonly randomSets: readonly [least: number, mean: number, most: number];
}

const RANDOM_SETS = 40;

/**
 * The smallest separating set found for a stage, its table, and what no set separates. Fault `notPlayable`: no
 * pattern can be played at the stage.
 */
export function designSet(stage: Stage): Result<SetDesign> {
  return canPlay(stage) ? ok(setFor(stage)) : fail('notPlayable', 'stage');
}

/** For a stage that can be played. */
export function setFor(stage: Stage): SetDesign {
  const pool = randomProblems(stage, FOR_PARTING, POOL, POOL_SEED);
  const variants = variantsIn(pool);
  const { chosen, table, parting, together } = separatingSet(pool, variants);
  const alike = together.flatMap(([one, other]): [Variant, Variant][] =>
    one < 0 ? [] : [[variants[one]!, variants[other]!]],
  );
  const inseparable = alike
    .filter(([one, other]) => one.pattern !== other.pattern && alwaysAlike(stage, one, other))
    .map(([one, other]) => [one.pattern.id, other.pattern.id] as const);
  const shares = Array.from({ length: RANDOM_SETS }, (_, index) =>
    shareParted(randomProblems(stage, FOR_PARTING, chosen.length, index), variants),
  );
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const named = variants.map(nameOf);
  const nameAt = (index: number) => (index < 0 ? null : named[index]!);
  return {
    problems: chosen.map((index) => {
      const { multiplicand, multiplier } = pool[index]!;
      return [multiplicand.text, multiplier.text] as const;
    }),
    pool: pool.length,
    parting: parting.map(({ parts, alone }) => ({
      parts,
      alone: alone.map(([one, other]) => [nameAt(one), named[other]!] as const),
    })),
    table: Object.fromEntries(
      named.map((name, at) => [name, table.map((outcomes) => outcomes[at]!)]),
    ),
    inseparable,
    randomSets: [Math.min(...shares), mean, Math.max(...shares)],
  };
}

/** The pattern, and in a family its parameter. */
function nameOf({ pattern, beliefs }: Variant): string {
  const [parameter] = Object.entries(pattern.beliefs).find(([, each]) => each === beliefs)!;
  return parameter === '' ? pattern.id : `${pattern.id}: ${parameter}`;
}
