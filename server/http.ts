import { createServer, type RequestListener, type Server } from 'node:http';

/**
 * A server that listens to nothing yet. Proxies, and other programs that keep a connection for a while, must not find
 * it closed just when they have sent a child's work on it: ours stay open for longer than is usual for them.
 */
export const httpServer = (app: RequestListener): Server =>
  createServer({ requestTimeout: 30_000, keepAliveTimeout: 75_000 }, app);
