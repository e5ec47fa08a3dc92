import type { Sent, sendActions, Tail } from '../api/attempt.ts';
import type { Later } from './surroundings.ts';

/**
 * `idle` nothing to send · `sending` · `waiting` the server was not reached, tried again soon ·
 * `ended` the session is gone · `refused` the server does not take it.
 */
export type SendState = 'idle' | 'sending' | 'waiting' | 'ended' | 'refused';

type Answer = Awaited<ReturnType<typeof sendActions>>;

/** What the sender needs of its owner. */
export interface Post {
  /** What is to be sent now: the known length, and the oldest unsent actions. */
  batch(): { readonly base: number; readonly actions: readonly Sent[] };
  send(base: number, actions: readonly Sent[]): Promise<Answer>;
  accepted(answer: Extract<Answer, { ok: true }>['value']): void;
  behind(base: number, tail: Tail): void;
  changed(state: SendState): void;
}

/** Waits after a failure, in ms; the last repeats. A moment's wait before each send gathers what was done together. */
const WAITS = [500, 1_000, 2_000, 4_000, 8_000, 15_000];
const GATHER = 120;

/** Sends what is unsent, one batch at a time, for as long as the page lives. */
export class Sender {
  state: SendState = 'idle';
  private readonly post: Post;
  private readonly wait: Later;
  private callOff: (() => void) | undefined;
  private busy = false;
  private failures = 0;

  constructor(post: Post, wait: Later) {
    this.post = post;
    this.wait = wait;
  }

  /** There may be something to send. */
  poke(): void {
    if (this.busy || this.state === 'ended' || this.state === 'refused') return;
    if (this.state === 'waiting' && this.callOff !== undefined) return;
    this.later(GATHER);
  }

  /** The network is said to be back. */
  retry(): void {
    if (this.busy || this.state === 'ended') return;
    this.failures = 0;
    this.later(0);
  }

  private later(ms: number): void {
    this.callOff?.();
    this.callOff = this.wait(() => {
      this.callOff = undefined;
      void this.sendOne();
    }, ms);
  }

  private become(state: SendState): void {
    this.state = state;
    this.post.changed(state);
  }

  private async sendOne(): Promise<void> {
    const { base, actions } = this.post.batch();
    if (actions.length === 0) {
      this.become('idle');
      return;
    }
    this.busy = true;
    if (this.state !== 'waiting') this.become('sending');
    const answer = await this.post.send(base, actions);
    this.busy = false;
    if (answer.ok) this.settled(answer.value);
    else this.failed(base, answer);
  }

  private settled(value: Extract<Answer, { ok: true }>['value']): void {
    this.failures = 0;
    this.post.accepted(value);
    this.become('idle');
    if (this.post.batch().actions.length > 0) this.later(0);
  }

  private failed(base: number, { status, body }: Extract<Answer, { ok: false }>): void {
    if (status === 409) this.rebase(base, body as Tail);
    else if (status === 401 || status === 403) this.become('ended');
    else if (status >= 400 && status < 500 && status !== 408 && status !== 429)
      this.become('refused');
    else this.again();
  }

  private again(): void {
    this.become('waiting');
    this.later(WAITS[Math.min(this.failures, WAITS.length - 1)] ?? GATHER);
    this.failures += 1;
  }

  private rebase(base: number, tail: Tail): void {
    this.post.behind(base, tail);
    this.become('sending');
    this.later(0);
  }
}
