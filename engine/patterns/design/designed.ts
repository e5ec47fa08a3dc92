import type { Problem } from '../../problem.ts';
import type { Stage } from '../../vocabulary.ts';
import { CATALOGUE } from '../catalogue/index.ts';
import { doneWork } from '../done.ts';
import { variantsFor } from '../reading.ts';
import { evidenceSet } from './evidence-set.ts';
import { type PoolShape, randomProblems } from './pool.ts';

/** Numbers large enough for three steps of every pattern in six problems. */
const SHAPE: PoolShape = { multiplicand: 4, multiplier: 3, decimals: true };
const POOL = 120;
/** The pool is the same for everyone: a designed set is a fixed thing. */
const POOL_SEED = 20_260;
/** A family is designed for by one of its members at most: the rest come with their facts. */
const LARGE_FAMILY = 10;

/** Problems of a stage chosen so that its patterns show. */
export function designedProblems(stage: Stage, size: number): readonly Problem[] {
  const pool = randomProblems(stage, SHAPE, POOL, POOL_SEED);
  const untouched = pool.map((problem) => doneWork(problem, []));
  const small = CATALOGUE.filter(({ beliefs }) => Object.keys(beliefs).length < LARGE_FAMILY);
  return evidenceSet(pool, variantsFor(small, untouched), size);
}

/** Problems of the same kind, drawn at random. */
export function undesignedProblems(stage: Stage, size: number, seed: number): readonly Problem[] {
  return randomProblems(stage, SHAPE, size, seed);
}
