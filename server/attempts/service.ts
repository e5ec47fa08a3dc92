import { BEADS } from '../activities/schema.ts';
import type { ActivityStore } from '../activities/store.ts';
import { type ActionsMessage, type ChoiceMessage, LIMITS } from '../contract.ts';
import type { Transaction } from '../database/transaction.ts';
import type { Delivery } from '../delivery/delivery.ts';
import { done, type Outcome, refuse } from '../errors.ts';
import type { Session } from '../sessions/schema.ts';
import type { PlacementStore } from '../sessions/store.ts';
import { personHash } from '../sessions/token.ts';
import { type Batch, freshOf, type Receipt, readBatch, receiptOf } from './batch.ts';
import { isToChoose, problemsOf } from './chosen.ts';
import { scoreOf, ungraded } from './finish.ts';
import { handIn } from './hand-in.ts';
import type { Open, Standings } from './standings.ts';
import type { AttemptStore } from './store.ts';
import { createTurns } from './turns.ts';
import { isFinished, lay, problemsFinished, type Standing } from './work.ts';

export interface AttemptParts {
  readonly attempts: AttemptStore;
  readonly activities: ActivityStore;
  readonly placements: PlacementStore;
  readonly standings: Standings;
  readonly delivery: Pick<Delivery, 'enqueueScore'>;
  readonly inTransaction: <T>(task: (transaction: Transaction) => Promise<T>) => Promise<T>;
  readonly secret: string;
  readonly clock: () => Date;
}

export type AttemptService = ReturnType<typeof createAttempts>;

export function createAttempts(parts: AttemptParts) {
  const { attempts, activities, placements, standings, clock } = parts;
  const inTurn = createTurns();

  /** What the page needs to show the attempt as it stands. */
  async function show(session: Session): Promise<Outcome<unknown>> {
    const found = await attempts.find({ ...session, id: session.attempt });
    const activity = found && (await activities.find(found.activity, found.version));
    const placement = await placements.ofSession(session);
    if (!found || !activity || !placement) return refuse('notFound');
    const trial = found.trial || session.trial;
    return done({
      attempt: {
        id: found._id,
        title: activity.title,
        person: personHash(session, parts.secret),
        problems: problemsOf(activity, found),
        choices: isToChoose(activity, found) ? activity.problems : [],
        beads: activity.beads ?? BEADS[0],
        length: found.length,
        actions: found.actions,
        trial,
        graded: ungraded(trial, placement) === null,
        release: activity.release,
      },
    });
  }

  /** Keeps which problem was picked. Whoever comes second, with a double click or on another device, gets what was picked first. */
  async function choose(
    session: Session,
    id: string,
    { problem }: ChoiceMessage,
  ): Promise<Outcome<unknown>> {
    if (id !== session.attempt) return refuse('notFound');
    const owner = { ...session, id };
    const found = await attempts.find(owner);
    const activity = found && (await activities.find(found.activity, found.version));
    if (!found || !activity) return refuse('notFound');
    if (problem >= activity.problems.length) return refuse('noSuchProblem', 'problem');
    if (isToChoose(activity, found)) await attempts.choose(owner, problem);
    return show(session);
  }

  /** Keeps what is new of a batch, once; the page may forget what the receipt names. */
  async function add(
    session: Session,
    id: string,
    message: ActionsMessage,
  ): Promise<Outcome<Receipt>> {
    if (id !== session.attempt) return refuse('notFound');
    const batch = readBatch(message);
    if (!batch.ok) return batch;
    return inTurn(id, async () => {
      const outcome = await tryAdd(session, batch.value, false);
      return outcome ?? (await tryAdd(session, batch.value, true)) ?? refuse('busy');
    });
  }

  /** `null` when the record has moved on from what memory held. */
  async function tryAdd(
    session: Session,
    batch: Batch,
    fresh: boolean,
  ): Promise<Outcome<Receipt> | null> {
    const open = await standings.open(session, fresh);
    if (open === null) return refuse('notFound');
    const added = freshOf(batch, open.standing);
    // Memory may be behind what another process kept: only the record itself may call a batch out of order.
    if (!added.ok) return fresh ? added : null;
    if (added.value.length === 0) return done(receipt(batch, open));
    const { length } = open.standing;
    if (batch.base !== length) return fresh ? moved(session, batch.base) : null;
    if (length + added.value.length > LIMITS.actionsPerAttempt) return refuse('attemptFull');
    const laid = await lay(open.standing, added.value);
    const kept = await keep(session, open, laid);
    if (kept === null) return fresh ? moved(session, batch.base) : null;
    standings.hold(kept);
    return done(receipt(batch, kept));
  }

  function receipt(batch: Batch, { standing, attempt }: Open): Receipt {
    return receiptOf(batch, standing, attempt.finishedAt !== null);
  }

  async function moved(session: Session, base: number) {
    const found = await attempts.find({ ...session, id: session.attempt });
    if (found === null) return refuse('notFound');
    const actions = found.actions.slice(base);
    return refuse('moved', 'base', { length: found.length, actions });
  }

  type Laid = Awaited<ReturnType<typeof lay>>;

  async function keep(session: Session, open: Open, laid: Laid): Promise<Open | null> {
    const owner = { ...session, id: session.attempt };
    const addition = {
      base: open.standing.length,
      entries: laid.entries,
      problemsFinished: problemsFinished(laid.standing),
    };
    if (open.attempt.finishedAt === null && isFinished(laid.standing)) {
      return finish(session, open, laid.standing, addition);
    }
    const appended = await attempts.append(owner, addition);
    return appended ? { ...open, standing: laid.standing } : null;
  }

  /** The batch that finishes the last problem: the actions, the score and its way to the gradebook, all or nothing. */
  async function finish(
    session: Session,
    open: Open,
    standing: Standing,
    addition: Parameters<AttemptStore['append']>[1],
  ): Promise<Open | null> {
    const placement = await placements.ofSession(session);
    const now = clock();
    const releasedAt = open.activity.release === 'onFinish' ? now : null;
    const made = { finishedAt: now, releasedAt, score: scoreOf(standing.works) };
    const owner = { ...session, id: session.attempt };
    const finished = { ...open, attempt: { ...open.attempt, ...made }, standing };
    const kept = await parts.inTransaction(async (transaction) => {
      const appended = await attempts.append(owner, addition, { finish: made, transaction });
      if (appended && releasedAt !== null && placement !== null) {
        await handIn(finished, placement, session.trial, parts.delivery, transaction);
      }
      return appended;
    });
    return kept ? finished : null;
  }

  return { show, choose, add };
}
