/** Lets tasks of the same key run one after another within this process; the database guards against other processes. */
export function createTurns() {
  const last = new Map<string, Promise<unknown>>();
  return function inTurn<T>(key: string, task: () => Promise<T>): Promise<T> {
    const before = last.get(key) ?? Promise.resolve();
    const mine = before.then(task, task);
    last.set(key, mine);
    const forget = () => {
      if (last.get(key) === mine) last.delete(key);
    };
    mine.then(forget, forget);
    return mine;
  };
}
