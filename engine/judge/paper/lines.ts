import type { Desk } from '../../mat/desk.ts';
import { MAT_LIMITS } from '../../mat/geometry.ts';
import { FIRST_CARRIES, LINES, PRODUCT } from '../../mat/sheet.ts';
import { kept as keep, recalled, slots } from '../memo.ts';
import type { Plan, Scene } from '../scene.ts';

/** In place of the index of a line: there is none. */
export const NO_LINE = -1;

/** The line on which a row stands. */
export interface RowLine {
  readonly row: number;
  /** Its index among the lines of the sheet; `NO_LINE`: not begun. */
  readonly line: number;
  /** The multiplier digit that the child touched for it. */
  readonly worked: number;
}

export function holdsDigits({ paper }: Desk, line: number): boolean {
  return line >= 0 && paper.lines[line] !== undefined;
}

const LINES_BY_ROW = slots(1);

/** Rows by row, as they stand now. */
export function rowLines({ plan, position, memo }: Scene): readonly RowLine[] {
  const { kept, begun } = position.paper;
  return (
    recalled(memo, LINES_BY_ROW, kept, begun) ??
    keep(memo, LINES_BY_ROW, linesByRow(plan, position), kept, begun)
  );
}

/** One row is written on the product line, or on its own line as long as that one is empty. */
function linesByRow(plan: Plan, position: Desk): readonly RowLine[] {
  const rows = plan.up.length;
  if (rows === 1) {
    return [rowLine(0, holdsDigits(position, PRODUCT) ? PRODUCT : 0, 0)];
  }
  const lines = plan.up.map(() => NO_LINE);
  const spare: number[] = [];
  for (let line = 0; line < rows; line += 1) {
    const row = position.paper.begun[LINES[line]!];
    if (row === undefined || row >= rows) continue;
    if (!holdsDigits(position, lines[row]!)) lines[row] = line;
    else if (holdsDigits(position, line)) spare.push(line);
  }
  const found = lines.map((line, row) => rowLine(row, line, row));
  for (const line of spare) standIn(plan, position, found, line);
  return found;
}

/** A row worked a second time stands where the lowest row that is not worked was due. */
function standIn(plan: Plan, position: Desk, found: RowLine[], line: number): void {
  const free = found.filter((each) => !holdsDigits(position, each.line));
  const place = free.find(({ row }) => plan.up[row]! > 0) ?? free[0];
  if (place === undefined) return;
  found[place.row] = rowLine(place.row, line, position.paper.begun[LINES[line]!]!);
}

const ROW_LINES: (RowLine | undefined)[] = [];

/** One and the same for all who ask, so that a row is not read again because another was begun. */
function rowLine(row: number, line: number, worked: number): RowLine {
  const at = (row * MAT_LIMITS.rows.most + worked) * (LINES.length + 1) + line + 1;
  const known = ROW_LINES[at];
  if (known !== undefined) return known;
  const made = { row, line, worked };
  ROW_LINES[at] = made;
  return made;
}

/** The carries that belong to the line of a row. */
export function carriesOf(line: number): number {
  return FIRST_CARRIES + line;
}
