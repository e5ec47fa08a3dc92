import { MAT_LIMITS } from '../../mat/geometry.ts';
import type { Sheet, SquareLine } from '../../mat/sheet.ts';
import { isOver, placed } from '../ledger.ts';
import { kept, recalled, slots } from '../memo.ts';
import type { Moment, OnPaper, Scene } from '../scene.ts';
import { asKept, readRow } from './facts-read.ts';
import { ALL_ENDED, NOT_ENDED, ROW_ENDED } from './facts-row.ts';
import { isFinal } from './rows-written.ts';
import type { Ends, RowKept, RowOfFacts, Squares } from './squares.ts';

/** In mid-work, and when all is over. */
const SQUARES = slots(2);
/** A row as it was last looked at, and as it reads now where that is something else. */
const ROWS = slots(2 * MAT_LIMITS.rows.most);

/** The squares row by row, the slots of each row as they read best: all as usual or all swapped. */
export function readSquares(scene: Scene, moment: Moment): Squares {
  const { position, ledger, memo } = scene;
  const { tiles, paper, finished } = position;
  const asked = moment.at === 'row' ? moment.row : -1;
  const slot = SQUARES + (isOver(moment) ? 1 : 0);
  return (
    recalled(memo, slot, ledger.onPaper.squares, tiles, paper.squares, finished.rows, asked) ??
    kept(
      memo,
      slot,
      allRows(scene, moment),
      ledger.onPaper.squares,
      tiles,
      paper.squares,
      finished.rows,
      asked,
    )
  );
}

function allRows(scene: Scene, moment: Moment): Squares {
  const rows = new Array<RowOfFacts>(scene.plan.rows);
  for (let row = 0; row < rows.length; row += 1) rows[row] = readSquaresOf(scene, moment, row);
  return rows;
}

/** One row of them. */
export function readSquaresOf(scene: Scene, moment: Moment, row: number): RowOfFacts {
  const { plan, position, ledger, memo } = scene;
  const { tiles, paper } = position;
  const line = paper.squares[row];
  const known = ledger.onPaper.squares[row];
  const ends = endsOf(scene, moment, row);
  const past = known === undefined ? undefined : readAsKept(scene, row, line, known);
  if (known?.tiles === tiles && known.ends === ends) return past!;
  const slot = ROWS + 2 * row + 1;
  return (
    recalled(memo, slot, known, line, tiles, ends) ??
    kept(memo, slot, readRow(plan, row, line, tiles, ends, past), known, line, tiles, ends)
  );
}

function endsOf(scene: Scene, moment: Moment, row: number): Ends {
  if (isOver(moment)) return ALL_ENDED;
  return row < scene.plan.up.length && isFinal(scene, moment, row) ? ROW_ENDED : NOT_ENDED;
}

/** A row as it read when it was last looked at; `line`: what stood there then. */
function readAsKept(
  { plan, memo }: Scene,
  row: number,
  line: SquareLine | undefined,
  known: RowKept,
): RowOfFacts {
  const slot = ROWS + 2 * row;
  return (
    recalled(memo, slot, known, line) ??
    kept(memo, slot, asKept(plan, row, line, known), known, line)
  );
}

/**
 * What is to be remembered of the squares now: what is right on them stays right. `before`: what stood on them when
 * they were last looked at.
 */
export function keptSquares(
  scene: Scene,
  moment: Moment,
  before: Sheet['squares'],
): OnPaper['squares'] {
  const { plan, position, ledger, memo } = scene;
  const { tiles, paper } = position;
  let all: (RowKept | undefined)[] | undefined;
  for (let row = 0; row < paper.squares.length; row += 1) {
    const line = paper.squares[row];
    if (line === undefined) continue;
    const known = ledger.onPaper.squares[row];
    const ends = endsOf(scene, moment, row);
    if (line === before[row] && known?.tiles === tiles && known.ends === ends) continue;
    const past = known === undefined ? undefined : readAsKept(scene, row, before[row], known);
    const read = readRow(plan, row, line, tiles, ends, past);
    const now = keptOf(read, known);
    if (now !== known) {
      all ??= placed(ledger.onPaper.squares, row, now);
      all[row] = now;
    }
    kept(memo, ROWS + 2 * row, read, now, line);
  }
  return all ?? ledger.onPaper.squares;
}

function keptOf({ best, lapsed }: RowOfFacts, known: RowKept | undefined): RowKept {
  const { tiles, ends, swapped } = best;
  const same = known?.tiles === tiles && known.ends === ends;
  if (same && known.swapped === swapped && known.lapsed === lapsed) return known;
  return { tiles, ends, swapped, lapsed };
}
