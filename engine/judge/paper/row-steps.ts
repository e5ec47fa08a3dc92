import type { BarePlan, Plan } from '../scene.ts';
import type { Step } from '../work.ts';

/** A multiplier digit 0; a multiplicand 0 makes no zero rows. */
export function isZeroRow({ across, up }: BarePlan, row: number): boolean {
  return up[row] === 0 && up.length > 1 && across.some((digit) => digit > 0);
}

function digitId({ problem }: BarePlan, row: number, column: number): string {
  return `row:${row}:${problem.mat.origin + row + column}`;
}

/** A row's placeholders and its digits above them; a zero row has one step alone. */
export function rowSteps(plan: BarePlan): readonly Step[] {
  return plan.up.flatMap((_, row): Step[] => {
    const zeros = Array.from(
      { length: row },
      (__, index): Step => ({
        id: `zero:${row}:${index}`,
        skill: 'placeholder',
      }),
    );
    if (isZeroRow(plan, row)) return [{ id: digitId(plan, row, 0), skill: 'partial' }];
    const digits = plan.partials[row]!.map(
      (__, column): Step => ({
        id: digitId(plan, row, column),
        skill: 'partial',
      }),
    );
    return [...zeros, ...digits];
  });
}

/** The step of a column of the row; beyond the row's digits the highest of them. */
export function digitStep(plan: Plan, row: number, column: number): number {
  const most = isZeroRow(plan, row) ? 0 : plan.partials[row]!.length - 1;
  const nearest = Math.max(0, Math.min(column, most));
  return plan.tables.row[row * plan.columns + row + nearest] ?? -1;
}

/** The step of a placeholder; where the row has none, its lowest digit. */
export function zeroStep(plan: Plan, row: number, placeholder: number): number {
  const nearest = Math.min(placeholder, row - 1);
  const step = nearest < 0 ? undefined : plan.tables.zero[row * plan.columns + nearest];
  return step ?? digitStep(plan, row, 0);
}

/** The step of a column of the sum; beyond the product the highest. */
export function sumStep(plan: Plan, column: number): number {
  return plan.tables.sum[Math.min(column, plan.product.length - 1)] ?? -1;
}
