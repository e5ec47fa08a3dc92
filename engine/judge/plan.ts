import type { Square } from '../mat/geometry.ts';
import { amountOf, digitsOf } from '../numerals/numeral.ts';
import type { Problem } from '../problem.ts';
import { blankMemo } from './memo.ts';
import type { Aspect, BarePlan, Plan, Scope, TableKind } from './scene.ts';
import type { Step } from './work.ts';

/** Works the true problem and lists its steps, in the order of the aspects. */
export function makePlan(problem: Problem, aspects: readonly Aspect[]): Plan {
  const { multiplicand, multiplier, mat } = problem;
  const amount = amountOf(multiplicand);
  const squares = Array.from(
    { length: mat.rows * mat.columns },
    (_, index): Square => [Math.floor(index / mat.columns), index % mat.columns],
  );
  const { rows, columns } = mat;
  const [across, up] = [multiplicand.digits, multiplier.digits];
  const ownHeaps = squares.map(([row], index) => ({ pairs: [index], rows: 1 << row }));
  const product = digitsOf(amount * amountOf(multiplier));
  const partials = up.map((digit) => digitsOf(amount * BigInt(digit)));
  const trueRows = up.map((digit, row) => amount * BigInt(digit) * 10n ** BigInt(row));
  const bare: BarePlan = {
    problem,
    columns,
    rows,
    across,
    up,
    squares,
    ownHeaps,
    product,
    partials,
    trueRows,
  };
  const steps = aspects.flatMap((aspect) => aspect.steps(bare));
  const indexOf = new Map(steps.map(({ id }, index) => [id, index]));
  const scopes = steps.map(({ id }) => scopeOf(id));
  const tables = tablesOf(bare, steps);
  const { making, asked, onSquares } = askedIn(bare, scopes);
  // Written out, not spread: what is spread is laid out in a way of its own each time, which makes every look at it slow.
  return {
    problem,
    columns,
    rows,
    across,
    up,
    squares,
    ownHeaps,
    product,
    partials,
    trueRows,
    steps,
    indexOf,
    scopes,
    tables,
    making,
    asked,
    onSquares,
    memo: blankMemo(),
    told: [],
  };
}

/** What the true problem asks of the child at least, by which it is told whether the child worked at all. */
function askedIn({ across, up, partials }: BarePlan, scopes: readonly Scope[]) {
  const isSquare = ({ kind }: Scope) => kind === 'laid' || kind === 'fact';
  const onSquares = scopes.some(isSquare);
  const making = partials.reduce(
    (rows, digits, row) => (digits.some((digit) => digit !== 0) ? rows | (1 << row) : rows),
    0,
  );
  const asked = [...scopes.keys()].filter((step) => {
    const { kind, row, last: column } = scopes[step]!;
    if (!(onSquares ? isSquare(scopes[step]!) : kind === 'row')) return false;
    return (making & (1 << row)) !== 0 && (!onSquares || (across[column] ?? 0) * up[row]! !== 0);
  });
  return { making, asked, onSquares };
}

function tablesOf(bare: BarePlan, steps: readonly Step[]): Plan['tables'] {
  const tables: Record<TableKind, number[]> = {
    bottom: [],
    right: [],
    laid: [],
    counted: [],
    fact: [],
    where: [],
    said: [],
    slid: [],
    settled: [],
    read: [],
    sum: [],
    row: [],
    zero: [],
  };
  const { origin } = bare.problem.mat;
  for (const [index, { id }] of steps.entries()) {
    const [kind = '', first = '', second = ''] = id.split(':');
    if (kind === 'tile') tables[first === 'right' ? 'right' : 'bottom'][Number(second)] = index;
    const table = Object.hasOwn(tables, kind) ? tables[kind as TableKind] : undefined;
    if (table === undefined) continue;
    const place = BY_PLACE.includes(kind) ? origin : 0;
    const key =
      second === ''
        ? Number(first) - place
        : Number(first) * bare.columns + Number(second) - (kind === 'row' ? origin : 0);
    table[key] = index;
  }
  return tables;
}

const BY_PLACE = ['settled', 'read', 'sum'];
const BY_ROW = ['laid', 'counted', 'said', 'fact', 'where', 'row', 'zero', 'slid'];

function scopeOf(id: string): Scope {
  const [kind = '', first = '', second = ''] = id.split(':');
  if (kind === 'tile')
    return {
      kind: `tile:${first}`,
      row: first === 'right' ? Number(second) : -1,
      last: Number(second),
    };
  const last = second === '' ? -1 : Number(second);
  return { kind, row: BY_ROW.includes(kind) ? Number(first) : -1, last };
}
