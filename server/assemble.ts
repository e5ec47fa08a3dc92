import type { Express } from 'express';
import { activityStore } from './activities/store.ts';
import { createApp } from './app.ts';
import { createAttempts } from './attempts/service.ts';
import { createStandings } from './attempts/standings.ts';
import { attemptStore } from './attempts/store.ts';
import { createClassroom } from './classroom/service.ts';
import type { Config } from './config.ts';
import type { Database } from './database/open.ts';
import { inTransaction, type Transaction } from './database/transaction.ts';
import { createDelivery, type Delivery } from './delivery/delivery.ts';
import type { Log } from './log.ts';
import { createLti } from './lti/index.ts';
import { createOutbound } from './lti/outbound.ts';
import { createMarks } from './marks/service.ts';
import { BUILT_PAGES } from './pages.ts';
import { platformStore } from './platforms/store.ts';
import { createAdmit } from './sessions/admit.ts';
import { createSessions } from './sessions/service.ts';
import { enrolmentStore, placementStore, sessionStore } from './sessions/store.ts';

export interface Placeweave {
  readonly app: Express;
  readonly admit: ReturnType<typeof createAdmit>;
  readonly delivery: Delivery;
  close(): Promise<void>;
}

export interface Surroundings {
  readonly config: Pick<Config, 'url' | 'production'>;
  readonly secret: string;
  readonly database: Pick<Database, 'connection' | 'hasRoom'>;
  readonly log: Log;
  readonly clock?: () => Date;
}

/** Puts all parts together; listens to nothing yet. The indexes stand when it is done. */
export async function assemble(surroundings: Surroundings): Promise<Placeweave> {
  const { config, secret, database, log, clock = () => new Date() } = surroundings;
  const { connection } = database;
  const stores = {
    sessions: sessionStore(connection),
    enrolments: enrolmentStore(connection),
    placements: placementStore(connection),
    activities: activityStore(connection),
    attempts: attemptStore(connection),
  };
  await Promise.all(Object.values(stores).map((store) => store.prepare()));
  const platforms = platformStore(connection);
  const outbound = createOutbound({ production: config.production });
  const admit = createAdmit(stores, clock);
  const lti = await createLti({
    ...{ url: config.url, secret, connection, platforms, log, outbound, pages: BUILT_PAGES },
    admit,
    hasRoom: database.hasRoom,
  });
  const delivery = createDelivery({
    ...{ connection, outbound, token: lti.platformToken, log },
    placementGrades: ({ placement }) => stores.placements.gradesOf(placement),
  });
  await delivery.prepare();
  const transact = <T>(task: (transaction: Transaction) => Promise<T>) =>
    inTransaction(connection, task);
  const standings = createStandings(stores.attempts, stores.activities);
  const parts = { ...stores, standings, delivery, inTransaction: transact, secret, clock };
  const app = createApp({
    ...{ log, https: config.url.startsWith('https:'), lti: lti.router },
    sessions: createSessions(stores.sessions, stores.enrolments, platforms.isSuspended, clock),
    attempts: createAttempts(parts),
    marks: createMarks(parts),
    classroom: createClassroom(parts),
    framingOrigins: () => platforms.allFramingOrigins(),
    hasRoom: database.hasRoom,
    ready: () => answers(database),
  });
  return { app, admit, delivery, close: () => outbound.close() };
}

const READY_PATIENCE_MS = 1_000;

/** Whether work can be kept now: the database answers and has room. */
async function answers({ connection, hasRoom }: Surroundings['database']): Promise<boolean> {
  if (!hasRoom()) return false;
  const ping = connection.db?.command({ ping: 1 }, { timeoutMS: READY_PATIENCE_MS });
  return ping === undefined
    ? false
    : ping.then(
        () => true,
        () => false,
      );
}
