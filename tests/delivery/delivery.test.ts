import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { inTransaction } from '../../server/database/transaction.ts';
import { createDelivery, type Delivery } from '../../server/delivery/delivery.ts';
import { outboxStore } from '../../server/delivery/outbox-store.ts';
import { createOutbound, type Outbound } from '../../server/lti/outbound.ts';
import { databaseForFile } from '../support/database.ts';
import { markOf, SILENT, tokens } from './bench.ts';
import { Gradebook, serve } from './gradebook.ts';

const database = databaseForFile();
let gradebook: Gradebook;
let school: Awaited<ReturnType<typeof serve>>;
let outbound: Outbound;
let lineitem: string;
let running: Delivery[] = [];

beforeEach(async () => {
  for (const name of ['deliveries', 'deliverypauses', 'alarms'])
    await database().connection.collection(name).deleteMany({});
  gradebook = new Gradebook(Date.now);
  school = await serve(gradebook);
  outbound = createOutbound({ production: false });
  lineitem = `${school.origin}/2/lineitems/2/lineitem?type_id=1`;
});
afterEach(async () => {
  for (const delivery of running) await delivery.stop();
  running = [];
  await outbound.close();
  await school.close();
});

/** One server process. */
async function process(): Promise<Delivery> {
  const delivery = createDelivery({
    ...{ connection: database().connection, outbound, token: tokens().token, log: SILENT },
    placementGrades: async () => null,
  });
  await delivery.prepare();
  running.push(delivery);
  return delivery;
}

const ada = (changes = {}) => markOf(lineitem, { timestamp: new Date(), ...changes });
const enqueue = (delivery: Delivery, score = ada()) =>
  inTransaction(database().connection, (session) => delivery.enqueueScore(session, score));

describe('a mark put into the outbox', () => {
  it('is on its way as soon as the transaction is through', async () => {
    const delivery = await process();
    await enqueue(delivery);
    await gradebook.arrived(1);
    await delivery.stop();
    expect(await delivery.deliveryState(ada())).toEqual({
      ...{ state: 'sent', reason: null, lastTriedAt: expect.any(Number) },
    });
  });

  it('is not there when the transaction fails', async () => {
    const delivery = await process();
    const failing = inTransaction(database().connection, async (session) => {
      await delivery.enqueueScore(session, ada());
      throw new Error('the batch failed');
    });
    await expect(failing).rejects.toThrow('the batch failed');
    expect(await delivery.deliveryState(ada())).toEqual({
      ...{ state: 'none', reason: null, lastTriedAt: null },
    });
  });

  it('needs a transaction, and a mark that is one', async () => {
    const delivery = await process();
    const session = await database().connection.startSession();
    await expect(delivery.enqueueScore(session, ada())).rejects.toThrow('transaction');
    await session.endSession();
    await expect(enqueue(delivery, ada({ comment: '' }))).rejects.toThrow('comment');
  });

  it('put in at the same time by many is one row, the newest last', async () => {
    const delivery = await process();
    gradebook.strangers.add('ada');
    const scores = Array.from({ length: 12 }, (_, n) => ada({ attempt: `attempt-${n}` }));
    await Promise.all(scores.map((score) => enqueue(delivery, score)));
    await delivery.stop();
    const rows = await outboxStore(database().connection).ofLineItem(ada());
    expect(rows).toHaveLength(1);
    expect(rows[0]?.desired.revision).toBe(12);
  });
});

/** A mark that is due so much later (ms) is not found by the look round at a start: only the alarm can tell of it. */
const UNTIL_ALL_IS_QUIET = 2_000;

describe('the alarm clock', () => {
  it('wakes a process that has just started for what an earlier one left', async () => {
    const outbox = outboxStore(database().connection);
    await inTransaction(database().connection, (session) => outbox.put(session, ada(), Date.now()));
    const delivery = await process();
    await delivery.start();
    await gradebook.arrived(1);
  });

  it('wakes a running process for what another one put in', async () => {
    const [first, second] = [await process(), await process()];
    await first.start();
    await second.start();
    const outbox = outboxStore(database().connection);
    const later = Date.now() + UNTIL_ALL_IS_QUIET;
    await inTransaction(database().connection, (session) => outbox.put(session, ada(), later));
    await gradebook.arrived(1);
    await first.stop();
    await second.stop();
    expect(gradebook.posts.map(({ subject }) => subject)).toEqual(['ada']);
  });

  it('is kept in the database, under one lock of seconds', async () => {
    const [first, second] = [await process(), await process()];
    await first.start();
    await second.start();
    expect(await database().connection.collection('alarms').countDocuments()).toBe(1);
  });
});

describe('a process that stops', () => {
  it('waits for the call under way and records what came of it', async () => {
    const delivery = await process();
    const bo = ada({ subject: 'bo' });
    let arrive = () => {};
    const arrived = new Promise<void>((resolve) => {
      arrive = resolve;
    });
    let answer = () => {};
    const held = new Promise<void>((resolve) => {
      answer = resolve;
    });
    const { send } = outbound;
    outbound.send = async (request) => {
      arrive();
      await held;
      return send(request);
    };
    await enqueue(delivery, bo);
    await arrived;
    const stopped = delivery.stop();
    answer();
    await stopped;
    expect(await delivery.deliveryState(bo)).toMatchObject({ state: 'sent' });
  });
});

it('a column is told child by child', async () => {
  const delivery = await process();
  gradebook.strangers.add('bo');
  await enqueue(delivery);
  await enqueue(delivery, ada({ subject: 'bo' }));
  await gradebook.arrived(2);
  await delivery.stop();
  const states = await delivery.deliveryStates({
    registration: 'school',
    deployment: '1',
    lineitem,
  });
  expect(states.get('ada')).toMatchObject({ state: 'sent' });
  expect(states.get('bo')).toMatchObject({ state: 'stuck', reason: 'notGradable' });
  expect(states.get('cleo')).toBeUndefined();
  const elsewhere = { registration: 'school', deployment: '2', lineitem };
  expect((await delivery.deliveryStates(elsewhere)).size).toBe(0);
});
