import type { Reply } from '../../client/api/http.ts';
import type { Surroundings } from '../../client/work/surroundings.ts';
import { openWork, type WorkStore } from '../../client/work/work-store.ts';
import { type Action, nextMove, replay, type Work } from '../../engine/index.ts';
import type { Chance } from '../oracle/chance.ts';
import { type Answer, call } from '../support/server.ts';
import { newStorage } from './browser-storage.ts';
import { VirtualClock } from './virtual-clock.ts';

/** How long a page waits for an answer before it gives a request up, in ms. */
const PATIENCE = 15_000;
const UNREACHED = { ok: false, status: 0, code: 'unreached', body: null } as const;

/** One browser: what it keeps outlives its pages; its network comes and goes. */
export interface Device {
  readonly storage: Storage;
  online: boolean;
}

/** An open page of one child. `done`: everything it did that was not refused, in order. */
export interface OpenPage {
  readonly device: Device;
  readonly child: string;
  readonly store: WorkStore;
  readonly done: Action[];
  readonly closed: { is: boolean };
}

const reply = ({ status, body }: Answer): Reply<never> =>
  status === 200
    ? { ok: true, value: body as never }
    : { ok: false, status, code: body?.error?.code ?? 'unknown', body };

/** Children, devices and a network that loses requests and answers, before real server processes. */
export class FaultyWorld {
  readonly clock = new VirtualClock();
  readonly pages: OpenPage[] = [];
  readonly devices: readonly Device[] = [1, 2].map(() => ({ storage: newStorage(), online: true }));
  /** Whether requests may go wrong although the network is there. */
  troubled = true;
  private readonly chance: Chance;
  private readonly servers: readonly string[];
  private readonly tokens: Readonly<Record<string, string>>;

  /** `tokens`: the session of each child by name. */
  constructor(chance: Chance, servers: readonly string[], tokens: Record<string, string>) {
    this.chance = chance;
    this.servers = servers;
    this.tokens = tokens;
  }

  /** Null when the server could not be reached. */
  async open(device: Device, child: string): Promise<OpenPage | null> {
    const closed = { is: false };
    let opened: Awaited<ReturnType<typeof openWork>> | undefined;
    void openWork(this.around(device, child, closed), () => {}).then((it) => {
      opened = it;
    });
    await this.clock.pass(PATIENCE);
    if (opened === undefined || !('store' in opened)) return null;
    const page = { device, child, store: opened.store, done: [], closed };
    this.pages.push(page);
    return page;
  }

  /** With last words, or as when the battery dies. */
  close(page: OpenPage, lastWords: boolean): void {
    if (lastWords) page.store.leave();
    page.closed.is = true;
  }

  /** The child does something sensible, or something else. */
  work({ store, done }: OpenPage): void {
    const problem = this.chance.below(store.problems.length);
    const action = this.something(store.works[problem]!);
    if (action !== null && store.do(problem, action) === null) done.push(action);
  }

  /** What the server keeps of a child's attempt. */
  async kept(child: string) {
    const { body } = await call(`${this.server()}/api/attempt`, this.tokens[child] ?? '');
    return body.attempt.actions as {
      client: string;
      action: Action;
      problem: number;
      aside?: string;
    }[];
  }

  private something(work: Work): Action | null {
    const turn = this.chance.below(12);
    if (turn === 0) return { do: 'undo' };
    if (turn === 1) return { do: 'finish', what: 'problem' };
    if (turn === 2) return { do: 'check' };
    if (turn === 3)
      return { do: 'layTile', edge: 'bottom', index: 0, digit: this.chance.below(10) };
    return nextMove(work)?.action ?? null;
  }

  private server(): string {
    return this.chance.pick(this.servers);
  }

  private around(device: Device, child: string, closed: { is: boolean }): Surroundings {
    const { clock } = this;
    const request = (path: string, body?: unknown) =>
      this.request(device, child, closed, path, body);
    return {
      storage: device.storage,
      prepare: async () => true,
      open: () => request('/api/attempt'),
      send: (id, base, actions) => request(`/api/attempts/${id}/actions`, { base, actions }),
      later: (task, ms) => clock.later(() => closed.is || task(), ms),
      now: () => clock.now,
      elapsed: () => clock.now,
    };
  }

  /** A request takes its time there and back, and may be lost on either way. An answer to a closed page reaches nobody. */
  private request(
    device: Device,
    child: string,
    closed: { is: boolean },
    path: string,
    body: unknown,
  ) {
    const { clock, chance } = this;
    const text = body === undefined ? undefined : JSON.stringify(body);
    const lost = () => !device.online || (this.troubled && chance.below(5) === 0);
    return new Promise<Reply<never>>((resolve) => {
      const settle = (answer: Reply<never>) => closed.is || resolve(answer);
      clock.later(() => settle(UNREACHED), PATIENCE - 1);
      if (!device.online) return void clock.later(() => settle(UNREACHED), 5);
      clock.later(async () => {
        if (lost()) return;
        const answer = reply(await call(this.server() + path, this.tokens[child] ?? '', text));
        clock.later(() => lost() || settle(answer), chance.below(2_000));
      }, chance.below(2_000));
    });
  }
}

/** The works that come of what a server keeps. */
export const worksOf = (
  store: WorkStore,
  kept: readonly { problem: number; action: Action; aside?: string }[],
): Work[] =>
  store.problems.map((problem, index) =>
    replay(
      problem,
      kept.filter((entry) => entry.problem === index && !entry.aside).map(({ action }) => action),
    ),
  );
