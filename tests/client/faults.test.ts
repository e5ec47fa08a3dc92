import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Work } from '../../engine/index.ts';
import { chanceOf } from '../oracle/chance.ts';
import { databaseForFile } from '../support/database.ts';
import { startApp, type TestApp } from '../support/server.ts';
import { FaultyWorld, type OpenPage, worksOf } from './faulty-world.ts';

const SCHEDULES = 200;
const EVENTS = 30;
const CHILDREN = ['ada', 'bo'] as const;
const PROBLEMS = [
  { stage: 'bars1', multiplicand: '24', multiplier: '3' },
  { stage: 'bars', multiplicand: '13', multiplier: '12' },
] as const;

const database = databaseForFile();
let apps: { app: TestApp; close(): Promise<void> }[] = [];

beforeAll(async () => {
  apps = [await startApp(database()), await startApp(database())];
});

afterAll(async () => {
  for (const { close } of apps) await close();
});

const worldOf = async (seed: number): Promise<FaultyWorld> => {
  const first = apps[0]!.app;
  const activity = await first.activity(PROBLEMS);
  const tokens: Record<string, string> = {};
  for (const child of CHILDREN)
    tokens[child] = await first.token({ subject: `${child} ${seed}`, custom: { activity } });
  return new FaultyWorld(
    chanceOf(seed),
    apps.map(({ app }) => app.url),
    tokens,
  );
};

/** Children at work on shared devices while networks, pages and answers come and go. */
const live = async (world: FaultyWorld, seed: number): Promise<void> => {
  const chance = chanceOf(seed + 10_000);
  const open = () => world.pages.filter(({ closed }) => !closed.is);
  for (let event = 0; event < EVENTS; event += 1) {
    const turn = chance.below(10);
    const page = open().length > 0 ? chance.pick(open()) : undefined;
    if (page === undefined || (turn === 0 && open().length < 4))
      await world.open(chance.pick(world.devices), chance.pick(CHILDREN));
    else if (turn === 1) world.close(page, chance.below(2) === 0);
    else if (turn === 2) page.device.online = !page.device.online;
    else if (turn === 3) {
      world.close(page, false);
      await world.open(page.device, page.child);
    } else world.work(page);
    if (chance.below(3) > 0) await world.clock.pass(chance.below(4_000));
  }
};

/** Every child opens the work once more on every device, with a good network, and waits until all is saved. */
const comeToRest = async (world: FaultyWorld): Promise<OpenPage[]> => {
  for (const page of world.pages) world.close(page, false);
  world.troubled = false;
  const last: OpenPage[] = [];
  for (const device of world.devices) {
    device.online = true;
    for (const child of CHILDREN) last.push((await world.open(device, child))!);
  }
  await world.clock.pass(120_000);
  return last;
};

/** What each page did, in its order; a page is known by what it did, whatever the server calls it. */
const sequences = (lists: readonly (readonly unknown[])[]): string[] =>
  lists
    .map((list) => JSON.stringify(list))
    .filter((text) => text !== '[]')
    .sort();

const byClient = (kept: Awaited<ReturnType<FaultyWorld['kept']>>) => {
  const clients = [...new Set(kept.map(({ client }) => client))];
  return clients.map((client) =>
    kept.filter((entry) => entry.client === client).map(({ action }) => action),
  );
};

describe('work on devices that lose the network, their pages and the server’s answers', () => {
  it('is all on the server in the end, judged or set aside, once and in its order', async () => {
    const seen = { actions: 0, aside: 0, sharedByPages: 0 };
    for (let seed = 1; seed <= SCHEDULES; seed += 1) {
      const world = await worldOf(seed);
      await live(world, seed);
      const last = await comeToRest(world);
      for (const child of CHILDREN) {
        const kept = await world.kept(child);
        const pages = world.pages.filter((page) => page.child === child);
        expect(sequences(byClient(kept)), `seed ${seed}`).toEqual(
          sequences(pages.map(({ done }) => done)),
        );
        for (const { store } of last.filter((page) => page.child === child))
          expect([store.unsentCount, store.sendState], `seed ${seed}`).toEqual([0, 'idle']);
        const { store } = (await world.open(world.devices[0]!, child))!;
        const positions = (works: readonly Work[]) => works.map(({ position }) => position);
        expect(positions(store.works), `seed ${seed}`).toEqual(positions(worksOf(store, kept)));
        seen.actions += kept.length;
        seen.aside += kept.filter(({ aside }) => aside).length;
        seen.sharedByPages += byClient(kept).length > 1 ? 1 : 0;
      }
      for (const { storage } of world.devices) expect(Object.keys(storage)).toEqual([]);
    }
    // The schedules are worth something only if much was done, by several pages, some of it too late.
    expect(seen.actions).toBeGreaterThan(10 * SCHEDULES);
    expect(seen.aside).toBeGreaterThan(SCHEDULES / 10);
    expect(seen.sharedByPages).toBeGreaterThan(SCHEDULES / 4);
  });
});
