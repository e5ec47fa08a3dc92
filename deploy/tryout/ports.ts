import { createServer } from 'node:net';

const isFree = (port: number, host?: string): Promise<boolean> =>
  new Promise((settle) => {
    const server = createServer();
    server.once('error', () => settle(false));
    server.listen({ port, host }, () => server.close(() => settle(true)));
  });

/** The wished port, or the next one that nobody listens on, neither on all addresses nor on this computer's own. */
export const portFrom = async (wished: number, taken: readonly number[] = []): Promise<number> => {
  for (let port = wished; port < wished + 200; port += 1) {
    if (taken.includes(port)) continue;
    if ((await isFree(port)) && (await isFree(port, '127.0.0.1'))) return port;
  }
  throw new Error(`No free port from ${wished} to ${wished + 199}.`);
};
