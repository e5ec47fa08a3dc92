/**
 * A gradebook that answers as Moodle 4.5.6 was recorded to (tests/golden/platform-messages/score-post.json, results-get.json):
 * whole seconds, 409 for the same second or an earlier one, 400 `[]` for whoever is no student, services with a query.
 * A script of troubles says what goes wrong next.
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { OutboundAnswer, OutboundRequest } from '../../server/lti/outbound.ts';

/** `lose`: the score is taken and the connection reset. `cut`: reset before anything was read. */
export type Trouble =
  | { kind: 'answer'; status: number; headers?: Record<string, string>; body?: string }
  | { kind: 'lose' | 'cut' | 'hang' };

export interface Post {
  /** The tool's clock when it arrived, ms. */
  at: number;
  lineitem: string;
  subject: string;
  /** As it came over the wire. */
  text: string;
  body: Record<string, unknown>;
  headers: Record<string, string | string[] | undefined>;
  accepted: boolean;
}

interface Mark {
  score: number;
  comment: string | null;
  /** Seconds. */
  second: number;
  overridden: boolean;
}

const SCORE = 'application/vnd.ims.lis.v1.score+json';
const EMPTY_LIST = '[]';

export class Gradebook {
  readonly maximum = 10;
  readonly posts: Post[] = [];
  readonly reads: string[] = [];
  readonly marks = new Map<string, Mark>();
  /** Taken one by one by score posts, in order. */
  readonly troubles: Trouble[] = [];
  /** Taken one by one by reads of results. */
  readonly readTroubles: Trouble[] = [];
  readonly strangers = new Set<string>();
  readonly tokens = new Set(['token-1']);
  /** Paths of line items that exist, with their resource link. */
  readonly items = new Map([['/2/lineitems/2/lineitem', '1']]);
  readonly now: () => number;
  private readonly waiting: (() => void)[] = [];

  constructor(now: () => number) {
    this.now = now;
  }

  /** Settles when so many posts have come. */
  async arrived(posts: number): Promise<void> {
    while (this.posts.length < posts) await new Promise<void>((next) => this.waiting.push(next));
  }

  /** What a teacher types into the gradebook; null empties the cell. */
  override(subject: string, score: number | null, lineitem = '/2/lineitems/2/lineitem'): void {
    const key = `${lineitem} ${subject}`;
    if (score === null) this.marks.delete(key);
    else this.marks.set(key, { score, comment: null, second: this.second(), overridden: true });
  }

  mark(subject: string, lineitem = '/2/lineitems/2/lineitem'): Mark | undefined {
    return this.marks.get(`${lineitem} ${subject}`);
  }

  /** The trouble that is due for this request, taken from the script. */
  due({ method = 'GET', url }: OutboundRequest): Trouble | undefined {
    if (method === 'POST') return this.troubles.shift();
    return new URL(url).pathname.endsWith('/results') ? this.readTroubles.shift() : undefined;
  }

  answer(request: OutboundRequest, trouble?: Trouble): OutboundAnswer {
    const { method = 'GET', headers = {} } = request;
    const url = new URL(request.url);
    const refusal = trouble?.kind === 'answer' ? trouble : undefined;
    if (method === 'POST') return this.score(url, request, headers, refusal);
    this.reads.push(url.pathname + url.search);
    if (refusal)
      return { status: refusal.status, headers: refusal.headers ?? {}, body: refusal.body ?? '' };
    if (!this.allows(headers.authorization)) return json(401, { status: 401 });
    return this.read(url, headers.accept);
  }

  private score(
    url: URL,
    request: OutboundRequest,
    headers: Readonly<Record<string, string>>,
    refusal: Extract<Trouble, { kind: 'answer' }> | undefined,
  ): OutboundAnswer {
    const text = request.body ?? '';
    const body = JSON.parse(text);
    const lineitem = url.pathname.replace(/\/scores$/, '');
    const post: Post = {
      ...{ at: this.now(), lineitem, subject: String(body.userId), text, body, headers },
      accepted: false,
    };
    this.posts.push(post);
    for (const next of this.waiting.splice(0)) next();
    if (refusal)
      return { status: refusal.status, headers: refusal.headers ?? {}, body: refusal.body ?? '' };
    if (!this.allows(headers.authorization)) return json(401, []);
    if (!url.pathname.endsWith('/scores') || headers['content-type'] !== SCORE)
      return json(400, { status: 400, reason: `No handler found for ${url.pathname}` });
    if (!this.items.has(lineitem)) return json(404, []);
    const status = this.take(post, lineitem);
    return { status, headers: { 'content-type': SCORE }, body: status === 200 ? '' : EMPTY_LIST };
  }

  private take(post: Post, lineitem: string): number {
    const { userId, timestamp, activityProgress, gradingProgress, scoreGiven, scoreMaximum } =
      post.body as Record<string, never>;
    if (!timestamp || !activityProgress || this.strangers.has(post.subject)) return 400;
    if (gradingProgress !== 'FullyGraded' || typeof scoreGiven !== 'number') return 400;
    const key = `${lineitem} ${userId}`;
    const second = Math.floor(Date.parse(timestamp) / 1000);
    const standing = this.marks.get(key);
    if (standing !== undefined && standing.second >= second) return 409;
    post.accepted = true;
    if (standing?.overridden) return 200;
    const score = (scoreGiven / Number(scoreMaximum)) * this.maximum;
    const comment = (post.body.comment as string | undefined) ?? null;
    this.marks.set(key, { score, comment, second, overridden: false });
    return 200;
  }

  private read(url: URL, accept = '*/*'): OutboundAnswer {
    if (url.pathname.endsWith('/results')) return json(200, this.results(url));
    if (this.items.has(url.pathname)) return json(200, this.item(url.origin, url.pathname));
    if (!/\/lineitems$/.test(url.pathname)) return json(404, { status: 404 });
    if (accept !== 'application/vnd.ims.lis.v2.lineitemcontainer+json')
      return json(400, { status: 400, reason: 'No handler found' });
    const wanted = url.searchParams.get('resource_link_id');
    const found = [...this.items].filter(([, link]) => wanted === null || link === wanted);
    return json(
      200,
      found.map(([path]) => this.item(url.origin, path)),
    );
  }

  private item(origin: string, path: string) {
    const id = `${origin}${path}?type_id=1`;
    return {
      id,
      label: 'Lantern',
      scoreMaximum: this.maximum,
      resourceLinkId: this.items.get(path),
    };
  }

  private results(url: URL) {
    const lineitem = url.pathname.replace(/\/results$/, '');
    const user = url.searchParams.get('user_id');
    return [...this.marks]
      .map(([key, mark]) => ({ key: key.split(' '), mark }))
      .filter(({ key: [item, subject] }) => item === lineitem && (!user || user === subject))
      .map(({ key: [, userId], mark }) => ({
        id: `${url.href}&user_id=${userId}`,
        userId,
        resultScore: mark.score,
        resultMaximum: this.maximum,
        ...(mark.comment !== null && { comment: mark.comment }),
        timestamp: new Date(mark.second * 1000).toISOString().replace('.000Z', '+00:00'),
      }));
  }

  private allows(authorization: string | undefined): boolean {
    return this.tokens.has((authorization ?? '').replace(/^Bearer /, ''));
  }

  private second(): number {
    return Math.floor(this.now() / 1000);
  }
}

function json(status: number, body: unknown): OutboundAnswer {
  return { status, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

/** The gradebook on a port of its own. */
export async function serve(gradebook: Gradebook) {
  const server = createServer((request, response) => {
    respond(gradebook, request, response).catch(() => request.socket.destroy());
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const close = () =>
    new Promise<void>((done) => {
      server.close(() => done());
      server.closeAllConnections();
    });
  return { origin, close };
}

async function respond(gradebook: Gradebook, incoming: IncomingMessage, response: ServerResponse) {
  const chunks: Buffer[] = [];
  for await (const chunk of incoming) chunks.push(chunk);
  const request = {
    url: `http://${incoming.headers.host}${incoming.url}`,
    method: incoming.method as 'GET' | 'POST',
    headers: incoming.headers as Record<string, string>,
    body: Buffer.concat(chunks).toString('utf8'),
  };
  const trouble = gradebook.due(request);
  if (trouble?.kind === 'hang') return;
  if (trouble?.kind === 'cut') return void incoming.socket.destroy();
  const answer = gradebook.answer(request, trouble);
  if (trouble?.kind === 'lose') return void incoming.socket.destroy();
  response.writeHead(answer.status, answer.headers).end(answer.body);
}
