import type { Line } from '../../mat/action.ts';
import type { Position } from '../../mat/position.ts';
import { remembered } from '../memo.ts';
import type { Plan, Scene } from '../scene.ts';

/** The lines of rows in the order of writing; no mat has more rows. */
export const PARTIALS = Array.from({ length: 6 }, (_, index): Line => `partial:${index}`);

/** The line on which a row stands. `worked`: the multiplier digit that the child touched for it. */
export interface RowLine {
  readonly row: number;
  readonly line: Line | null;
  readonly worked: number;
}

export function holdsDigits({ paper }: Position, line: Line): boolean {
  return paper.lines[line] !== undefined;
}

/** Rows by row, as they stand now. */
export function rowLines({ plan, position, memo }: Scene): readonly RowLine[] {
  const { lines, begun } = position.paper;
  return remembered(memo, 'lines', [lines, begun], () => linesByRow(plan, position));
}

/** One row is written on the product line, or on its own line as long as that one is empty. */
function linesByRow(plan: Plan, position: Position): readonly RowLine[] {
  const rows = plan.up.length;
  if (rows === 1) {
    const line: Line = holdsDigits(position, 'product') ? 'product' : 'partial:0';
    return [{ row: 0, line, worked: 0 }];
  }
  const lines: (Line | null)[] = plan.up.map(() => null);
  const spare: Line[] = [];
  for (let index = 0; index < rows; index += 1) {
    const line = PARTIALS[index]!;
    const row = position.paper.begun[line];
    if (row === undefined || row >= rows) continue;
    const before = lines[row]!;
    if (before === null || !holdsDigits(position, before)) lines[row] = line;
    else if (holdsDigits(position, line)) spare.push(line);
  }
  const found = lines.map((line, row): RowLine => ({ row, line, worked: row }));
  for (const line of spare) standIn(plan, position, found, line);
  return found;
}

/** A row worked a second time stands where the lowest row that is not worked was due. */
function standIn(plan: Plan, position: Position, found: RowLine[], line: Line): void {
  const free = found.filter((each) => each.line === null || !holdsDigits(position, each.line));
  const place = free.find(({ row }) => plan.up[row]! > 0) ?? free[0];
  if (place === undefined) return;
  found[place.row] = { row: place.row, line, worked: position.paper.begun[line]! };
}

const CARRIES: Readonly<Partial<Record<Line, Line>>> = {
  product: 'carry:product',
  'partial:0': 'carry:0',
  'partial:1': 'carry:1',
  'partial:2': 'carry:2',
  'partial:3': 'carry:3',
  'partial:4': 'carry:4',
  'partial:5': 'carry:5',
};

/** The carries that belong to a line. */
export function carryLine(line: Line): Line {
  return CARRIES[line] ?? (line.replace('partial', 'carry') as Line);
}
