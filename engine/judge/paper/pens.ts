import type { Action, ActionOf, Line } from '../../mat/action.ts';
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

/** A carry that was crossed out after its digit was written. */
export function crossedOutOf(line: Line, place: number): string {
  return `${line}@${place} crossed out`;
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

/** A carry is rubbed out when it is used up: the digit that it fed was still made with it. */
const noteRub: Note<ActionOf<'rub'>> = ({ ledger, position }, _after, action, act) => {
  if ('square' in action || !action.line.startsWith('carry')) return { ledger };
  const { line, place } = action;
  const given = position.paper.lines[line]![place]!;
  const key = crossedOutOf(line, place);
  const latched = { ...ledger.latched, [key]: { given, follows: false } };
  return { ledger: { ...noted(ledger, key, act), latched } };
};

/** Remembers which action wrote what stands on paper: what an answer has charged stays with its step. */
export const pens: Aspect = {
  steps: () => [],
  notes: { write: note, begin: note, rub: noteRub },
  assess: () => {},
};
