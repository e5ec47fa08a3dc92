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

/**
 * Whether less than half of the squares that the true problem asks for were ever worked: then it counts as work left
 * out, not as work with a slip (`unworked.test.ts`).
 */
export function isHardlyWorked({ multiplicand, multiplier }: Problem, actions: readonly Action[]) {
  const worked = new Set(
    actions.flatMap((action, index) =>
      actions[index + 1]?.do !== 'undo' &&
      (action.do === 'layBars' || (action.do === 'write' && 'square' in action))
        ? [String(action.square)]
        : [],
    ),
  );
  const nonZero = (digits: readonly number[]) => digits.filter((digit) => digit > 0).length;
  return 2 * worked.size < nonZero(multiplicand.digits) * nonZero(multiplier.digits);
}
