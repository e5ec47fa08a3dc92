import {
  type Action,
  type Problem,
  parseAction,
  parseProblem,
  replay,
  score,
  type Work,
} from '../../engine/index.ts';

/** A problem that the test is sure of. */
export function problemOf(written: Record<string, unknown>): Problem {
  const parsed = parseProblem({ stage: 'bars', ...written });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

export function actionsOf(told: readonly unknown[]): Action[] {
  return told.map((each) => {
    const parsed = parseAction(each);
    if (!parsed.ok) throw new Error(`${JSON.stringify(each)}: ${JSON.stringify(parsed.fault)}`);
    return parsed.value;
  });
}

export function play(written: Record<string, unknown>, told: readonly unknown[]): Work {
  return replay(problemOf(written), actionsOf(told));
}

export function statusOf(work: Work, id: string): string | undefined {
  return work.steps.find((step) => step.id === id)?.status;
}

/** Steps that cost something: everything but `first` and `follows`. */
export function spent(work: Work): string[] {
  return work.steps
    .filter(({ status }) => status !== 'first' && status !== 'follows')
    .map(({ id }) => id);
}

export function isFull(work: Work): boolean {
  const { num, den } = score([work]).fraction;
  return num === den;
}
