import { pileValue } from '../../mat/position.ts';
import type { Beliefs } from '../../pupils/beliefs.ts';
import { digitsRead } from '../../pupils/mat.ts';
import type { DoneWork } from '../done.ts';
import type { Expectation } from './evidence.ts';
import { isOver, paperSeen } from './first-written.ts';
import { expectLaid } from './laid.ts';
import { expectLine } from './line.ts';
import { expectMoves } from './mat-moves.ts';
import { walkMat } from './mat-walk.ts';
import { expectPoint } from './point.ts';
import { expectRecorded } from './recorded.ts';
import { tilesEvidence } from './tiles.ts';

/** Tiles, bars, counts, exchanges, slides, each row as it was said or recorded, the product read. */
export function barsEvidence(work: DoneWork): (beliefs: Beliefs) => Expectation[] {
  const tiles = tilesEvidence(work);
  const walk = walkMat(work);
  const digits = paperSeen(work).first('product');
  const { origin } = work.problem.mat;
  const stepAt = (at: number) => `read:${origin + at}`;
  const read = { digits, notes: new Map(), over: isOver(work), name: 'read', stepAt };
  const bottom = work.position.piles[0]!.map(pileValue);
  return (beliefs) => [
    ...tiles(beliefs),
    ...expectLaid(work, walk, beliefs),
    ...expectMoves(work, walk, beliefs),
    ...expectRecorded(work, walk, beliefs),
    ...expectLine(
      read,
      { digits: digitsRead(beliefs, bottom, 'product'), notes: [], handed: [] },
      0,
    ),
    ...expectPoint(work, beliefs),
  ];
}
