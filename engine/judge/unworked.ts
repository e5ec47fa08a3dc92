import type { Position } from '../mat/position.ts';
import { finding, isOver, ownDue } from './ledger.ts';
import { holdsDigits, rowLines } from './paper/lines.ts';
import type { Finding, Moment, Plan, Scene } from './scene.ts';

/**
 * Follow-through is for slips, not for work never begun: what is missing upstream leaves nothing due below, and an
 * untouched problem would earn most of its marks. So at the finish no step of a row is met by having nothing due if
 * the child did nothing in that row, though their own tiles (or the printed numbers) ask for something there. Where
 * nothing at all was laid, said or written, this holds for every row and for the product, whatever the tiles say.
 * A forgotten tile or a single forgotten square among worked rows still costs once.
 */
export function leaveUnworked(scene: Scene, moment: Moment, findings: Finding[]): void {
  if (!isOver(moment)) return;
  const { plan, position } = scene;
  const begun = plan.up.map((_, row) => isBegun(scene, row));
  const nothing = !begun.includes(true) && position.paper.lines.product === undefined;
  const idle = begun.map(
    (some, row) => !some && makesTruly(plan, row) && (nothing || asksFor(plan, position, row)),
  );
  if (!idle.includes(true)) return;
  for (const [step, { kind, row }] of plan.scopes.entries()) {
    const found = findings[step]!;
    if (kind.startsWith('tile') || kind === 'prompt' || found.grade !== 'right') continue;
    const unworked = row >= 0 ? idle[row] === true : nothing;
    if (unworked && (found.follows || kind === 'zero')) findings[step] = finding('none', false);
  }
}

function makesTruly(plan: Plan, row: number): boolean {
  return plan.partials[row]!.some((digit) => digit !== 0);
}

/** Whether the child's own tiles ask for more than one square in the row; printed numbers always do. */
function asksFor(plan: Plan, position: Position, row: number): boolean {
  if (!plan.scopes.some(({ kind }) => kind.startsWith('tile'))) return true;
  let squares = 0;
  for (let column = 0; column < plan.columns; column += 1) {
    if ((ownDue(position, [row, column]) ?? 0) > 0) squares += 1;
  }
  return squares > 1;
}

/** Whether the child laid, said or wrote anything for the row. */
function isBegun({ plan, position, ledger }: Scene, row: number): boolean {
  const { paper, said } = position;
  const { line } = rowLines(plan, position)[row]!;
  return (
    ledger.plots.some(({ lays }) => lays.some(({ square }) => square[0] === row)) ||
    said.rows[row] !== undefined ||
    Object.keys(paper.squares).some((square) => square.startsWith(`${row}:`)) ||
    // Where there are several lines, the child began this one for the row.
    (line !== null && (plan.up.length > 1 || holdsDigits(position, line)))
  );
}
