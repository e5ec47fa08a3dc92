import { fail, ok, type Result } from '../result.ts';

export type Fields = Readonly<Record<string, unknown>>;

export function readFields(value: unknown, at: string): Result<Fields> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return fail('notAnObject', at);
  }
  return ok(value as Fields);
}

export function readInteger(
  value: unknown,
  at: string,
  least: number,
  most: number,
): Result<number> {
  if (typeof value !== 'number' || !Number.isInteger(value)) return fail('notAWholeNumber', at);
  if (value < least || value > most) return fail('outOfRange', at, { least, most });
  return ok(value === 0 ? 0 : value);
}

export function readOneOf<T extends string | number>(
  value: unknown,
  at: string,
  words: readonly T[],
): Result<T> {
  const word = words.find((each) => each === value);
  return word === undefined ? fail('unknownWord', at, { known: words }) : ok(word);
}

export function readBoolean(value: unknown, at: string): Result<boolean> {
  return typeof value === 'boolean' ? ok(value) : fail('notYesOrNo', at);
}

/** What nobody reads is a misspelt field: said at once, not dropped. */
export function strangerIn(fields: Fields, known: readonly string[], at: string): Result<null> {
  for (const name of Object.keys(fields)) {
    if (!known.includes(name)) return fail('unknownField', at === '' ? name : `${at}.${name}`);
  }
  return ok(null);
}
