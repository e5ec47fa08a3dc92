/** What every test of the delivery needs: a database of its own, a clock that only it moves, and pumps on it. */
import type { Connection } from 'mongoose';
import { inTransaction } from '../../server/database/transaction.ts';
import { outboxStore } from '../../server/delivery/outbox-store.ts';
import { pausesStore } from '../../server/delivery/pauses-store.ts';
import { createPump } from '../../server/delivery/pump.ts';
import type { DeliveryRow, ScoreToSend } from '../../server/delivery/row.ts';
import type { Parts } from '../../server/delivery/sender.ts';
import { createGrades, type ServiceToken } from '../../server/lti/grades.ts';
import type { Outbound } from '../../server/lti/outbound.ts';

/** The moment at which every bench begins. */
export const START = Date.parse('2026-11-24T09:00:00.250Z');

export const SILENT = { info() {}, warn() {}, error() {} };

export class Clock {
  now = START;
  readonly read = () => this.now;
  advance(ms: number): void {
    this.now += ms;
  }
}

/** Tokens of a platform that grants the scopes it is asked for; a renewed one is the next in the row. */
export function tokens(granted: (scope: string) => boolean = () => true) {
  let number = 1;
  const asked: { scopes: readonly string[]; renew: boolean }[] = [];
  const token: ServiceToken = async (_, scopes, { renew = false } = {}) => {
    asked.push({ scopes, renew });
    if (renew) number += 1;
    return { ok: true, value: { token: `token-${number}`, scopes: scopes.filter(granted) } };
  };
  return { token, asked };
}

export interface BenchParts {
  outbound: Outbound;
  clock: Clock;
  token?: ServiceToken;
  placementGrades?: Parts['placementGrades'];
}

export async function bench(connection: Connection, parts: BenchParts) {
  const { outbound, clock, token = tokens().token } = parts;
  const outbox = outboxStore(connection);
  const pauses = pausesStore(connection);
  await outbox.prepare();
  const grades = createGrades(outbound, token, clock.read);
  const placementGrades = parts.placementGrades ?? (async () => null);
  const all: Parts = { outbox, pauses, grades, placementGrades, log: SILENT, clock: clock.read };
  const pump = createPump(all);
  const row = async (score: ScoreToSend): Promise<DeliveryRow> => {
    const found = await outbox.find(score);
    if (found === null) throw new Error('no row for this mark');
    return found;
  };
  return {
    ...all,
    pump,
    row,
    /** Puts a mark into the outbox as the attempts do. */
    put: (score: ScoreToSend) =>
      inTransaction(connection, (session) => outbox.put(session, score, clock.now)),
    /** Moves the clock to when the row is due, and sends. */
    async next(score: ScoreToSend): Promise<DeliveryRow> {
      const { nextTry } = await row(score);
      clock.now = Math.max(clock.now, nextTry);
      await pump.run();
      return row(score);
    },
  };
}

/** A mark of 7.5 out of 10 for Ada, with what differs. */
export function markOf(lineitem: string, changes: Partial<ScoreToSend> = {}): ScoreToSend {
  return {
    registration: 'school',
    deployment: '1',
    lineitem,
    subject: 'ada',
    placement: 'placement-1',
    attempt: 'attempt-1',
    scoreGiven: 7.5,
    scoreMaximum: 10,
    timestamp: new Date(START - 1_000),
    comment: 'Both problems worked to the end.',
    ...changes,
  };
}
