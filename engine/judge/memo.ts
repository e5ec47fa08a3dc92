/** What was last made of something, and all that it was made from. */
interface Made {
  a: unknown;
  b: unknown;
  c: unknown;
  d: unknown;
  e: unknown;
  f: unknown;
  g: unknown;
  h: unknown;
  i: unknown;
  j: unknown;
  k: unknown;
  made: unknown;
}

/**
 * What has not changed since it was read is not read again. Changes no judgement, only its cost. A work has one of its
 * own, because one that outlived it would keep the work's last states alive; a plan has one for what is made of it alone.
 * By slot; changed in place by `kept` alone, for it is kept anew at nearly every action.
 */
export type Memo = (Made | undefined)[];

let reserved = 0;

/** The first of so many slots, in every memo, for things of one kind; called once a kind, while the program loads. */
export function slots(count: number): number {
  reserved += count;
  return reserved - count;
}

/** Nothing is remembered yet. */
export function blankMemo(): Memo {
  return new Array<Made | undefined>(reserved).fill(undefined);
}

/** What was made of exactly this, compared by identity; undefined: something of it has changed since. */
export function recalled<T>(
  memo: Memo,
  slot: number,
  a: unknown,
  b?: unknown,
  c?: unknown,
  d?: unknown,
  e?: unknown,
  f?: unknown,
  g?: unknown,
  h?: unknown,
  i?: unknown,
  j?: unknown,
  k?: unknown,
): T | undefined {
  const known = memo[slot];
  if (known === undefined) return undefined;
  const first = known.a === a && known.b === b && known.c === c && known.d === d;
  const next = known.e === e && known.f === f && known.g === g;
  const last = known.h === h && known.i === i && known.j === j && known.k === k;
  return first && next && last ? (known.made as T) : undefined;
}

/** Remembers it, and gives it back; `a` to `k`: everything that decides what was made. */
export function kept<T>(
  memo: Memo,
  slot: number,
  made: T,
  a: unknown,
  b?: unknown,
  c?: unknown,
  d?: unknown,
  e?: unknown,
  f?: unknown,
  g?: unknown,
  h?: unknown,
  i?: unknown,
  j?: unknown,
  k?: unknown,
): T {
  const known = memo[slot];
  if (known === undefined) {
    memo[slot] = { a, b, c, d, e, f, g, h, i, j, k, made };
    return made;
  }
  known.a = a;
  known.b = b;
  known.c = c;
  known.d = d;
  known.e = e;
  known.f = f;
  known.g = g;
  known.h = h;
  known.i = i;
  known.j = j;
  known.k = k;
  known.made = made;
  return made;
}

/** The two in one, for what is asked for now and then; `a` to `e`: everything that decides what is made. */
export function remembered<T>(
  memo: Memo,
  slot: number,
  make: () => T,
  a: unknown,
  b?: unknown,
  c?: unknown,
  d?: unknown,
  e?: unknown,
): T {
  const known = recalled<T>(memo, slot, a, b, c, d, e);
  return known !== undefined ? known : kept(memo, slot, make(), a, b, c, d, e);
}
