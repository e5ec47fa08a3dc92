import type { Line } from '../../mat/action.ts';
import { digitsRead } from '../../pupils/mat.ts';
import { shiftOf } from '../../pupils/paper.ts';
import { digitsOn } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { readAligned } from './aligned.ts';
import type { EvidencePart } from './evidence.ts';
import { isOver, paperSeen } from './first-written.ts';
import { lineSeen } from './line.ts';
import type { MatWalk } from './mat-walk.ts';

/** The rows written from the mat, each by what lay there when it was first written on. */
export function recordedEvidence(work: DoneWork, walk: MatWalk): EvidencePart {
  const { problem, position } = work;
  const { origin } = problem.mat;
  const paper = paperSeen(work);
  const [across, up] = [digitsOn(position.tiles.bottom), digitsOn(position.tiles.right)];
  const rows = [...walk.recorded].flatMap(([row, piles]) => {
    const line = Object.entries(position.paper.begun).find(([, begun]) => begun === row)?.[0];
    if (line === undefined) return [];
    const digits = paper.first(line as Line);
    const stepAt = (at: number) => (at < row ? `zero:${row}:${at}` : `row:${row}:${origin + at}`);
    const seen = lineSeen({ digits, notes: new Map(), over: isOver(work), stepAt });
    return [{ row, piles, seen }];
  });
  return {
    bears: ['read', 'shift'],
    expect: (beliefs) =>
      rows.map(({ row, piles, seen }) => {
        const made = { digits: digitsRead(beliefs, piles, row), notes: [], handed: [] };
        const due = (length: number) => shiftOf(beliefs, { row, across, up, length, first: 0 });
        return readAligned({ seen, row, origin, due, made: () => made }).group;
      }),
  };
}
