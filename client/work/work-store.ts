import {
  type Action,
  act,
  type Problem,
  parseProblem,
  type RefusalCode,
  refusalOf,
  replay,
  type Work,
  type WrittenProblem,
} from '../../engine/child.ts';
import type { Attempt, Sent } from '../api/attempt.ts';
import {
  acknowledge,
  actionsOf,
  addSent,
  isKnown,
  type Ledger,
  openLedger,
  rebase,
} from './ledger.ts';
import { type Post, Sender, type SendState } from './sender.ts';
import type { Surroundings } from './surroundings.ts';
import { openUnsentStore, purgeUnsent, type UnsentStore } from './unsent-store.ts';

/** Actions in one request: far below the server's limit of 64 kB. */
const BATCH = 200;

/** Null when one of them cannot be played. */
export const playable = (all: readonly WrittenProblem[]): Problem[] | null => {
  const problems: Problem[] = [];
  for (const written of all) {
    const parsed = parseProblem(written);
    if (!parsed.ok) return null;
    problems.push(parsed.value);
  }
  return problems;
};

/** What a page of work needs of whatever keeps it; `alone`: it is for the child only, and nothing is sent. */
export type Keeping = Pick<
  WorkStore,
  'attempt' | 'works' | 'do' | 'sendState' | 'keeps' | 'unsentCount' | 'asideCount' | 'alone'
>;

/** Everything done in one attempt, and its works: actions go to the engine at once, and to the server as soon as it can be reached. */
export class WorkStore {
  readonly attempt: Attempt;
  readonly problems: readonly Problem[];
  works: readonly Work[];
  sendState: SendState = 'idle';
  readonly alone: boolean = false;
  /** False when this device keeps nothing: then only what is saved is safe. */
  keeps = true;
  private ledger: Ledger;
  private readonly unsent: UnsentStore;
  private readonly client = crypto.randomUUID();
  private n = 0;
  private readonly sender: Sender;
  private readonly around: Surroundings;
  private readonly opened: number;
  private readonly changed: () => void;

  constructor(
    attempt: Attempt,
    problems: readonly Problem[],
    around: Surroundings,
    changed: () => void,
  ) {
    this.attempt = attempt;
    this.around = around;
    this.opened = around.elapsed();
    this.problems = problems;
    this.changed = changed;
    const { storage, now } = around;
    if (storage !== null) purgeUnsent(storage, now());
    this.keeps = storage !== null;
    this.unsent = openUnsentStore(storage, attempt.id, attempt.person, now);
    this.ledger = openLedger(attempt.actions, this.unsent.load());
    this.unsent.drop(isKnown(this.ledger));
    this.works = this.replayAll();
    this.sender = this.makeSender();
    this.sender.poke();
  }

  get unsentCount(): number {
    return this.ledger.unsent.length;
  }

  /** What is stored but not judged, because another page had been there first. */
  get asideCount(): number {
    return this.ledger.known.filter((entry) => entry.aside !== undefined).length;
  }

  /** Does an action; returns why real material could not, in which case nothing is done. */
  do(problem: number, action: Action): RefusalCode | null {
    const work = this.works[problem];
    if (work === undefined) return 'finished';
    const refused = refusalOf(work, action);
    if (refused !== null) return refused;
    const at = Math.round(this.around.elapsed() - this.opened);
    const sent: Sent = { client: this.client, n: this.n, at, problem, action };
    this.n += 1;
    this.ledger = addSent(this.ledger, sent);
    this.keeps = this.unsent.add(sent);
    this.works = this.works.with(problem, act(work, action));
    this.sender.poke();
    this.changed();
    return null;
  }

  networkBack(): void {
    this.sender.retry();
  }

  /** The page is being closed: what is unsent gets a last try; it stays on the device until acknowledged. */
  leave(): void {
    const { base, actions } = this.batch();
    if (actions.length > 0) void this.around.send(this.attempt.id, base, actions, true);
  }

  private batch() {
    return { base: this.ledger.known.length, actions: this.ledger.unsent.slice(0, BATCH) };
  }

  private replayAll(): Work[] {
    return this.problems.map((problem, i) =>
      replay(
        problem,
        actionsOf(this.ledger, i).map(({ action }) => action),
      ),
    );
  }

  private settle(ledger: Ledger, again: boolean): void {
    this.ledger = ledger;
    this.unsent.drop(isKnown(ledger));
    if (again) this.works = this.replayAll();
  }

  private makeSender(): Sender {
    const post: Post = {
      batch: () => this.batch(),
      send: (base, actions) => this.around.send(this.attempt.id, base, actions),
      accepted: ({ length, acknowledged, aside }) => {
        this.settle(acknowledge(this.ledger, acknowledged, aside), aside.length > 0);
        if (length !== this.ledger.known.length) void this.readAgain();
      },
      behind: (base, tail) => this.settle(rebase(this.ledger, base, tail), true),
      changed: (state) => {
        this.sendState = state;
        this.changed();
      },
    };
    return new Sender(post, this.around.later);
  }

  /** The server's list is not the one this page expected, for example after an answer that was lost on its way. */
  private async readAgain(): Promise<void> {
    const reply = await this.around.open();
    if (!reply.ok) return;
    this.settle(openLedger(reply.value.attempt.actions, this.ledger.unsent), true);
    this.changed();
  }
}

type Opened =
  | { readonly store: WorkStore }
  | { readonly toChoose: Attempt }
  | { readonly code: string };

/** Opens the person's attempt; the code of a failure is the server's, or `noProblem` when its problems cannot be played here. */
export const openWork = async (around: Surroundings, changed: () => void): Promise<Opened> => {
  const reply = await around.open();
  if (!reply.ok) return { code: reply.code };
  return workOn(reply.value.attempt, around, changed);
};

/** The work on an attempt; what is still to be chosen, if so; or the code of what stands in its way. */
export const workOn = async (
  attempt: Attempt,
  around: Surroundings,
  changed: () => void,
): Promise<Opened> => {
  if (attempt.choices.length > 0) return { toChoose: attempt };
  const problems = playable(attempt.problems);
  if (problems === null) return { code: 'noProblem' };
  const ready = await around.prepare(problems.map(({ stage }) => stage));
  if (!ready) return { code: 'unreachable' };
  return { store: new WorkStore(attempt, problems, around, changed) };
};
