import { pileValue } from '../../mat/position.ts';
import { digitsRead } from '../../pupils/mat.ts';
import type { DoneWork } from '../done.ts';
import { type EvidencePart, oneGroup } from './evidence.ts';
import { isOver, paperSeen } from './first-written.ts';
import { laidEvidence } from './laid.ts';
import { expectLine, lineSeen } from './line.ts';
import { moveEvidence } from './mat-moves.ts';
import { walkMat } from './mat-walk.ts';
import { pointEvidence } from './point.ts';
import { recordedEvidence } from './recorded.ts';
import { tilesEvidence } from './tiles.ts';

/** Tiles, bars, counts, exchanges, slides, each row as it was said or recorded, the product read. */
export function barsEvidence(work: DoneWork): readonly EvidencePart[] {
  const walk = walkMat(work);
  return [
    tilesEvidence(work),
    laidEvidence(work, walk),
    ...moveEvidence(work, walk),
    recordedEvidence(work, walk),
    readEvidence(work),
    pointEvidence(work),
  ];
}

/** The product as it is read from the bottom row. */
function readEvidence(work: DoneWork): EvidencePart {
  const digits = paperSeen(work).first('product');
  const { origin } = work.problem.mat;
  const stepAt = (at: number) => `read:${origin + at}`;
  const seen = lineSeen({ digits, notes: new Map(), over: isOver(work), stepAt });
  const bottom = work.position.piles[0]!.map(pileValue);
  return oneGroup(['read'], (beliefs) => {
    const made = { digits: digitsRead(beliefs, bottom, 'product'), notes: [], handed: [] };
    return expectLine(seen, made, 0);
  });
}
