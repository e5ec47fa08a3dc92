/**
 * A set of multiplication facts of the digits 1 to 9, order ignored: 6 × 7 and 7 × 6 are one fact.
 * `set[10 * a + b]` is 1 for a fact inside. Pairs with a zero are no facts and lie in no set.
 */
export type FactSet = Uint8Array;

/** One entry of a list: a pair is one fact, a single digit the whole table of that digit. */
export type FactEntry = number | readonly [number, number];

const matches = (entry: FactEntry, a: number, b: number): boolean =>
  typeof entry === 'number'
    ? a === entry || b === entry
    : (a === entry[0] && b === entry[1]) || (a === entry[1] && b === entry[0]);

export function factSet(entries: readonly FactEntry[]): FactSet {
  const set = new Uint8Array(100);
  for (let a = 1; a <= 9; a++) {
    for (let b = 1; b <= 9; b++) {
      if (entries.some((entry) => matches(entry, a, b))) set[10 * a + b] = 1;
    }
  }
  return set;
}

export const holdsFact = (set: FactSet, a: number, b: number): boolean => set[10 * a + b] === 1;
