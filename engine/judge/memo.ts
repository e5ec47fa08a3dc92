/** What was last made of something, and all that it was made from. */
interface Made {
  readonly from: readonly unknown[];
  readonly made: unknown;
}

/** One work's own: what has not changed since it was read is not read again. Changes no judgement, only its cost. */
export type Memo = Map<string, Made>;

/** `from`: everything that decides what is made, compared by identity. One `name` always makes the same kind of thing. */
export function remembered<T>(
  memo: Memo,
  name: string,
  from: readonly unknown[],
  make: () => T,
): T {
  const known = memo.get(name);
  if (known !== undefined && isSame(known.from, from)) return known.made as T;
  const made = make();
  memo.set(name, { from, made });
  return made;
}

function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let index = 0; index < one.length; index += 1) {
    if (one[index] !== other[index]) return false;
  }
  return true;
}
