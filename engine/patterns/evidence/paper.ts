import { type Beliefs, RIGHT_WAY } from '../../pupils/beliefs.ts';
import { productOf, type StandingRow } from '../../pupils/paper.ts';
import type { DoneWork } from '../done.ts';
import { type EvidencePart, type Group, oneGroup } from './evidence.ts';
import { isOver, type PaperSeen, paperSeen } from './first-written.ts';
import { expectLine, lineSeen } from './line.ts';
import { rowReader } from './paper-rows.ts';
import { pointEvidence } from './point.ts';

/** What the child wrote, read once: the rows, the sum, the point. */
export function paperEvidence(work: DoneWork): readonly EvidencePart[] {
  const paper = paperSeen(work);
  const rows = rowReader(work, paper);
  const single = work.problem.multiplier.digits.length === 1;
  const sum = sumOf(work, paper);
  const standing = rows.standing(rows.read(RIGHT_WAY));
  return [
    {
      bears: ['fact', 'partner', 'works', 'shift', 'column'],
      expect: (beliefs) => rows.read(beliefs).groups,
    },
    ...(single
      ? []
      : [
          // Where the rows begin matters only to those who join them.
          oneGroup(['add', 'join'], (beliefs) =>
            sum(beliefs, beliefs.join === undefined ? standing : rows.standing(rows.read(beliefs))),
          ),
        ]),
    pointEvidence(work),
  ];
}

function sumOf(
  work: DoneWork,
  paper: PaperSeen,
): (beliefs: Beliefs, rows: readonly StandingRow[]) => Group {
  const { multiplier, mat } = work.problem;
  const notes = paper.first('carry:product');
  const digits = paper.first('product');
  const stepAt = (at: number) => `sum:${mat.origin + at}`;
  const seen = lineSeen({ digits, notes, over: isOver(work), stepAt });
  const noted = (at: number) => notes.get(at);
  return (beliefs, rows) =>
    expectLine(seen, productOf(beliefs, rows, multiplier.digits.length, noted), 0);
}
