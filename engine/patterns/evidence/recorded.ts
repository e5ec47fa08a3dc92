import type { Line } from '../../mat/action.ts';
import { digitsRead } from '../../pupils/mat.ts';
import { shiftOf } from '../../pupils/paper.ts';
import { digitsOn } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { readAligned } from './aligned.ts';
import { type Strand, sighting, type Topic } from './evidence.ts';
import { firstOn, isOver, NOTHING_WRITTEN } from './first-done.ts';
import { type LineSeen, lineSeen, spellLine } from './line.ts';
import type { MatWalk } from './mat-walk.ts';

/** A row written from the mat: the beads that lay there when it was first written on, the digits on the edges. */
interface RecordedRow {
  readonly row: number;
  readonly seen: LineSeen;
  readonly piles: readonly number[];
  readonly across: readonly number[];
  readonly up: readonly number[];
}

const RECORDED: Topic<RecordedRow> = {
  bears: ['read', 'shift'],
  expect({ mat }, { row, seen, piles, across, up }, beliefs) {
    const made = { digits: digitsRead(beliefs, piles, row), notes: [], handed: [] };
    const line = {
      seen,
      row,
      origin: mat.origin,
      due(length: number) {
        return shiftOf(beliefs, { row, across, up, length, first: 0 });
      },
      made() {
        return made;
      },
    };
    return readAligned(line, null).group;
  },
};

export function recordedSeen(work: DoneWork, walk: MatWalk): Strand[] {
  if (walk.recorded.size === 0) return [];
  const { tiles, paper: written } = work.position;
  const [across, up] = [digitsOn(tiles.bottom), digitsOn(tiles.right)];
  const begun = Object.entries(written.begun);
  return [...walk.recorded].flatMap(([row, piles]): Strand[] => {
    const line = begun.find(([, begunFor]) => begunFor === row)?.[0];
    if (line === undefined) return [];
    const { digits } = firstOn(walk.first, line as Line);
    const seen = lineSeen(digits, NOTHING_WRITTEN, isOver(work));
    const key = [row, across.length, up.length, ...piles, ...across, ...up];
    spellLine(key, seen);
    return [[sighting(RECORDED, key, { row, seen, piles, across, up })]];
  });
}
