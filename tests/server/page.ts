import { randomUUID } from 'node:crypto';
import { type Action, parseProblem, type WrittenProblem, worked } from '../../engine/index.ts';
import type { Answer, TestApp } from '../support/server.ts';

export const ONE_ROW: WrittenProblem = { stage: 'bars1', multiplicand: '34', multiplier: '2' };
export const TWO_ROWS: WrittenProblem = { stage: 'bars', multiplicand: '27', multiplier: '34' };

/** The worked presentation: earns full marks, ends with the finish of the problem. */
export function movesOf(problem: WrittenProblem): Action[] {
  const read = parseProblem(problem);
  if (!read.ok) throw new Error(read.fault.code);
  return worked(read.value).map(({ action }) => action);
}

export interface Sent {
  readonly client: string;
  readonly n: number;
  readonly at: number;
  readonly problem: number;
  readonly action: unknown;
}

/** Actions as one page numbers them. */
export function numbered(
  actions: readonly unknown[],
  {
    client = randomUUID(),
    from = 0,
    problem = 0,
  }: { client?: string; from?: number; problem?: number } = {},
): Sent[] {
  return actions.map((action, index) => {
    const n = from + index;
    return { client, n, at: 100 * n, problem, action };
  });
}

export async function attemptOf(app: TestApp, token: string) {
  const { body } = await app.get(token, '/api/attempt');
  return body.attempt;
}

/** An open page with unsent work: it sends from the front, and goes on from what a 409 tells it. */
export class Page {
  readonly client = randomUUID();
  readonly done: Sent[] = [];
  readonly app: Pick<TestApp, 'post'>;
  readonly token: string;
  readonly attempt: string;
  #base = 0;
  #acknowledged = 0;

  constructor(app: Pick<TestApp, 'post'>, token: string, attempt: string) {
    this.app = app;
    this.token = token;
    this.attempt = attempt;
  }

  act(actions: readonly unknown[], problem = 0): void {
    const { client } = this;
    this.done.push(...numbered(actions, { client, from: this.done.length, problem }));
  }

  get unsent(): Sent[] {
    return this.done.slice(this.#acknowledged);
  }

  /** Sends up to `most` of what is unsent. */
  async send(most = 500): Promise<Answer> {
    const actions = this.unsent.slice(0, most);
    const message = { base: this.#base, actions };
    const path = `/api/attempts/${this.attempt}/actions`;
    const answer = await this.app.post(this.token, path, message);
    if (answer.status === 200 || answer.status === 409) this.#base = answer.body.length;
    const kept = answer.body.acknowledged?.[this.client];
    if (kept !== undefined) this.#acknowledged = kept + 1;
    return answer;
  }

  /** Until everything is acknowledged. */
  async sendAll(most = 500): Promise<void> {
    for (let tries = 0; this.unsent.length > 0; tries += 1) {
      if (tries > 200) throw new Error('the page never gets rid of its work');
      await this.send(most);
    }
  }
}
