import { barsOfRow } from '../../pupils/pairs.ts';
import type { Tiles } from '../../pupils/tiles.ts';
import type { DoneWork } from '../done.ts';
import { type Expectation, type Strand, sighting, type Topic } from './evidence.ts';
import { isOver } from './first-done.ts';
import type { MatWalk } from './mat-walk.ts';
import { spellTiles } from './tiles.ts';

const BEADS = 40;

/** The beads laid on a row's squares, by the tiles that lie there. */
interface RowLaid {
  readonly row: number;
  readonly beads: readonly number[];
  readonly tiles: Tiles;
  /** Whether all of it should be there. */
  readonly done: boolean;
}

/** In whatever bars they were laid, their sum counts. */
const LAID: Topic<RowLaid> = {
  bears: ['fact', 'partner', 'works', 'aside', 'lay'],
  expect({ mat, multiplicand, multiplier }, { row, beads, tiles, done }, beliefs) {
    const meant = beads.map(() => 0);
    for (const { square, bars } of barsOfRow(mat, beliefs, tiles, row)) {
      for (const { kind, count } of bars) meant[square[1]]! += kind * count;
    }
    const rows = Math.min(row, multiplier.digits.length - 1);
    const found: Expectation[] = [];
    for (const [column, laid] of beads.entries()) {
      const [given, expected] = [laid || null, meant[column]! || null];
      if (given === null && (!done || expected === null)) continue;
      const step = `laid:${rows}:${Math.min(column, multiplicand.digits.length - 1)}`;
      found.push({ key: column, step, given, expected, among: BEADS });
    }
    return found;
  },
};

export function laidSeen(work: DoneWork, { laid }: MatWalk): Strand {
  const { tiles, finished } = work.position;
  const over = isOver(work);
  return laid.map((beads, row) => {
    const done = over || finished.rows.includes(row);
    const key = [row, done ? 1 : 0, ...beads];
    spellTiles(key, tiles.bottom);
    spellTiles(key, tiles.right);
    return sighting(LAID, key, { row, beads, tiles, done });
  });
}
