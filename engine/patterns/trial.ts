import { type Changes, type GroupRead, type Reading, recurs, type StepOfWork } from './reading.ts';
import type { Variant } from './variants.ts';

/** What a pattern alone would have had otherwise, as far as it was worth looking. */
export interface Trial {
  readonly variant: Variant;
  /** null: the child did the right thing so often where it errs that it is not held. */
  readonly changes: Changes | null;
  /** Whether the works could have shown it. */
  readonly tested: boolean;
}

/** So many times right where the pattern errs, and twice as many more as it was held, are no lapses. */
const TOO_MANY_LAPSES = 6;

/** The works are gone through one by one, until the pattern is plainly not held or all are done. */
export function tryOut(reading: Reading, works: number, variant: Variant): Trial {
  const changes = new Map<number, GroupRead>();
  const steps = new Map<string, StepOfWork>();
  let [held, lapsed, tested] = [0, 0, false];
  for (let work = 0; work < works; work += 1) {
    const own = reading.heldIn(work, variant);
    for (const [at, group] of own) {
      changes.set(at, group);
      if (!tested) noteSteps(steps, reading, at, group);
      held += group.tally.held;
      lapsed += group.tally.lapsed;
    }
    tested ||= recurs([...steps.values()]);
    if (tested && lapsed >= TOO_MANY_LAPSES + 2 * held) return { variant, changes: null, tested };
  }
  return { variant, changes, tested };
}

/** The steps at which something else is due than the right way has it. */
function noteSteps(
  steps: Map<string, StepOfWork>,
  { right }: Reading,
  at: number,
  { group }: GroupRead,
): void {
  const { work, answers, group: usual } = right[at]!;
  for (const { key, step, expected } of group) {
    if ((answers.expected.get(key) ?? null) === expected) continue;
    steps.set(`${work}/${step}`, { work, step });
  }
  for (const left of answers.leftOut) {
    if (group.some(({ key }) => key === left)) continue;
    const { step } = usual.find(({ key }) => key === left)!;
    steps.set(`${work}/${step}`, { work, step });
  }
}
