import { fail, ok, type Result } from '../result.ts';
import { readFields, readInteger, strangerIn } from '../wire/read.ts';
import type { Range } from './range.ts';

/** What stands in the fields of an object; a field left out is undefined. */
export type Entries<Name extends string> = { readonly [N in Name]?: unknown };

/** Reads an object that has no other fields than these. */
export function entriesOf<Name extends string>(
  value: unknown,
  at: string,
  names: readonly Name[],
): Result<Entries<Name>> {
  const fields = readFields(value, at);
  if (!fields.ok) return fields;
  const stranger = strangerIn(fields.value, names, at);
  if (!stranger.ok) return stranger;
  const own = names.filter((name) => Object.hasOwn(fields.value, name));
  return ok(Object.fromEntries(own.map((name) => [name, fields.value[name]])) as Entries<Name>);
}

export function list(value: unknown, at: string, most: number): Result<readonly unknown[]> {
  if (!Array.isArray(value)) return fail('notAList', at);
  if (value.length > most) return fail('tooMany', at, { most });
  // A gap in a list is read as undefined, like any other entry that is not there.
  return ok(Array.from(value));
}

export const wholeNumber = (value: unknown, at: string, limits: Range): Result<number> =>
  readInteger(value, at, limits.from, limits.to);

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
