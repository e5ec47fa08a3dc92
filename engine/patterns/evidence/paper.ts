import type { Beliefs } from '../../pupils/beliefs.ts';
import { productOf, type StandingRow } from '../../pupils/paper.ts';
import type { DoneWork } from '../done.ts';
import type { Expectation } from './evidence.ts';
import { isOver, type PaperSeen, paperSeen } from './first-written.ts';
import { expectLine } from './line.ts';
import { readRows, rowsSeen } from './paper-rows.ts';
import { expectPoint } from './point.ts';

/** What the child wrote, read once; then every belief is held against it. */
export function paperEvidence(work: DoneWork): (beliefs: Beliefs) => Expectation[] {
  const { problem } = work;
  const paper = paperSeen(work);
  const over = isOver(work);
  const rows = rowsSeen(work, paper);
  return (beliefs) => {
    const { expectations, standing } = readRows(problem, beliefs, rows, over);
    const single = problem.multiplier.digits.length === 1;
    const sum = single ? [] : expectSum(work, beliefs, paper, standing);
    return [...expectations, ...sum, ...expectPoint(work, beliefs)];
  };
}

function expectSum(
  work: DoneWork,
  beliefs: Beliefs,
  paper: PaperSeen,
  rows: readonly StandingRow[],
): Expectation[] {
  const { multiplier, mat } = work.problem;
  const notes = paper.first('carry:product');
  const made = productOf(beliefs, rows, multiplier.digits.length, (at) => notes.get(at));
  const digits = paper.first('product');
  const stepAt = (at: number) => `sum:${mat.origin + at}`;
  return expectLine({ digits, notes, over: isOver(work), name: 'sum', stepAt }, made, 0);
}
