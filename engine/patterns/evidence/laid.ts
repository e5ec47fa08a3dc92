import type { Beliefs } from '../../pupils/beliefs.ts';
import { barsOfRow } from '../../pupils/pairs.ts';
import type { DoneWork } from '../done.ts';
import type { Expectation } from './evidence.ts';
import { isOver } from './first-written.ts';
import type { MatWalk } from './mat-walk.ts';

const BEADS = 40;

/** The beads laid on each square, by the pupil's own tiles: in whatever bars, their sum counts. */
export function expectLaid(work: DoneWork, { laid }: MatWalk, beliefs: Beliefs): Expectation[] {
  const { problem, position } = work;
  const [across, up] = [problem.multiplicand.digits.length, problem.multiplier.digits.length];
  return laid.flatMap((squares, row) => {
    const done = isOver(work) || position.finished.rows.includes(row);
    const meant = squares.map(() => 0);
    for (const { square, bars } of barsOfRow(problem.mat, beliefs, position.tiles, row)) {
      for (const { kind, count } of bars) meant[square[1]]! += kind * count;
    }
    return squares.flatMap((given, column): Expectation[] => {
      const expected = meant[column]!;
      if (given === 0 && (!done || expected === 0)) return [];
      const step = `laid:${Math.min(row, up - 1)}:${Math.min(column, across - 1)}`;
      return [{ key: `laid:${row}:${column}`, step, given, expected, among: BEADS }];
    });
  });
}
