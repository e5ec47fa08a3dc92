import { heldToken } from './session-token.ts';

/** What came of a request. `status` 0: the server was not reached. `body` is the answer as received, for codes that carry data. */
export type Reply<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly status: number; readonly code: string; readonly body: unknown };

const codeOf = (body: unknown): string => {
  const error = (body as { error?: { code?: unknown } } | null)?.error;
  return typeof error?.code === 'string' ? error.code : 'unknown';
};

const readJson = async (response: Response): Promise<unknown> => {
  try {
    return await response.json();
  } catch {
    return null;
  }
};

/** A request that may outlive the page (`keepalive`) is for the last words of a page being closed. */
interface Options {
  readonly method: 'GET' | 'POST';
  readonly body?: unknown;
  readonly keepalive?: boolean;
}

const headers = (): Record<string, string> => {
  const token = heldToken();
  return {
    'content-type': 'application/json',
    ...(token === null ? {} : { authorization: `Bearer ${token}` }),
  };
};

/** The one place of the pages that talks to the server. Never throws: being offline is a value. */
export const request = async <T>(path: string, options: Options): Promise<Reply<T>> => {
  try {
    const response = await fetch(path, {
      method: options.method,
      headers: headers(),
      credentials: 'omit',
      cache: 'no-store',
      keepalive: options.keepalive ?? false,
      signal: AbortSignal.timeout(15_000),
      ...(options.body === undefined ? {} : { body: JSON.stringify(options.body) }),
    });
    const body = await readJson(response);
    if (response.ok) return { ok: true, value: body as T };
    return { ok: false, status: response.status, code: codeOf(body), body };
  } catch {
    return { ok: false, status: 0, code: 'unreached', body: null };
  }
};
