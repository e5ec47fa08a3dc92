import type { Stage } from '../vocabulary.ts';
import type { Beliefs } from './beliefs.ts';
import { digitsOfAmount, handedOn } from './written.ts';

/** A faulty procedure that the catalogue does not hold: what is measured with it is silence. */
export interface Outsider {
  readonly id: string;
  readonly stages: readonly Stage[];
  readonly beliefs: Beliefs;
}

const sumOf = (digits: readonly (number | null)[]) =>
  digits.reduce<number>((sum, digit) => sum + (digit ?? 0), 0);

/** Regular, faulty, and in no file of the catalogue. */
export const OUTSIDERS: readonly Outsider[] = [
  {
    id: 'facts rounded down to tens',
    stages: ['paper', 'cells'],
    beliefs: { fact: (_at, right) => (right < 10 ? right : right - (right % 10)) },
  },
  {
    id: 'every fact two too many',
    stages: ['paper', 'cells'],
    beliefs: { fact: ({ a, b }, right) => (a * b === 0 ? right : right + 2) },
  },
  {
    id: 'even digits halved',
    stages: ['paper', 'cells'],
    beliefs: { fact: ({ a, b }, right) => (a % 2 === 0 ? (a / 2) * b : right) },
  },
  {
    id: 'larger digit squared',
    stages: ['paper', 'cells'],
    beliefs: { fact: ({ a, b }) => (a > b ? a * a : b * b) },
  },
  {
    id: 'carry doubled',
    stages: ['paper'],
    beliefs: {
      column: ({ fact, carry, last }, right) =>
        carry > 0 ? handedOn(fact + 2 * carry, last) : right,
    },
  },
  {
    id: 'tens and units swapped after the units',
    stages: ['paper'],
    beliefs: {
      column: ({ fact, carry, column, last }, right) => {
        const value = fact + carry;
        if (column === 0 || last || value < 10) return right;
        return { writes: [9 - (value % 10)], carry: Math.floor(value / 10) };
      },
    },
  },
  {
    id: 'difference of the rows',
    stages: ['paper'],
    beliefs: {
      add: ({ digits, last }) => {
        const there = digits.filter((digit) => digit !== null);
        const made = Math.max(...there, 0) - Math.min(...there, 9);
        return handedOn(there.length < 2 ? sumOf(digits) : made, last);
      },
    },
  },
  {
    id: 'largest digit of the column brought down',
    stages: ['paper', 'cells'],
    beliefs: {
      add: ({ digits }) => ({
        writes: [Math.max(0, ...digits.map((digit) => digit ?? 0))],
        carry: 0,
      }),
    },
  },
  {
    id: 'two carried in every sum',
    stages: ['paper', 'cells'],
    beliefs: {
      add: ({ digits, column, last }) => {
        const sum = sumOf(digits) + (column > 0 ? 2 : 0);
        return last ? { writes: digitsOfAmount(sum), carry: 0 } : { writes: [sum % 10], carry: 2 };
      },
    },
  },
  {
    id: 'nines written for two-digit products',
    stages: ['paper'],
    beliefs: {
      column: ({ fact, carry, last }, right) =>
        !last && fact + carry >= 10 ? { ...right, writes: [9] } : right,
    },
  },
  {
    id: 'beads counted in pairs, the odd one dropped',
    stages: ['bars', 'record'],
    beliefs: { count: (_at, right) => right - (right % 2) },
  },
  {
    id: 'half of the ten-bars exchanged',
    stages: ['bars', 'record'],
    beliefs: {
      exchange: ({ tens }, right) => right && { ...right, ones: Math.ceil(tens / 2) },
    },
  },
  {
    id: 'never more than five bars laid',
    stages: ['bars', 'record'],
    beliefs: {
      lay: (_at, right) => right.map(({ kind, count }) => ({ kind, count: Math.min(5, count) })),
    },
  },
  {
    id: 'each bar as often as it is long',
    stages: ['bars', 'record'],
    beliefs: { lay: (_at, right) => right.map(({ kind }) => ({ kind, count: kind })) },
  },
  {
    id: 'a bar more for every row up',
    stages: ['bars', 'record'],
    beliefs: {
      lay: ({ row }, right) => right.map(({ kind, count }) => ({ kind, count: count + row })),
    },
  },
  {
    id: 'digits built in order of size',
    stages: ['bars', 'record', 'cells'],
    beliefs: {
      build: ({ edge, digits }, right) =>
        edge === 'bottom' ? [...digits].sort((one, other) => one - other) : right,
    },
  },
  {
    id: 'two squares to the left in every second column',
    stages: ['bars', 'record', 'cells'],
    beliefs: { aside: ({ column }) => (column % 2 === 1 ? 2 : 0) },
  },
  {
    id: 'nine read for every odd pile',
    stages: ['bars', 'record'],
    beliefs: {
      read: (_at, right) => right.map((digit) => (digit % 2 === 1 ? 9 : digit)),
    },
  },
  {
    id: 'every row begun one place too far left',
    stages: ['paper', 'record'],
    beliefs: { shift: ({ row }) => row + 1 },
  },
  {
    id: 'ten too many in every two-digit product',
    stages: ['cells'],
    beliefs: { fact: (_at, right) => (right < 10 ? right : right + 10) },
  },
  {
    id: 'zeros copied as ones',
    stages: ['bars', 'record', 'cells'],
    beliefs: { build: (_at, right) => right.map((digit) => digit || 1) },
  },
  {
    id: 'every second pile slid one square too far right',
    stages: ['bars', 'record'],
    beliefs: { slide: ({ from }) => (from[1] % 2 === 1 ? -1 : 0) },
  },
  {
    id: 'tens of the upper rows laid on the units square',
    stages: ['bars', 'record', 'cells'],
    beliefs: { aside: ({ row, column }) => (row > 0 && column === 1 ? -1 : 0) },
  },
  {
    id: 'figures of the units row gathered one place too high',
    stages: ['cells'],
    beliefs: { gather: ({ square }, right) => (square[0] === 0 ? right + 1 : right) },
  },
];
