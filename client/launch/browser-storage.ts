/** The browser's own storage, which may throw when site data are blocked: then it simply holds nothing. */
const PREFIX = 'launch.';
/** A login is good for ten minutes; what is older was abandoned. */
const LIFETIME = 600_000;

export function keepProof(key: string, proof: string, now: number): void {
  attempt(() => {
    for (const old of abandoned(now)) localStorage.removeItem(old);
    localStorage.setItem(PREFIX + key, `${now} ${proof}`);
  });
}

export function recallProof(key: string): string | null {
  const kept = attempt(() => localStorage.getItem(PREFIX + key));
  return kept?.split(' ')[1] ?? null;
}

export function dropProof(key: string): void {
  attempt(() => localStorage.removeItem(PREFIX + key));
}

function abandoned(now: number): string[] {
  return Object.keys(localStorage).filter((name) => {
    const at = Number(localStorage.getItem(name)?.split(' ')[0]);
    return name.startsWith(PREFIX) && !(now - at < LIFETIME);
  });
}

/** The outcome of `step`, or undefined where the browser forbids it. */
export function attempt<T>(step: () => T): T | undefined {
  try {
    return step();
  } catch {
    return undefined;
  }
}
