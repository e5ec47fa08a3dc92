import { DEAD, type DigitMachine } from './digit-machine.ts';
import { type FactSet, holdsFact } from './fact-set.ts';

/**
 * Watches which facts a multiplicand makes with the digits of a multiplier.
 * @param digits the multiplier's digits that are not zero
 * @param permitted the only facts that may occur, or null
 * @param required one fact of each of these sets must occur
 */
export function factMachine(
  digits: readonly number[],
  permitted: FactSet | null,
  required: readonly FactSet[],
): DigitMachine {
  const dead = (laid: number): boolean =>
    permitted !== null && laid > 0 && digits.some((digit) => !holdsFact(permitted, laid, digit));
  const met = (laid: number): number =>
    required.reduce(
      (mask, set, bit) =>
        mask | (digits.some((digit) => holdsFact(set, laid, digit)) ? 1 << bit : 0),
      0,
    );
  const tiles = Array.from({ length: 10 }, (_, laid) => ({ dead: dead(laid), met: met(laid) }));
  const all = 2 ** required.length - 1;
  const within = tiles.reduce((mask, tile) => (tile.dead ? mask : mask | tile.met), 0);
  const hopeless = within !== all;
  return {
    start: 0,
    radix: all + 1,
    step: (state, laid) => (hopeless || tiles[laid]!.dead ? DEAD : state | tiles[laid]!.met),
    accepts: (state) => state === all,
  };
}
