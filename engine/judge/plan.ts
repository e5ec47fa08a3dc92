import { amountOf, digitsOf } from '../numerals/numeral.ts';
import type { Problem } from '../problem.ts';
import type { Aspect, BarePlan, Plan, Scope } from './scene.ts';

/** Works the true problem and lists its steps, in the order of the aspects. */
export function makePlan(problem: Problem, aspects: readonly Aspect[]): Plan {
  const { multiplicand, multiplier, mat } = problem;
  const amount = amountOf(multiplicand);
  const bare: BarePlan = {
    problem,
    columns: mat.columns,
    rows: mat.rows,
    across: multiplicand.digits,
    up: multiplier.digits,
    product: digitsOf(amount * amountOf(multiplier)),
    partials: multiplier.digits.map((digit) => digitsOf(amount * BigInt(digit))),
  };
  const steps = aspects.flatMap((aspect) => aspect.steps(bare));
  const indexOf = new Map(steps.map(({ id }, index) => [id, index]));
  return { ...bare, steps, indexOf, scopes: steps.map(({ id }) => scopeOf(id)) };
}

const BY_ROW = ['laid', 'counted', 'said', 'fact', 'where', 'row', 'zero', 'slid'];

function scopeOf(id: string): Scope {
  const [kind = '', first = '', second = ''] = id.split(':');
  if (kind === 'tile')
    return { kind: `tile:${first}`, row: first === 'right' ? Number(second) : -1 };
  return { kind, row: BY_ROW.includes(kind) ? Number(first) : -1 };
}
