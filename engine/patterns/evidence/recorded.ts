import type { Line } from '../../mat/action.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';
import { digitsRead } from '../../pupils/mat.ts';
import { shiftOf } from '../../pupils/paper.ts';
import { digitsOn } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { readAligned } from './aligned.ts';
import type { Expectation } from './evidence.ts';
import { isOver, paperSeen } from './first-written.ts';
import type { MatWalk } from './mat-walk.ts';

const NO_NOTES: ReadonlyMap<number, number> = new Map();

/** The rows written from the mat, each by what lay there when it was first written on. */
export function expectRecorded(work: DoneWork, walk: MatWalk, beliefs: Beliefs): Expectation[] {
  const { problem, position } = work;
  const { origin } = problem.mat;
  const paper = paperSeen(work);
  const [across, up] = [digitsOn(position.tiles.bottom), digitsOn(position.tiles.right)];
  return [...walk.recorded].flatMap(([row, piles]) => {
    const line = Object.entries(position.paper.begun).find(([, begun]) => begun === row)?.[0];
    if (line === undefined) return [];
    const digits = paper.first(line as Line);
    const made = { digits: digitsRead(beliefs, piles, row), notes: [], handed: [] };
    const stepAt = (at: number) => (at < row ? `zero:${row}:${at}` : `row:${row}:${origin + at}`);
    const seen = { digits, notes: NO_NOTES, over: isOver(work), name: `row:${row}`, stepAt };
    const due = (length: number) => shiftOf(beliefs, { row, across, up, length, first: 0 });
    return readAligned({ seen, row, origin, due, made: () => made }).expectations;
  });
}
