import type { Square } from '../../engine/child.ts';

/** What the grid is walked over: a square, or a place for a tile. Below row 0 lie the bottom tiles, right of column 0 the right ones. */
export type Cell =
  | { readonly at: 'square'; readonly row: number; readonly column: number }
  | { readonly at: 'bottom' | 'right'; readonly index: number };

export const squareCell = ([row, column]: Square): Cell => ({ at: 'square', row, column });
export const tileCell = (edge: 'bottom' | 'right', index: number): Cell => ({ at: edge, index });
export const cellKey = (cell: Cell): string =>
  cell.at === 'square' ? `square ${cell.row} ${cell.column}` : `${cell.at} ${cell.index}`;

export const cellOf = (key: string): Cell => {
  const [at, first, second] = key.split(' ');
  if (at === 'bottom' || at === 'right') return tileCell(at, Number(first));
  return squareCell([Number(first), Number(second)]);
};

interface Shape {
  readonly rows: number;
  readonly columns: number;
}

const OUTSIDE = -1;

const position = (cell: Cell): [number, number] => {
  if (cell.at === 'square') return [cell.row, cell.column];
  return cell.at === 'bottom' ? [OUTSIDE, cell.index] : [cell.index, OUTSIDE];
};

const cellAt = (row: number, column: number): Cell => {
  if (row === OUTSIDE) return tileCell('bottom', Math.max(column, 0));
  if (column === OUTSIDE) return tileCell('right', row);
  return squareCell([row, column]);
};

const clamp = (value: number, least: number, most: number) =>
  Math.min(Math.max(value, least), most);

const MOVES: Record<string, (row: number, column: number, shape: Shape) => [number, number]> = {
  ArrowLeft: (row, column) => [row, column + 1],
  ArrowRight: (row, column) => [row, column - 1],
  ArrowUp: (row, column) => [row + 1, column],
  ArrowDown: (row, column) => [row - 1, column],
  Home: (row, _column, shape) => [row, shape.columns - 1],
  End: (row) => [row, 0],
};

/** Where a walking key leads; null when the key does not walk. The left of the screen is the higher place. */
export const step = (
  cell: Cell,
  event: {
    readonly key: string;
    readonly ctrlKey: boolean;
    readonly altKey: boolean;
    readonly metaKey: boolean;
  },
  shape: Shape,
): Cell | null => {
  const move = MOVES[event.key];
  if (move === undefined || event.altKey || event.metaKey) return null;
  if (event.ctrlKey && event.key === 'Home') return squareCell([shape.rows - 1, shape.columns - 1]);
  if (event.ctrlKey && event.key === 'End') return squareCell([0, 0]);
  const [row, column] = position(cell);
  const [r, c] = move(row, column, shape);
  const lowest = row === OUTSIDE ? 0 : OUTSIDE;
  return cellAt(
    clamp(r, column === OUTSIDE ? 0 : OUTSIDE, shape.rows - 1),
    clamp(c, lowest, shape.columns - 1),
  );
};
