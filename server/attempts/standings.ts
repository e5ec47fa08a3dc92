import type { ActivityVersion } from '../activities/schema.ts';
import type { ActivityStore } from '../activities/store.ts';
import type { Session } from '../sessions/schema.ts';
import { isToChoose, problemsOf } from './chosen.ts';
import type { Attempt } from './schema.ts';
import type { AttemptStore } from './store.ts';
import { type Standing, standingOf } from './work.ts';

/** An attempt in memory: what its record says, without the actions, and where they lead. */
export interface Open {
  readonly attempt: Omit<Attempt, 'actions' | 'length' | 'problemsFinished'>;
  readonly activity: ActivityVersion;
  readonly standing: Standing;
}

const MOST_HELD = 1_000;

export interface Standings {
  /** The attempt of a session, `null` if there is none; `fresh` asks the record whether memory is as far. */
  open(session: Session, fresh?: boolean): Promise<Open | null>;
  hold(open: Open): void;
  /** Where a record stands that was just read: replayed only if memory is not as far. */
  of(attempt: Attempt, activity: ActivityVersion): Promise<Standing>;
}

/**
 * Keeps the attempts that are being worked on, so that a batch costs no replay. Never believed: the database appends
 * only to the length that memory has, so a standing that is behind is noticed and read again. A record only grows: at
 * the length that memory has it says what memory says, or a page that sends nonsense over and over would have a long
 * attempt replayed each time.
 */
export function createStandings(attempts: AttemptStore, activities: ActivityStore): Standings {
  const held = new Map<string, Open>();

  const hold = (open: Open) => {
    held.delete(open.attempt._id);
    held.set(open.attempt._id, open);
    for (const id of held.keys()) {
      if (held.size <= MOST_HELD) break;
      held.delete(id);
    }
  };

  const read = async (session: Session): Promise<Open | null> => {
    const found = await attempts.find({ ...session, id: session.attempt });
    const activity = found && (await activities.find(found.activity, found.version));
    if (!found || !activity) return null;
    const { actions, length: _, problemsFinished: __, ...attempt } = found;
    return { attempt, activity, standing: await standingOf(problemsOf(activity, found), actions) };
  };

  const lengthOf = (session: Session) => attempts.lengthOf({ ...session, id: session.attempt });

  const open = async (session: Session, fresh = false) => {
    const known = held.get(session.attempt);
    if (known !== undefined && belongs(known.attempt, session)) {
      if (!fresh || (await lengthOf(session)) === known.standing.length) return known;
    }
    const found = await read(session);
    // What is still to be chosen is not held: the choice does not show in the length.
    if (found !== null && !isToChoose(found.activity, found.attempt)) hold(found);
    return found;
  };

  const of = async (attempt: Attempt, activity: ActivityVersion) => {
    const known = held.get(attempt._id)?.standing;
    if (known?.length === attempt.length) return known;
    return standingOf(problemsOf(activity, attempt), attempt.actions);
  };

  return { open, hold, of };
}

function belongs(attempt: Open['attempt'], session: Session): boolean {
  return (
    attempt.registration === session.registration &&
    attempt.deployment === session.deployment &&
    attempt.subject === session.subject
  );
}
