import type { Sent } from '../api/attempt.ts';

/**
 * What this device has not yet been told is saved, kept through reload and network loss.
 * Keyed by attempt and a hash of the person: on a shared device the next child neither sees nor sends it.
 * One entry of the storage for each open page, so that two pages never overwrite each other.
 */
const PREFIX = 'placeweave-unsent';
const LIFETIME = 14 * 24 * 60 * 60_000;

interface Kept {
  /** Milliseconds since 1970 by this device's clock. */
  readonly at: number;
  readonly actions: readonly Sent[];
}

const read = (storage: Storage, key: string): Kept | null => {
  try {
    const kept = JSON.parse(storage.getItem(key) ?? 'null') as Kept | null;
    return Array.isArray(kept?.actions) ? kept : null;
  } catch {
    return null;
  }
};

const keysOf = (storage: Storage, prefix: string): string[] =>
  Object.keys(storage).filter((key) => key.startsWith(`${prefix}:`));

/** Forgets what lay unsent for two weeks, whoever did it. */
export const purgeUnsent = (storage: Storage, now: number): void => {
  for (const key of keysOf(storage, PREFIX))
    if (!(now - (read(storage, key)?.at ?? 0) < LIFETIME)) storage.removeItem(key);
};

export interface UnsentStore {
  /** Everything unsent of this person in this attempt, oldest page first. */
  load(): Sent[];
  /** False when the device refuses to keep it. */
  add(sent: Sent): boolean;
  /** Drops what the server has acknowledged. */
  drop(done: (sent: Sent) => boolean): void;
}

/** `storage` null: the browser gives this page none. */
export const openUnsentStore = (
  storage: Storage | null,
  attempt: string,
  person: string,
  now: () => number,
): UnsentStore => {
  const prefix = `${PREFIX}:${attempt}:${person}`;
  const write = (key: string, actions: readonly Sent[]): boolean => {
    try {
      if (actions.length === 0) storage?.removeItem(key);
      else storage?.setItem(key, JSON.stringify({ at: now(), actions } satisfies Kept));
      return storage !== null;
    } catch {
      return false;
    }
  };
  const pages = () =>
    storage === null
      ? []
      : keysOf(storage, prefix).map((key) => ({ key, kept: read(storage, key) }));
  return {
    load: () =>
      pages()
        .sort((a, b) => (a.kept?.at ?? 0) - (b.kept?.at ?? 0))
        .flatMap(({ kept }) => kept?.actions ?? []),
    add: (sent) => {
      const key = `${prefix}:${sent.client}`;
      const kept = storage === null ? null : read(storage, key);
      return write(key, [...(kept?.actions ?? []), sent]);
    },
    drop: (done) => {
      for (const { key, kept } of pages())
        write(
          key,
          (kept?.actions ?? []).filter((sent) => !done(sent)),
        );
    },
  };
};
