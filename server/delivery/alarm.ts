/**
 * Wakes the sender, also after a restart and for rows that other server processes put in. Only the bell is kept in
 * the job library: whether there is anything to do stands in the outbox.
 */
import { MongoBackend } from '@agendajs/mongo-backend';
import { Agenda } from 'agenda';
import type { Database } from '../database/open.ts';
import type { DeliveryLog } from './sender.ts';

const JOB = 'send due marks';
const EVERY = '5 seconds';
/** The job only rings, so its lock is short; a process that dies while ringing delays the others by no more than this (ms). */
const LOCK_LIFETIME = 10_000;

type Connection = Database['connection'];

export interface Alarm {
  start(): Promise<void>;
  stop(): Promise<void>;
}

/** The library begins to use the connection as soon as it is made, so it is made at the start and not before. */
export function createAlarm(connection: Connection, ring: () => void, log: DeliveryLog): Alarm {
  let agenda: Agenda | null = null;
  return {
    async start() {
      agenda = clockOn(connection, log);
      agenda.define(JOB, async () => ring());
      await agenda.start();
      await agenda.every(EVERY, JOB);
    },
    async stop() {
      await agenda?.stop(false);
    },
  };
}

function clockOn(connection: Connection, log: DeliveryLog): Agenda {
  const agenda = new Agenda({
    backend: new MongoBackend({ mongo: databaseOf(connection), collection: 'alarms' }),
    processEvery: EVERY,
    defaultLockLifetime: LOCK_LIFETIME,
    maxConcurrency: 1,
  });
  agenda.on('error', (err) => log.error({ err }, 'the alarm clock failed'));
  return agenda;
}

function databaseOf({ db }: Connection) {
  if (db === undefined) throw new Error('the alarm clock needs an open connection');
  return db;
}
