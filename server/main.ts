import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { assemble, type Placeweave } from './assemble.ts';
import { type Config, readConfig } from './config.ts';
import { type Database, openDatabase } from './database/open.ts';
import { httpServer } from './http.ts';
import { createLog, type Log } from './log.ts';
import { pagesAreBuilt } from './pages.ts';
import { openSecret } from './secret.ts';

/** How long requests under way may take to end before the server goes anyway. */
const LAST_REQUESTS_MS = 8_000;

const began = Date.now();
const settings = readConfig(process.env);
if (settings.ok) await main(settings.config);
else complain(settings.complaints);

function complain(complaints: readonly string[]): void {
  for (const complaint of complaints) process.stderr.write(`Placeweave: ${complaint}\n`);
  process.exitCode = 1;
}

async function main(config: Config): Promise<void> {
  const log = createLog(config.logLevel);
  // A second net: every promise has its own; one that was forgotten must not take the children's work with it.
  process.on('unhandledRejection', (err) => log.error({ err }, 'a rejection that nobody handled'));
  if (!pagesAreBuilt()) return complain(['The pages are not built. Remedy: npm run build.']);
  const opened = await openDatabase(config, log);
  if (!opened.ok) return complain([opened.fault.text]);
  const database = opened.value;
  const known = await openSecret(config, database.connection);
  if (!known.ok) {
    await database.close();
    return complain([known.complaint]);
  }
  const placeweave = await assemble({ config, secret: known.secret, database, log });
  const server = httpServer(placeweave.app);
  const port = await listen(server, config.port);
  if (port === null) {
    await placeweave.close();
    await database.close();
    return complain([
      `Port ${config.port} is taken. Remedy: set PLACEWEAVE_PORT (and PLACEWEAVE_URL) to another one.`,
    ]);
  }
  await placeweave.delivery.start();
  closeOnSignal(server, placeweave, database, log);
  log.info({ event: 'ready', url: config.url, port, ms: Date.now() - began }, 'ready');
}

function listen(server: Server, port: number): Promise<number | null> {
  return new Promise((settle, fail) => {
    server.once('error', (fault: NodeJS.ErrnoException) =>
      fault.code === 'EADDRINUSE' ? settle(null) : fail(fault),
    );
    server.listen(port, () => settle((server.address() as AddressInfo).port));
  });
}

/** The first signal lets what is under way end; the database goes last, so that nothing acknowledged is lost. */
function closeOnSignal(server: Server, placeweave: Placeweave, database: Database, log: Log): void {
  let closing = false;
  const close = async (signal: string) => {
    if (closing) return;
    closing = true;
    log.info({ event: 'closing', signal }, 'closing');
    await lastRequests(server);
    await placeweave.delivery.stop();
    await placeweave.close();
    await database.close();
    log.info({ event: 'closed' }, 'closed');
    process.exit(0);
  };
  for (const signal of ['SIGTERM', 'SIGINT']) process.on(signal, close);
}

async function lastRequests(server: Server): Promise<void> {
  const ended = new Promise((settle) => server.close(settle));
  server.closeIdleConnections();
  const cut = setTimeout(() => server.closeAllConnections(), LAST_REQUESTS_MS);
  await ended;
  clearTimeout(cut);
}
