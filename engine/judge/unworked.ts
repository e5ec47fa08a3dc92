import type { Desk } from '../mat/desk.ts';
import { finding, isOver, ownDue } from './ledger.ts';
import { holdsDigits, NO_LINE, rowLines } from './paper/lines.ts';
import type { Finding, Ledger, Moment, Plan, Scene } from './scene.ts';

/**
 * Follow-through is for slips, not for work left out: what is missing upstream leaves nothing due below, and a problem
 * that was hardly touched would earn most of its marks. So at the finish no step is met by having nothing due
 * (nor by a zero that the true problem has there as well)
 * - in a row where the child did nothing, though their own tiles (or the printed numbers) ask for something there;
 * - anywhere, where less than half of the squares (on paper: of the digits of the rows) that the true problem asks for
 *   were worked at all, whatever the tiles say and whatever was said or written below.
 * A forgotten tile or a single forgotten square among worked ones still costs once.
 */
export function leaveUnworked(scene: Scene, moment: Moment, findings: Finding[]): void {
  if (!isOver(moment)) return;
  const { plan } = scene;
  const hardly = isHardlyWorked(scene, findings);
  const idle = hardly ? plan.making : idleRows(scene);
  if (idle === 0) return;
  for (let step = 0; step < plan.scopes.length; step += 1) {
    const { kind, row } = plan.scopes[step]!;
    const found = findings[step]!;
    if (kind.startsWith('tile') || kind === 'prompt' || found.grade !== 'right') continue;
    if (found.given !== null && found.given !== 0) continue;
    const unworked = row >= 0 ? (idle & (1 << row)) !== 0 : hardly;
    if (unworked) findings[step] = finding('none', false);
  }
}

/** Bit r: the child did nothing for row r, though it makes something and their own tiles ask for something there. */
function idleRows(scene: Scene): number {
  const { plan, position, ledger } = scene;
  const laidOn = rowsLaidOn(ledger);
  let idle = 0;
  for (let row = 0; row < plan.up.length; row += 1) {
    const bit = 1 << row;
    if ((plan.making & bit) === 0 || (laidOn & bit) !== 0) continue;
    if (!isBegunOnPaper(scene, row) && asksFor(plan, position, row)) idle |= bit;
  }
  return idle;
}

/** Whether less than half of what the rows ask for in the true problem has anything of the child's on it. */
function isHardlyWorked(scene: Scene, findings: readonly Finding[]): boolean {
  const { asked, onSquares } = scene.plan;
  if (onSquares) return 2 * squaresWorked(scene) < asked.length;
  let written = 0;
  for (let index = 0; index < asked.length; index += 1) {
    if (findings[asked[index]!]!.given !== null) written += 1;
  }
  // One digit left out of a row of one digit is a slip like any other, if the rest was written.
  const oneLeftOut = asked.length - written === 1 && scene.position.paper.kept.length > 0;
  return 2 * written < asked.length && !oneLeftOut;
}

/** Squares on which bars were laid or digits stand, the wrong ones too: whoever mistook a square has worked. */
function squaresWorked({ position, ledger }: Scene): number {
  let laid = 0;
  for (let index = 0; index < ledger.plots.length; index += 1) {
    if (ledger.plots[index]!.laid > 0) laid += 1;
  }
  return Math.max(laid, position.paper.touched);
}

/** Whether the child's own tiles ask for more than one square in the row; printed numbers always do. */
function asksFor(plan: Plan, position: Desk, row: number): boolean {
  if (plan.tables.bottom.length === 0) return true;
  let squares = 0;
  for (let column = 0; column < plan.columns; column += 1) {
    if ((ownDue(position, [row, column]) ?? 0) > 0) squares += 1;
  }
  return squares > 1;
}

/** Bit r: bars were laid on row r. */
function rowsLaidOn({ plots }: Ledger): number {
  let rows = 0;
  for (let index = 0; index < plots.length; index += 1) {
    const { lays } = plots[index]!;
    for (let lay = 0; lay < lays.length; lay += 1) rows |= 1 << lays[lay]!.square[0];
  }
  return rows;
}

/** Whether the child said or wrote anything for the row. */
function isBegunOnPaper(scene: Scene, row: number): boolean {
  const { plan, position } = scene;
  const { paper, said } = position;
  const { line } = rowLines(scene)[row]!;
  return (
    said.rows[row] !== undefined ||
    paper.squares[row] !== undefined ||
    // Where there are several lines, the child began this one for the row.
    (line !== NO_LINE && (plan.up.length > 1 || holdsDigits(position, line)))
  );
}
