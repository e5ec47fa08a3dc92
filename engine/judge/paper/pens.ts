import type { Action, ActionOf } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import { lineIndex, PRODUCT } from '../../mat/sheet.ts';
import type { Slot } from '../../vocabulary.ts';
import { withPaper } from '../changes.ts';
import { placed, replaced } from '../ledger.ts';
import type { Aspect, Ledger, Note, Pens } from '../scene.ts';
import type { Entry, SquareRow } from './squares.ts';

const NO_PENS: Pens = { acts: [], crossed: [], begun: undefined };

/** Of the line with this index. */
export function pensOf({ pens, sumPens }: Ledger, line: number): Pens {
  if (line < 0) return NO_PENS;
  return (line < PRODUCT ? pens[line] : sumPens[line - PRODUCT]) ?? NO_PENS;
}

function withPens(ledger: Ledger, line: number, pens: Pens): Ledger {
  return line < PRODUCT
    ? withPaper(ledger, { pens: placed(ledger.pens, line, pens) })
    : withPaper(ledger, { sumPens: placed(ledger.sumPens, line - PRODUCT, pens) });
}

/** Without an entry: rubbed out. */
function withEntry(ledger: Ledger, square: Square, slot: Slot, entry: Entry | undefined): Ledger {
  const [row, column] = square;
  const { columns, own, fromRight } = ledger.squareRows[row]!;
  const line: SquareRow = {
    columns: columns.includes(column) ? columns : [...columns, column],
    own: slot === 'own' ? placed(own, column, entry) : own,
    fromRight: slot === 'fromRight' ? placed(fromRight, column, entry) : fromRight,
  };
  return withPaper(ledger, { squareRows: replaced(ledger.squareRows, row, line) });
}

const note: Note<Extract<Action, { do: 'write' | 'begin' }>> = (
  { ledger, plan },
  _after,
  action,
  act,
) => {
  if (action.do === 'begin') {
    const line = lineIndex(action.line);
    const { acts, crossed } = pensOf(ledger, line);
    return { ledger: withPens(ledger, line, { acts, crossed, begun: act }) };
  }
  if ('square' in action) {
    const { square, slot, digit, of } = action;
    return { ledger: withEntry(ledger, square, slot, { digit, of, square, slot, act }) };
  }
  const line = lineIndex(action.line);
  const { acts, crossed, begun } = pensOf(ledger, line);
  const now = placed(acts, action.place - plan.problem.mat.origin, act);
  return { ledger: withPens(ledger, line, { acts: now, crossed, begun }) };
};

/** A carry is rubbed out when it is used up: the digit that it fed was still made with it. */
const noteRub: Note<ActionOf<'rub'>> = ({ ledger, plan, position }, _after, action, act) => {
  if ('square' in action)
    return { ledger: withEntry(ledger, action.square, action.slot, undefined) };
  if (!action.line.startsWith('carry')) return { ledger };
  const line = lineIndex(action.line);
  const at = action.place - plan.problem.mat.origin;
  const given = position.paper.lines[line]!.digits[at]!;
  const { acts, crossed, begun } = pensOf(ledger, line);
  const now = placed(crossed, at, { act, given });
  return { ledger: withPens(ledger, line, { acts, crossed: now, begun }) };
};

/** Remembers which action wrote what stands on paper: what an answer has charged stays with its step. */
export const pens: Aspect = {
  steps: () => [],
  notes: { write: note, begin: note, rub: noteRub },
  assess: () => {},
};
