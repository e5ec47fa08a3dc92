import { digitsOfAmount } from '../../pupils/written.ts';
import { DERIVED, type ErrorPattern } from '../pattern.ts';

function ninesHandedOn(value: number, last: boolean): { writes: number[]; carry: number } {
  let rest = value;
  let nines = 0;
  while (rest >= 10) {
    rest -= 9;
    nines += 1;
  }
  if (!last) return { writes: [rest], carry: nines };
  return { writes: nines === 0 ? [rest] : [rest, ...digitsOfAmount(nines)], carry: 0 };
}

/** For every nine, not ten, one is handed on. */
export const nineForOne: ErrorPattern = {
  id: 'nine given for one of the next place',
  skill: 'partial',
  stages: ['paper'],
  sign: 'nineForOne',
  beliefs: { '': { column: ({ fact, carry, last }) => ninesHandedOn(fact + carry, last) } },
  repeat: 'exchange',
  source: DERIVED,
  fires: { stage: 'paper', multiplicand: '347', multiplier: '26', gives: '9266' },
  silent: { stage: 'paper', multiplicand: '312', multiplier: '21' },
};
