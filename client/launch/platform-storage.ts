/**
 * The platform's own storage by window messages (1EdTech "LTI Client Side postMessages" and
 * "LTI postMessage Storage", 0.1): for browsers that give a framed page no storage that survives.
 * Messages go to one origin only, and only that origin and window are believed.
 */
import { attempt } from './browser-storage.ts';

/** `frame` is the platform's `lti_storage_target`; `origin` that of its authentication address. */
export interface PlatformStorage {
  frame: string;
  origin: string;
}

interface Reply {
  value?: unknown;
}

/** How long a platform may take to answer, in ms; many never do. */
const PATIENCE = 1_000;

export async function putProof(
  storage: PlatformStorage,
  key: string,
  proof: string,
): Promise<void> {
  await ask(storage, { subject: 'lti.put_data', key, value: proof });
}

export async function getProof(storage: PlatformStorage, key: string): Promise<string | null> {
  const reply = await ask(storage, { subject: 'lti.get_data', key });
  return typeof reply?.value === 'string' ? reply.value : null;
}

function ask(
  storage: PlatformStorage,
  message: { subject: string; key: string; value?: string },
): Promise<Reply | null> {
  const window_ = storageWindow(storage.frame);
  if (window_ === null) return Promise.resolve(null);
  const id = crypto.randomUUID();
  return new Promise((resolve) => {
    const done = (reply: Reply | null) => {
      removeEventListener('message', listen);
      clearTimeout(timer);
      resolve(reply);
    };
    const listen = (event: MessageEvent) => {
      if (event.origin !== storage.origin || event.source !== window_) return;
      if (event.data?.message_id === id && event.data.subject === `${message.subject}.response`)
        done(event.data);
    };
    const timer = setTimeout(() => done(null), PATIENCE);
    addEventListener('message', listen);
    window_.postMessage({ ...message, message_id: id }, storage.origin);
  });
}

/** `_parent` is the window that holds or opened ours; any other name is a frame beside us in it. */
function storageWindow(frame: string): Window | null {
  const holder = window.parent !== window ? window.parent : (window.opener as Window | null);
  if (holder === null || frame === '_parent') return holder;
  // A name may also be one of the window's own properties: only a frame beside us has the same parent.
  return (
    attempt(() => {
      const named = (holder as unknown as Record<string, Window>)[frame];
      return named?.parent === holder ? named : null;
    }) ?? null
  );
}
