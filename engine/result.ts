/** What may fail by the user's doing is a value: the code says what, `at` names the argument. */
export interface Fault {
  readonly code: string;
  readonly at: string;
  readonly [value: string]: unknown;
}

export type Result<T, F extends Fault = Fault> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: F };

export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function fail(
  code: string,
  at: string,
  values: Record<string, unknown> = {},
): { readonly ok: false; readonly fault: Fault } {
  return { ok: false, fault: { ...values, code, at } };
}
