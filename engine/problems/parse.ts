import { fail, ok, type Result } from '../result.ts';
import { STAGES } from '../vocabulary.ts';
import { readOneOf } from '../wire/read.ts';
import { type FactEntry, factSet } from './fact-set.ts';
import {
  COUNTABLE,
  DECIMALS,
  EXCHANGES,
  LARGEST_MAT,
  LARGEST_PILE,
  MOST_LISTED_FACTS,
  MOST_PROBLEMS,
  MOST_REQUIRED_FACTS,
  MULTIPLICAND_DIGITS,
  MULTIPLIER_DIGITS,
  PRODUCT_DIGITS,
} from './limits.ts';
import type { Range } from './range.ts';
import { type Entries, entriesOf, list, range, wholeNumber } from './reading.ts';
import { type Clause, FACTORS, type Factor, type Specification } from './specification.ts';
import type { ZeroCondition } from './zeros.ts';

type Clauses = Result<readonly Clause[]>;

const NO_CLAUSES: Clauses = ok([]);

/**
 * Reads a `WrittenSpecification` from unknown JSON. Faults, each with the path of the argument in `at`:
 * `notAnObject`, `unknownField`, `unknownWord` (`known`), `notAWholeNumber`, `outOfRange` (`least`,
 * `most`), `emptyRange`, `notAList`, `tooMany` (`most`), `notAFact`, `notAZeroCondition`.
 */
export function parseSpecification(written: unknown): Result<Specification> {
  const entries = entriesOf(written, '', FIELDS);
  if (!entries.ok) return entries;
  const clauses = all([
    optional(entries.value.stage, 'stage', stageClause),
    ...FACTORS.map((of) => optional(entries.value[of], of, (value) => factorClauses(value, of))),
    optional(entries.value.exchanges, 'exchanges', exchangeClauses),
    optional(entries.value.largestPile, 'largestPile', pileClause),
    optional(entries.value.facts, 'facts', factClauses),
    optional(entries.value.product, 'product', productClause),
    optional(entries.value.mat, 'mat', matClause),
  ]);
  if (!clauses.ok) return clauses;
  const count = wholeNumber(entries.value.count ?? 10, 'count', { from: 1, to: MOST_PROBLEMS });
  if (!count.ok) return count;
  const seed = wholeNumber(entries.value.seed ?? 0, 'seed', ANY_SEED);
  if (!seed.ok) return seed;
  return ok({ clauses: clauses.value, count: count.value, seed: seed.value });
}

const FIELDS = [
  'stage',
  'multiplicand',
  'multiplier',
  'exchanges',
  'largestPile',
  'facts',
  'product',
  'mat',
  'count',
  'seed',
] as const;

const ANY_SEED: Range = { from: 0, to: Number.MAX_SAFE_INTEGER };

const DIGITS_OF: Readonly<Record<Factor, Range>> = {
  multiplicand: MULTIPLICAND_DIGITS,
  multiplier: MULTIPLIER_DIGITS,
};

function optional(
  value: unknown,
  at: string,
  read: (value: unknown, at: string) => Clauses,
): Clauses {
  return value === undefined ? NO_CLAUSES : read(value, at);
}

function all(parts: readonly Clauses[]): Clauses {
  const clauses: Clause[] = [];
  for (const part of parts) {
    if (!part.ok) return part;
    clauses.push(...part.value);
  }
  return ok(clauses);
}

function stageClause(value: unknown, at: string): Clauses {
  const stage = readOneOf(value, at, STAGES);
  return stage.ok ? ok([{ at, written: value, kind: 'stage', stage: stage.value }]) : stage;
}

function factorClauses(value: unknown, of: Factor): Clauses {
  const entries = entriesOf(value, of, ['digits', 'zeros', 'decimals'] as const);
  if (!entries.ok) return entries;
  return all([
    optional(entries.value.digits, `${of}.digits`, (digits, at) =>
      rangeClause(digits, at, DIGITS_OF[of], (found) => ({ kind: 'digits', of, range: found })),
    ),
    optional(entries.value.zeros, `${of}.zeros`, (zeros, at) => zerosClause(zeros, at, of)),
    optional(entries.value.decimals, `${of}.decimals`, (decimals, at) =>
      rangeClause(decimals, at, DECIMALS, (found) => ({ kind: 'decimals', of, range: found })),
    ),
  ]);
}

type RangeCondition =
  Extract<Clause, { readonly range: Range }> extends infer Kind
    ? Kind extends Clause
      ? Omit<Kind, 'at' | 'written'>
      : never
    : never;

function rangeClause(
  written: unknown,
  at: string,
  limits: Range,
  condition: (range: Range) => RangeCondition,
): Clauses {
  const found = range(written, at, limits);
  return found.ok ? ok([{ at, written, ...condition(found.value) }]) : found;
}

function zerosClause(written: unknown, at: string, of: Factor): Clauses {
  const zeros = zeroCondition(written, at);
  return zeros.ok ? ok([{ at, written, kind: 'zeros', of, zeros: zeros.value }]) : zeros;
}

function zeroCondition(written: unknown, at: string): Result<ZeroCondition> {
  if (written === 'none') return ok({ inside: false, atTheEnd: false, some: false });
  if (written === 'some') return ok({ inside: null, atTheEnd: null, some: true });
  if (typeof written === 'string') return fail('notAZeroCondition', at);
  const entries = entriesOf(written, at, ['inside', 'atTheEnd'] as const);
  if (!entries.ok) return entries;
  const { inside, atTheEnd } = entries.value;
  if (!isChoice(inside)) return fail('notAZeroCondition', `${at}.inside`);
  if (!isChoice(atTheEnd)) return fail('notAZeroCondition', `${at}.atTheEnd`);
  return ok({ inside: inside ?? null, atTheEnd: atTheEnd ?? null, some: false });
}

const isChoice = (value: unknown): value is boolean | undefined =>
  value === undefined || typeof value === 'boolean';

function exchangeClauses(written: unknown, at: string): Clauses {
  if (!Array.isArray(written)) {
    return rangeClause(written, at, EXCHANGES, (found) => ({
      kind: 'exchanges',
      row: 'every',
      range: found,
    }));
  }
  const rows = list(written, at, COUNTABLE.multiplier);
  if (!rows.ok) return rows;
  return all(
    rows.value.map((entry, row) =>
      rangeClause(entry, `${at}[${row}]`, EXCHANGES, (found) => ({
        kind: 'exchanges',
        row,
        range: found,
      })),
    ),
  );
}

const pileClause = (written: unknown, at: string): Clauses =>
  rangeClause(written, at, LARGEST_PILE, (found) => ({ kind: 'largestPile', range: found }));

function productClause(value: unknown, at: string): Clauses {
  const entries = entriesOf(value, at, ['digits'] as const);
  if (!entries.ok) return entries;
  return optional(entries.value.digits, `${at}.digits`, (digits, path) =>
    rangeClause(digits, path, PRODUCT_DIGITS, (found) => ({ kind: 'productDigits', range: found })),
  );
}

function matClause(written: unknown, at: string): Clauses {
  const entries = entriesOf(written, at, ['rows', 'columns'] as const);
  if (!entries.ok) return entries;
  const rows = wholeNumber(entries.value.rows, `${at}.rows`, { from: 1, to: LARGEST_MAT.rows });
  if (!rows.ok) return rows;
  const most = { from: 2, to: LARGEST_MAT.columns };
  const columns = wholeNumber(entries.value.columns, `${at}.columns`, most);
  if (!columns.ok) return columns;
  return ok([{ at, written, kind: 'mat', rows: rows.value, columns: columns.value }]);
}

function factClauses(value: unknown, at: string): Clauses {
  const entries: Result<Entries<'allowed' | 'required' | 'avoided'>> = entriesOf(value, at, [
    'allowed',
    'required',
    'avoided',
  ] as const);
  if (!entries.ok) return entries;
  const { allowed, required, avoided } = entries.value;
  return all([
    optional(allowed, `${at}.allowed`, allowedClause),
    optional(required, `${at}.required`, (written, path) =>
      eachFact(written, path, 'required', MOST_REQUIRED_FACTS),
    ),
    optional(avoided, `${at}.avoided`, (written, path) =>
      eachFact(written, path, 'avoided', MOST_LISTED_FACTS),
    ),
  ]);
}

function allowedClause(written: unknown, at: string): Clauses {
  const entries = factEntries(written, at, MOST_LISTED_FACTS);
  if (!entries.ok) return entries;
  return ok([{ at, written, kind: 'allowed', facts: factSet(entries.value) }]);
}

/** Each fact listed is a clause of its own, so that a conflict can name the very one. */
function eachFact(
  written: unknown,
  at: string,
  kind: 'required' | 'avoided',
  most: number,
): Clauses {
  const entries = factEntries(written, at, most);
  if (!entries.ok) return entries;
  return ok(
    entries.value.map((entry, index) => ({
      at: `${at}[${index}]`,
      written: entry,
      kind,
      facts: factSet([entry]),
    })),
  );
}

function factEntries(written: unknown, at: string, most: number): Result<readonly FactEntry[]> {
  const entries = list(written, at, most);
  if (!entries.ok) return entries;
  const wrong = entries.value.findIndex((entry) => !isFact(entry));
  if (wrong >= 0) return fail('notAFact', `${at}[${wrong}]`);
  return ok(entries.value as readonly FactEntry[]);
}

const isFact = (entry: unknown): entry is FactEntry =>
  isDigit(entry) ||
  (Array.isArray(entry) && entry.length === 2 && isDigit(entry[0]) && isDigit(entry[1]));

const isDigit = (value: unknown): value is number =>
  Number.isInteger(value) && (value as number) >= 1 && (value as number) <= 9;
