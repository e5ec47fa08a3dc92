/** A gradebook on a port of its own beside the bench, made anew for each test of a file. */
import { afterEach, beforeEach } from 'vitest';
import type { ScoreToSend } from '../../server/delivery/row.ts';
import { createOutbound, type Outbound } from '../../server/lti/outbound.ts';
import { databaseForFile } from '../support/database.ts';
import { type BenchParts, bench, Clock, markOf } from './bench.ts';
import { Gradebook, serve } from './gradebook.ts';

export const SECOND = 1_000;
export const MINUTE = 60 * SECOND;
export const HOUR = 60 * MINUTE;
export const ITEM = '/2/lineitems/2/lineitem';

/** A trouble of the gradebook: this answer instead of its own. */
export const answer = (status: number, body = '', headers: Record<string, string> = {}) =>
  ({ kind: 'answer', status, body, headers }) as const;

interface Scene {
  clock: Clock;
  gradebook: Gradebook;
  school: Awaited<ReturnType<typeof serve>>;
  outbound: Outbound;
}

/** How long a tool waits that is to see an answer fail to come, in ms; long enough for those that do. */
const SHORT_PATIENCE = 1_500;

export function sceneForFile() {
  const database = databaseForFile();
  let scene: Scene | undefined;

  beforeEach(async () => {
    for (const name of ['deliveries', 'deliverypauses'])
      await database().connection.collection(name).deleteMany({});
    const clock = new Clock();
    const gradebook = new Gradebook(clock.read);
    const outbound = createOutbound({ production: false });
    scene = { clock, gradebook, outbound, school: await serve(gradebook) };
  });
  afterEach(async () => {
    await scene?.outbound.close();
    await scene?.school.close();
  });

  const current = (): Scene => {
    if (scene === undefined) throw new Error('the scene is set before each test');
    return scene;
  };
  const lineitem = () => `${current().school.origin}${ITEM}?type_id=1`;
  /** One server process on the shared database. */
  const open = (parts: Partial<BenchParts> = {}) => {
    const { outbound, clock } = current();
    return bench(database().connection, { outbound, clock, ...parts });
  };
  return {
    database,
    current,
    lineitem,
    open,
    /** The same with little patience. */
    openImpatient: () =>
      open({ outbound: createOutbound({ production: false, limits: { total: SHORT_PATIENCE } }) }),
    /** Ada's mark in this gradebook. */
    ada: (changes: Partial<ScoreToSend> = {}) => markOf(lineitem(), changes),
  };
}
