import { setImmediate as breathe } from 'node:timers/promises';
import type { Later } from '../../client/work/surroundings.ts';

interface Due {
  readonly at: number;
  readonly task: () => unknown;
}

/** Time that passes only when told to. While a task that is due waits for the real world, it stands still. */
export class VirtualClock {
  now = 0;
  private waiting: Due[] = [];

  readonly later: Later = (task, ms) => {
    const due = { at: this.now + ms, task };
    this.waiting.push(due);
    return () => {
      this.waiting = this.waiting.filter((other) => other !== due);
    };
  };

  async pass(ms: number): Promise<void> {
    const until = this.now + ms;
    for (let next = this.next(until); next !== undefined; next = this.next(until)) {
      this.now = next.at;
      await next.task();
      await breathe();
    }
    this.now = until;
  }

  /** The earliest that is due by then, the oldest of several; it waits no longer. */
  private next(until: number): Due | undefined {
    const due = this.waiting.filter(({ at }) => at <= until);
    const first = due.reduce<Due | undefined>((a, b) => (a && a.at <= b.at ? a : b), undefined);
    this.waiting = this.waiting.filter((other) => other !== first);
    return first;
  }
}
