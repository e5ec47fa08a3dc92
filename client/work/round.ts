import {
  type Action,
  act,
  type RefusalCode,
  refusalOf,
  startWork,
  type Work,
} from '../../engine/child.ts';
import type { Keeping } from './work-store.ts';

const RIGHT = ['first', 'follows'];

/** Which works hold a step that was not right at once. */
export const toWorkAgain = (works: readonly Work[]): readonly Work[] =>
  works.filter(({ steps }) => steps.some(({ status }) => !RIGHT.includes(status)));

/** One more round on some problems: for the child alone, nothing of it is sent, marked or kept. */
export class Round implements Keeping {
  readonly attempt: Keeping['attempt'];
  readonly alone = true;
  readonly sendState = 'idle';
  readonly keeps = true;
  readonly unsentCount = 0;
  readonly asideCount = 0;
  works: readonly Work[];
  private readonly changed: () => void;

  constructor({ attempt, works }: Keeping, changed: () => void) {
    this.attempt = attempt;
    this.works = toWorkAgain(works).map(({ problem }) => startWork(problem));
    this.changed = changed;
  }

  do(problem: number, action: Action): RefusalCode | null {
    const work = this.works[problem];
    if (work === undefined) return 'finished';
    const refused = refusalOf(work, action);
    if (refused !== null) return refused;
    this.works = this.works.with(problem, act(work, action));
    this.changed();
    return null;
  }
}
