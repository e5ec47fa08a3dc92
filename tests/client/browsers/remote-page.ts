import { setTimeout as sleep } from 'node:timers/promises';
import type { ChildPage, RoleOptions, Thing } from '../../support/child-page.ts';
import { find, type Spot, type Step, spots, type Wanted } from './find.ts';
import { chord } from './key-names.ts';
import type { InputStep, PointerSource, Remote } from './remote.ts';

/** Longest wait for a thing to be there and to rest, in ms. */
const PATIENCE = 60_000;
const BETWEEN_LOOKS = 20;

type Pointer = PointerSource['parameters']['pointerType'];

const wanted = (text: string | RegExp, exact?: boolean): Wanted => {
  if (text instanceof RegExp) return { pattern: text.source, flags: text.flags };
  return exact ? { whole: text } : { part: text };
};

const stepOf = (role: string, { name, exact, ...rest }: RoleOptions = {}): Step => ({
  role,
  ...(name !== undefined && { name: wanted(name, exact) }),
  ...rest,
});

/** Runs a function that holds everything it needs in the page. */
const run = async <T>(remote: Remote, look: unknown, ...args: unknown[]): Promise<T> => {
  const given = args.map((arg) => (typeof arg === 'function' ? `${arg}` : JSON.stringify(arg)));
  const call = `(${look})(${given.join(', ')})`;
  const text = await remote.evaluate(`(async () => JSON.stringify((await ${call}) ?? null))()`);
  return JSON.parse(text);
};

/** Asks again until there is an answer; complains with what was last said against it. */
const insist = async <T extends object>(
  ask: () => Promise<T | string>,
  patience = PATIENCE,
): Promise<T> => {
  const end = Date.now() + patience;
  for (;;) {
    const answer = await ask();
    if (typeof answer !== 'string') return answer;
    if (Date.now() > end) throw new Error(answer);
    await sleep(BETWEEN_LOOKS);
  }
};

/** Runs inside the browser. */
const only = (
  finder: typeof find,
  steps: readonly Step[],
  look: (one: Element, detail: string) => unknown,
  detail: string,
) => {
  const [one, ...others] = finder(steps);
  return one !== undefined && others.length === 0
    ? { value: look(one, detail) }
    : `${one === undefined ? 'none' : 'several'} found for ${JSON.stringify(steps)}`;
};

class RemoteThing implements Thing {
  private readonly remote: Remote;
  private readonly steps: readonly Step[];

  constructor(remote: Remote, steps: readonly Step[]) {
    this.remote = remote;
    this.steps = steps;
  }

  getByRole(role: string, options?: RoleOptions): Thing {
    return this.on(stepOf(role, options));
  }

  filter({ hasText }: { hasText: string }): Thing {
    return this.on({ containing: hasText });
  }

  first(): Thing {
    return this.nth(0);
  }

  nth(index: number): Thing {
    return this.on({ nth: index });
  }

  count(): Promise<number> {
    const look = (finder: typeof find, steps: Step[]) => finder(steps).length;
    return run(this.remote, look, find, this.steps);
  }

  async isVisible(): Promise<boolean> {
    return (await this.count()) > 0;
  }

  getAttribute(name: string): Promise<string | null> {
    return this.ask((one, wish) => one.getAttribute(wish), name);
  }

  boundingBox() {
    return this.ask((one) => {
      const { x, y, width, height } = one.getBoundingClientRect();
      return { x, y, width, height };
    });
  }

  click(): Promise<void> {
    return this.press('mouse');
  }

  tap(): Promise<void> {
    return this.press('touch');
  }

  async press(pointer: Pointer): Promise<void> {
    const [at] = await this.spots([this.steps]);
    await this.point(pointer, [moved(at), down, up]);
  }

  async dragTo(to: Thing): Promise<void> {
    const target = to as RemoteThing;
    const [from, over] = await this.spots([this.steps, target.steps]);
    if (from === undefined || over === undefined) throw new Error('nothing to carry');
    const half = { x: (from.x + over.x) / 2, y: (from.y + over.y) / 2 };
    await this.point('mouse', [moved(from), down, moved(half), moved(over), moved(over), up]);
  }

  async waitFor({ timeout }: { timeout?: number } = {}): Promise<void> {
    const there = async () =>
      (await this.isVisible()) ? {} : `never there: ${JSON.stringify(this.steps)}`;
    await insist(there, timeout);
  }

  /** What a look at the only thing found says, once it is there. */
  private async ask<T>(look: (one: Element, detail: string) => T, detail = ''): Promise<T> {
    const ask = () => run<{ value: T } | string>(this.remote, only, find, this.steps, look, detail);
    return (await insist(ask)).value;
  }

  private on(step: Step): RemoteThing {
    return new RemoteThing(this.remote, [...this.steps, step]);
  }

  private spots(ways: readonly (readonly Step[])[]): Promise<Spot[]> {
    return insist(() => run<Spot[] | string>(this.remote, spots, find, ways));
  }

  private point(pointerType: Pointer, actions: InputStep[]): Promise<void> {
    const parameters = { pointerType };
    return this.remote.perform({ type: 'pointer', id: pointerType, parameters, actions });
  }
}

const down: InputStep = { type: 'pointerDown', button: 0 };
const up: InputStep = { type: 'pointerUp', button: 0 };
const moved = (to: Spot | undefined): InputStep => {
  if (to === undefined) throw new Error('nowhere to point');
  return { type: 'pointerMove', x: Math.round(to.x), y: Math.round(to.y), duration: 0 };
};

/** The page of a browser that is driven from outside by the W3C's protocols, in the words of the scripts. */
export class RemotePage implements ChildPage {
  private readonly remote: Remote;
  readonly keyboard = { press: (keys: string) => this.pressKeys(keys) };

  constructor(remote: Remote) {
    this.remote = remote;
  }

  getByRole(role: string, options?: RoleOptions): Thing {
    return new RemoteThing(this.remote, [stepOf(role, options)]);
  }

  getByText(text: string, { exact }: { exact?: boolean } = {}): Thing {
    return new RemoteThing(this.remote, [{ text: wanted(text, exact) }]);
  }

  evaluate<T>(look: () => T): Promise<T> {
    return run(this.remote, look);
  }

  private pressKeys(keys: string): Promise<void> {
    const codes = chord(keys);
    return this.remote.perform({
      type: 'key',
      id: 'keys',
      actions: [
        ...codes.map((value): InputStep => ({ type: 'keyDown', value })),
        ...codes.reverse().map((value): InputStep => ({ type: 'keyUp', value })),
      ],
    });
  }
}
