import { type Constraints, productLengths, type Size } from './constraints.ts';
import { type DigitGraph, digitGraph } from './digit-graph.ts';
import type { DigitMachine } from './digit-machine.ts';
import { factMachine } from './fact-machine.ts';
import type { MultiplierGroup } from './multipliers.ts';
import { rowMachine } from './row-machine.ts';
import type { Bound } from './table.ts';
import { isFree, zeroMachine } from './zeros.ts';

/** The multiplicands, up to `longest` digits, that suit every multiplier of the group. */
export function multiplicandsFor(
  constraints: Constraints,
  group: MultiplierGroup,
  longest: number,
): DigitGraph {
  const { pile, permitted, required, zeros } = constraints;
  const machines: DigitMachine[] = [];
  if (!isFree(zeros.multiplicand)) machines.push(zeroMachine(zeros.multiplicand));
  if (permitted || required.length > 0) {
    const digits = group.rows.map(({ digit }) => digit);
    machines.push(factMachine(digits, permitted, required));
  }
  const followed = pile ? group.rows : group.rows.filter(({ exchanges }) => exchanges);
  if (followed.length > 0) machines.push(rowMachine(followed, pile));
  return digitGraph(machines, longest);
}

/** What the digits wanted of the product ask of a multiplicand beside this multiplier, if anything. */
export function boundFor(constraints: Constraints, size: Size, multiplier: number): Bound | null {
  const lengths = constraints.productDigits && productLengths(size, constraints.productDigits);
  if (lengths === null || lengths === 'both') return null;
  const smallestLong = 10 ** (size.multiplicand + size.multiplier - 1);
  return {
    threshold: Math.ceil(smallestLong / multiplier),
    side: lengths === 'long' ? 'atLeast' : 'below',
  };
}
