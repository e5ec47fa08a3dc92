/** The one call a page makes before it has a session. */

/** What opens the activity once more, in a window of its own. */
export interface Reopen {
  action: string;
  fields: Record<string, string>;
}

/** With the view `message` there is no session: `token` is empty. */
export interface Entry {
  token: string;
  /** Seconds. */
  expiresIn: number;
  view: 'work' | 'class' | 'message';
  message?: { code: string; text: string };
  /** Null where the platform allows no second sign-in. */
  reopen: Reopen | null;
}

export type ConfirmAnswer =
  | ({ ok: true } & Entry)
  | { ok: false; code: string; reopen: Reopen | null };

/** Waits between tries, in ms: the same code and proof always lead to the same session. */
const WAITS = [300, 1_000, 3_000];

/** `proof` is null where only a cookie can prove this browser. */
export async function confirmLaunch(code: string, proof: string | null): Promise<ConfirmAnswer> {
  const body = JSON.stringify(proof === null ? { code } : { code, proof });
  for (const wait of [...WAITS, null]) {
    const answer = await post(body);
    if (answer !== null) return answer;
    if (wait !== null) await new Promise((resolve) => setTimeout(resolve, wait));
  }
  return { ok: false, code: 'unreachable', reopen: null };
}

/** Null when it may be tried again. */
async function post(body: string): Promise<ConfirmAnswer | null> {
  try {
    const response = await fetch('/lti/launch/confirm', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
    });
    const answer = await response.json();
    if (response.ok) return { ok: true, ...answer };
    return response.status >= 500
      ? null
      : { ok: false, code: answer.error.code, reopen: answer.reopen ?? null };
  } catch {
    return null;
  }
}
