import type { Action, Line } from '../../mat/action.ts';
import type { Square } from '../../mat/geometry.ts';
import type { Slot } from '../../vocabulary.ts';
import type { Aspect, Ledger, Note } from '../scene.ts';

export function penOf(line: Line, place: number): string {
  return `${line}@${place}`;
}

export function squarePenOf([row, column]: Square, slot: Slot): string {
  return `${row}:${column}@${slot}`;
}

export function beginOf(line: Line): string {
  return `${line}@begin`;
}

function keyOf(action: Extract<Action, { do: 'write' | 'begin' }>): string {
  if (action.do === 'begin') return beginOf(action.line);
  return 'square' in action
    ? squarePenOf(action.square, action.slot)
    : penOf(action.line, action.place);
}

function noted(ledger: Ledger, key: string, act: number): Ledger {
  return { ...ledger, pens: { ...ledger.pens, [key]: act } };
}

const note: Note<Extract<Action, { do: 'write' | 'begin' }>> = (
  { ledger },
  _after,
  action,
  act,
) => ({
  ledger: noted(ledger, keyOf(action), act),
});

/** Remembers which action wrote what stands on paper: what an answer has charged stays with its step. */
export const pens: Aspect = {
  steps: () => [],
  notes: { write: note, begin: note },
  assess: () => {},
};
