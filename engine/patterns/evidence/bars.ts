import { digitsRead } from '../../pupils/mat.ts';
import type { DoneWork } from '../done.ts';
import { type Strand, sighting, type Topic } from './evidence.ts';
import { firstOn, isOver, NOTHING_WRITTEN } from './first-done.ts';
import { laidSeen } from './laid.ts';
import { expectLine, type LineSeen, lineSeen, spellLine } from './line.ts';
import { movesSeen } from './mat-moves.ts';
import { type MatWalk, walkMat } from './mat-walk.ts';
import { pointSeen } from './point.ts';
import { recordedSeen } from './recorded.ts';
import { tilesSeen } from './tiles.ts';

/** Tiles, bars, counts, exchanges, slides, each row as it was said or recorded, the product read. */
export function barsSeen(work: DoneWork): readonly Strand[] {
  const walk = walkMat(work);
  return [
    tilesSeen(work, walk.first),
    laidSeen(work, walk),
    ...movesSeen(work, walk),
    ...recordedSeen(work, walk),
    productSeen(work, walk),
    pointSeen(work),
  ];
}

/** The product as it is read from the beads on the bottom row. */
interface ProductSeen {
  readonly seen: LineSeen;
  readonly bottom: readonly number[];
}

const PRODUCT: Topic<ProductSeen> = {
  bears: ['read'],
  expect({ mat }, { seen, bottom }, beliefs) {
    const made = { digits: digitsRead(beliefs, bottom, 'product'), notes: [], handed: [] };
    return expectLine(seen, made, 0, (at) => `read:${mat.origin + at}`);
  },
};

function productSeen(work: DoneWork, { mat, first }: MatWalk): Strand {
  const seen = lineSeen(firstOn(first, 'product').digits, NOTHING_WRITTEN, isOver(work));
  const bottom = mat.beads[0]!;
  const key = bottom.slice();
  spellLine(key, seen);
  return [sighting(PRODUCT, key, { seen, bottom })];
}
