import { fail, ok, type Result } from '../result.ts';
import type { Range } from './range.ts';

/** What stands under the keys of an object; a key left out is undefined. */
export type Entries<Key extends string> = { readonly [K in Key]?: unknown };

/** Reads an object that has no other keys than these; a key misspelt is better refused than ignored. */
export function entriesOf<Key extends string>(
  value: unknown,
  at: string,
  keys: readonly Key[],
): Result<Entries<Key>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return fail('notAnObject', at);
  }
  const unknown = Object.keys(value).find((key) => !keys.includes(key as Key));
  if (unknown !== undefined) return fail('unknownKey', at === '' ? unknown : `${at}.${unknown}`);
  const own = keys.filter((key) => Object.hasOwn(value, key));
  return ok(
    Object.fromEntries(own.map((key) => [key, (value as Entries<Key>)[key]])) as Entries<Key>,
  );
}

export function list(value: unknown, at: string, most: number): Result<readonly unknown[]> {
  if (!Array.isArray(value)) return fail('notAList', at);
  if (value.length > most) return fail('tooMany', at, { most });
  // A gap in a list is read as undefined, like any other entry that is not there.
  return ok(Array.from(value));
}

export function wholeNumber(value: unknown, at: string, limits: Range): Result<number> {
  if (!Number.isInteger(value)) return fail('notAWholeNumber', at);
  const number = value as number;
  if (number < limits.from || number > limits.to) return fail('outOfRange', at, { ...limits });
  return ok(number);
}

/** `3` or `{ from?, to? }`; an open end is the limit's. */
export function range(value: unknown, at: string, limits: Range): Result<Range> {
  if (typeof value === 'number') {
    const exact = wholeNumber(value, at, limits);
    return exact.ok ? ok({ from: exact.value, to: exact.value }) : exact;
  }
  const entries = entriesOf(value, at, ['from', 'to'] as const);
  if (!entries.ok) return entries;
  const from = wholeNumber(entries.value.from ?? limits.from, `${at}.from`, limits);
  if (!from.ok) return from;
  const to = wholeNumber(entries.value.to ?? limits.to, `${at}.to`, limits);
  if (!to.ok) return to;
  if (from.value > to.value) return fail('emptyRange', at);
  return ok({ from: from.value, to: to.value });
}
