import { createReadStream, existsSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { pagePolicy } from '../../server/lti/headers.ts';
import type { AttemptBook } from './attempt-book.ts';

const DIST = fileURLToPath(new URL('../../client/dist', import.meta.url));
const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.woff2': 'font/woff2',
};

/** How the server answers just now: `away` breaks every connection of the API off, `signedOut` knows no session. */
export type Mood = 'well' | 'away' | 'signedOut';

const bodyOf = async (req: IncomingMessage): Promise<unknown> => {
  const parts: Buffer[] = [];
  for await (const part of req) parts.push(part as Buffer);
  return JSON.parse(Buffer.concat(parts).toString() || 'null');
};

const json = (res: ServerResponse, status: number, body: unknown): void => {
  res.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
};

const file = (res: ServerResponse, path: string): void => {
  const asset = normalize(path).startsWith('/assets/') ? normalize(path) : '/index.html';
  if (!existsSync(DIST + asset)) return void res.writeHead(404).end();
  res.writeHead(200, {
    'content-type': TYPES[extname(asset)] ?? 'application/octet-stream',
    'content-security-policy': pagePolicy([]),
  });
  createReadStream(DIST + asset).pipe(res);
};

/** The built pages with the policy they are really served under, and the API of an attempt, in memory: a book for each token. */
export class PageServer {
  mood: Mood = 'well';
  /** Tokens whose connections break off, while others are well. */
  readonly away = new Set<string>();
  readonly books = new Map<string, AttemptBook>();
  classroom: unknown = null;
  private readonly server = createServer((req, res) => void this.answer(req, res));

  async start(): Promise<string> {
    await new Promise<void>((resolve) => this.server.listen(0, '127.0.0.1', resolve));
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  stop(): Promise<void> {
    this.server.closeAllConnections();
    return new Promise((resolve) => this.server.close(() => resolve()));
  }

  private async answer(req: IncomingMessage, res: ServerResponse): Promise<void> {
    const { pathname } = new URL(req.url ?? '/', 'http://page');
    if (!pathname.startsWith('/api/')) return file(res, pathname);
    const body = await bodyOf(req);
    const token = req.headers.authorization?.replace('Bearer ', '') ?? '';
    if (this.mood === 'away' || this.away.has(token)) return void req.socket.destroy();
    const book = this.books.get(token);
    if (pathname === '/api/class') return json(res, 200, this.classroom);
    if (book === undefined || this.mood === 'signedOut')
      return json(res, 401, { error: { code: 'noSession' } });
    this.api(book, pathname, body, res);
  }

  private api(book: AttemptBook, path: string, body: unknown, res: ServerResponse): void {
    if (path === '/api/attempt') json(res, 200, book.shown());
    else if (path.endsWith('/result')) json(res, 200, book.result());
    else if (path.endsWith('/choice')) {
      book.choose((body as { problem: number }).problem);
      json(res, 200, book.shown());
    } else if (path === '/api/sessions/renew')
      json(res, 200, { token: book.person, expiresIn: 3600 });
    else {
      const { base, actions } = body as {
        base: number;
        actions: Parameters<AttemptBook['add']>[1];
      };
      const { status, body: answer } = book.add(base, actions);
      json(res, status, answer);
    }
  }
}
