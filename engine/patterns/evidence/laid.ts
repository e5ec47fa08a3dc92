import { barsOfRow } from '../../pupils/pairs.ts';
import type { DoneWork } from '../done.ts';
import { type EvidencePart, type Expectation, oneGroup, ROOM } from './evidence.ts';
import { isOver } from './first-written.ts';
import type { MatWalk } from './mat-walk.ts';

const BEADS = 40;

/** The beads laid on each square, by the pupil's own tiles: in whatever bars, their sum counts. */
export function laidEvidence(work: DoneWork, { laid }: MatWalk): EvidencePart {
  const { problem, position } = work;
  const [across, up] = [problem.multiplicand.digits.length, problem.multiplier.digits.length];
  const steps = laid.map((squares, row) =>
    squares.map((_, column) => `laid:${Math.min(row, up - 1)}:${Math.min(column, across - 1)}`),
  );
  return oneGroup(['fact', 'partner', 'works', 'aside', 'lay'], (beliefs) =>
    laid.flatMap((squares, row) => {
      const done = isOver(work) || position.finished.rows.includes(row);
      const meant = squares.map(() => 0);
      for (const { square, bars } of barsOfRow(problem.mat, beliefs, position.tiles, row)) {
        for (const { kind, count } of bars) meant[square[1]]! += kind * count;
      }
      return squares.flatMap((beads, column): Expectation[] => {
        const [given, expected] = [beads || null, meant[column]! || null];
        if (given === null && (!done || expected === null)) return [];
        const step = steps[row]![column]!;
        return [{ key: row * ROOM + column, step, given, expected, among: BEADS }];
      });
    }),
  );
}
