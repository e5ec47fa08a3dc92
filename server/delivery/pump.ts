/** Sends what is due, platform by platform, so that a slow one holds up nobody else. */
import { PLACES } from './patience.ts';
import { deliver, type Parts } from './sender.ts';

export interface Pump {
  /** Begins to send what is due; settles when nothing more is due now. Called at any time, as often as one likes. */
  run(): Promise<void>;
  /** Takes nothing new and waits for the tries under way. */
  stop(): Promise<void>;
}

export function createPump(parts: Parts): Pump {
  const { outbox, pauses, log, clock } = parts;
  const busy = new Map<string, { again: boolean; done: Promise<void> }>();
  let stopped = false;

  return {
    async run() {
      if (stopped) return;
      const registrations = await outbox.dueRegistrations(clock());
      await Promise.all(registrations.map(serve));
    },
    async stop() {
      stopped = true;
      await Promise.all([...busy.values()].map(({ done }) => done));
    },
  };

  /** One round at a time for a platform; asked for again meanwhile, it goes round once more. */
  function serve(registration: string): Promise<void> {
    const running = busy.get(registration);
    if (running !== undefined) {
      running.again = true;
      return running.done;
    }
    const round = { again: false, done: Promise.resolve() };
    busy.set(registration, round);
    round.done = rounds(registration, round).finally(() => busy.delete(registration));
    return round.done;
  }

  async function rounds(registration: string, round: { again: boolean }): Promise<void> {
    do {
      round.again = false;
      await Promise.all(Array.from({ length: PLACES }, (_, slot) => work(registration, slot)));
    } while (round.again && !stopped);
  }

  /** Fills one of the platform's places until nothing is due. A fault of ours leaves the row to its lease. */
  async function work(registration: string, slot: number): Promise<void> {
    try {
      while (!stopped && !(await pauses.holds(registration, clock()))) {
        const taken = await outbox.claim(registration, slot, clock());
        if (taken === null) return;
        await deliver(parts, taken.row, taken.claim);
      }
    } catch (err) {
      log.error({ err, registration }, 'sending of marks broke off');
    }
  }
}
