import { fits, MAT_LIMITS, type Mat, type Size, sizeNeeded, usualSize } from '../mat/geometry.ts';
import { NO_NUMERAL, type Numeral, parseNumeral } from '../numerals/numeral.ts';
import type { Problem, WrittenProblem } from '../problem.ts';
import { fail, ok, type Result } from '../result.ts';
import { promptsOf } from '../stages/prompts.ts';
import { STAGES, type Stage } from '../vocabulary.ts';
import { parsePolicy, writePolicy } from './policies.ts';
import {
  type Fields,
  readBoolean,
  readFields,
  readInteger,
  readOneOf,
  strangerIn,
} from './read.ts';

const FIELDS = [
  'stage',
  'multiplicand',
  'multiplier',
  'mat',
  'policy',
  'seed',
  'prompts',
  'categories',
] as const;

/**
 * The only door from what was written to what can be played.
 * Faults: `notANumber`, `doesNotFit` (`rows`, `columns`: the size needed), `oneRowOnly`, `notForThisStage`, …
 */
export function parseProblem(written: unknown): Result<Problem> {
  const fields = readFields(written, 'problem');
  if (!fields.ok) return fields;
  const stranger = strangerIn(fields.value, FIELDS, '');
  if (!stranger.ok) return stranger;
  const stage = readOneOf(fields.value.stage, 'stage', STAGES);
  if (!stage.ok) return stage;
  const numbers = readNumbers(fields.value, stage.value);
  if (!numbers.ok) return numbers;
  const mat = readMat(fields.value.mat, numbers.value);
  if (!mat.ok) return mat;
  const policy = parsePolicy(fields.value.policy);
  if (!policy.ok) return policy;
  const walk = readWalk(fields.value, stage.value);
  if (!walk.ok) return walk;
  const { multiplicand, multiplier } = numbers.value;
  const bare = { multiplicand, multiplier, mat: mat.value, policy: policy.value, walk: walk.value };
  // Written out, not spread: what is spread is laid out in a way of its own each time, which makes every look at it slow.
  return ok({
    stage: stage.value,
    multiplicand,
    multiplier,
    mat: bare.mat,
    policy: bare.policy,
    walk: bare.walk,
    prompts: promptsOf({ stage: stage.value, ...bare }),
  });
}

interface Numbers {
  readonly multiplicand: Numeral;
  readonly multiplier: Numeral;
}

function readNumbers(fields: Fields, stage: Stage): Result<Numbers> {
  const none = fields.multiplicand === undefined && fields.multiplier === undefined;
  if (stage === 'walk') {
    return none
      ? ok({ multiplicand: NO_NUMERAL, multiplier: NO_NUMERAL })
      : fail('notForThisStage', fields.multiplicand === undefined ? 'multiplier' : 'multiplicand');
  }
  if (stage === 'open' && none) return ok({ multiplicand: NO_NUMERAL, multiplier: NO_NUMERAL });
  const multiplicand = parseNumeral(fields.multiplicand, 'multiplicand');
  if (!multiplicand.ok) return multiplicand;
  const multiplier = parseNumeral(fields.multiplier, 'multiplier');
  if (!multiplier.ok) return multiplier;
  if (stage === 'bars1' && multiplier.value.digits.length > 1) {
    return fail('oneRowOnly', 'multiplier');
  }
  return ok({ multiplicand: multiplicand.value, multiplier: multiplier.value });
}

function readMat(written: unknown, numbers: Numbers): Result<Mat> {
  const { multiplicand, multiplier } = numbers;
  const origin = multiplicand.lowest + multiplier.lowest;
  const needed = sizeNeeded(multiplicand.digits.length, multiplier.digits.length);
  const most = { rows: MAT_LIMITS.rows.most, columns: MAT_LIMITS.columns.most };
  if (!fits(most, needed)) return doesNotFit(multiplier, needed);
  if (written === undefined) return ok(matOf(usualSize(needed)!, origin));
  const size = readSize(written);
  if (!size.ok) return size;
  return fits(size.value, needed) ? ok(matOf(size.value, origin)) : doesNotFit(multiplier, needed);
}

function matOf({ rows, columns }: Size, origin: number): Mat {
  return { rows, columns, origin };
}

function doesNotFit(multiplier: Numeral, needed: Size): Result<never> {
  const at = multiplier.digits.length > MAT_LIMITS.rows.most ? 'multiplier' : 'multiplicand';
  return fail('doesNotFit', at, { rows: needed.rows, columns: needed.columns });
}

function readSize(written: unknown): Result<Size> {
  const fields = readFields(written, 'mat');
  if (!fields.ok) return fields;
  const stranger = strangerIn(fields.value, ['rows', 'columns'], 'mat');
  if (!stranger.ok) return stranger;
  const { rows: rowLimits, columns: columnLimits } = MAT_LIMITS;
  const rows = readInteger(fields.value.rows, 'mat.rows', rowLimits.least, rowLimits.most);
  if (!rows.ok) return rows;
  const { least, most } = columnLimits;
  const columns = readInteger(fields.value.columns, 'mat.columns', least, most);
  return columns.ok ? ok({ rows: rows.value, columns: columns.value }) : columns;
}

const WALK_USUAL = { seed: 1, prompts: 8, categories: false } as const;
const WALK_LIMITS = { seed: 2 ** 32 - 1, prompts: 60 } as const;

function readWalk(fields: Fields, stage: Stage): Result<Problem['walk']> {
  const own = (['seed', 'prompts', 'categories'] as const).find(
    (name) => fields[name] !== undefined,
  );
  if (stage !== 'walk') return own === undefined ? ok(null) : fail('notForThisStage', own);
  const seed = readInteger(fields.seed ?? WALK_USUAL.seed, 'seed', 0, WALK_LIMITS.seed);
  if (!seed.ok) return seed;
  const prompts = readInteger(
    fields.prompts ?? WALK_USUAL.prompts,
    'prompts',
    1,
    WALK_LIMITS.prompts,
  );
  if (!prompts.ok) return prompts;
  const categories = readBoolean(fields.categories ?? WALK_USUAL.categories, 'categories');
  if (!categories.ok) return categories;
  return ok({ seed: seed.value, prompts: prompts.value, categories: categories.value });
}

/** `parseProblem(writeProblem(p))` is `p` again, whatever defaults were used. */
export function writeProblem(problem: Problem): WrittenProblem {
  const { stage, multiplicand, multiplier, mat, policy, walk } = problem;
  const numbers =
    multiplicand.digits.length === 0
      ? {}
      : { multiplicand: multiplicand.text, multiplier: multiplier.text };
  return {
    stage,
    ...numbers,
    mat: { rows: mat.rows, columns: mat.columns },
    policy: writePolicy(policy),
    ...(walk ?? {}),
  };
}
