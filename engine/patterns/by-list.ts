/** A list of small whole numbers that spells something out. */
export type Spelled = readonly number[];

/** In such a list: there is nothing. */
export const BLANK = -1;

interface Entry<T> {
  readonly list: Spelled;
  readonly value: T;
  readonly next: Entry<T> | undefined;
}

/** What is kept by lists, found by a number that is made of each: texts take several times as long to make and find. */
export type ByList<T> = Map<number, Entry<T>>;

export function keptAt<T>(all: ByList<T>, list: Spelled): T | undefined {
  let entry = all.get(mixed(list));
  while (entry !== undefined && !isSameList(entry.list, list)) entry = entry.next;
  return entry?.value;
}

/** The list has nothing kept yet. */
export function keepAt<T>(all: ByList<T>, list: Spelled, value: T): void {
  const number = mixed(list);
  all.set(number, { list, value, next: all.get(number) });
}

/** Other lists rarely give the same. */
function mixed(list: Spelled): number {
  let number = list.length;
  for (let at = 0; at < list.length; at += 1) {
    number = Math.imul(number ^ list[at]!, 0x01000193);
    number ^= number >>> 15;
  }
  return number & 0x3fffffff;
}

export function isSameList(one: Spelled, other: Spelled): boolean {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at += 1) if (one[at] !== other[at]) return false;
  return true;
}
