/** A browser's storage, as far as the pages use it. */
export const newStorage = (): Storage => {
  const kept: Record<string, string> = {};
  const methods = {
    getItem: (key: string) => kept[key] ?? null,
    setItem: (key: string, value: string) => {
      kept[key] = value;
    },
    removeItem: (key: string) => {
      delete kept[key];
    },
  };
  return new Proxy(kept, {
    get: (_, name) => methods[name as keyof typeof methods],
  }) as unknown as Storage;
};
