import type { Action, ActionOf, Line } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import type { Slot } from '../../vocabulary.ts';
import { replaced } from '../ledger.ts';
import type { Aspect, Ledger, Note, Pens } from '../scene.ts';

const NO_PENS: Pens = { acts: [], crossed: [], begun: undefined };

export function pensOf({ pens }: Ledger, line: Line): Pens {
  return pens[line] ?? NO_PENS;
}

function withPens(ledger: Ledger, line: Line, pens: Pens): Ledger {
  return { ...ledger, pens: { ...ledger.pens, [line]: pens } };
}

/** Without `act`: rubbed out. */
function withSquarePen(ledger: Ledger, [row, column]: Square, slot: Slot, act?: number): Ledger {
  const { columns, acts } = ledger.squarePens[row]!;
  const pens = {
    columns: columns.includes(column) ? columns : [...columns, column],
    acts: act === undefined ? acts : { ...acts, [slot]: placed(acts[slot], column, act) },
  };
  return { ...ledger, squarePens: replaced(ledger.squarePens, row, pens) };
}

/** The list with the item at the place, filled up with nothing below it. */
export function placed<T>(
  list: readonly (T | undefined)[],
  at: number,
  item: T,
): (T | undefined)[] {
  const copy = list.slice();
  while (copy.length < at) copy.push(undefined);
  copy[at] = item;
  return copy;
}

const note: Note<Extract<Action, { do: 'write' | 'begin' }>> = (
  { ledger, plan },
  _after,
  action,
  act,
) => {
  if (action.do === 'begin') {
    const before = pensOf(ledger, action.line);
    return { ledger: withPens(ledger, action.line, { ...before, begun: act }) };
  }
  if ('square' in action) return { ledger: withSquarePen(ledger, action.square, action.slot, act) };
  const { line, place } = action;
  const { acts, crossed, begun } = pensOf(ledger, line);
  const now = placed(acts, place - plan.problem.mat.origin, act);
  return { ledger: withPens(ledger, line, { acts: now, crossed, begun }) };
};

/** A carry is rubbed out when it is used up: the digit that it fed was still made with it. */
const noteRub: Note<ActionOf<'rub'>> = ({ ledger, plan, position }, _after, action, act) => {
  if ('square' in action) return { ledger: withSquarePen(ledger, action.square, action.slot) };
  if (!action.line.startsWith('carry')) return { ledger };
  const { line, place } = action;
  const given = position.paper.lines[line]![place]!;
  const at = place - plan.problem.mat.origin;
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
