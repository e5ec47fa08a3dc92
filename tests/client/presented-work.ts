import {
  type Action,
  fractionText,
  parseProblem,
  replay,
  score,
  type Work,
  type WrittenProblem,
  worked,
} from '../../engine/index.ts';

export const workOf = (written: WrittenProblem, actions: readonly Action[]): Work => {
  const problem = parseProblem(written);
  if (!problem.ok) throw new Error(problem.fault.code);
  return replay(problem.value, actions);
};

export const presentationOf = (written: WrittenProblem): Action[] => {
  const problem = parseProblem(written);
  if (!problem.ok) throw new Error(problem.fault.code);
  return worked(problem.value).map(({ action }) => action);
};

export const marksOf = (works: readonly Work[]): string => fractionText(score(works).fraction);

/** The same done wrongly, as a child may; null where nothing can be mistaken. */
const mistaken = (action: Action): Action | null => {
  switch (action.do) {
    case 'layTile':
    case 'write':
      return { ...action, digit: (action.digit + 1) % 10 };
    case 'layBars':
      return { ...action, kind: (action.kind % 9) + 1 };
    case 'count':
      return { ...action, total: action.total + 1 };
    case 'say':
      return typeof action.answer === 'string' ? { ...action, answer: `${action.answer}0` } : null;
    default:
      return null;
  }
};

interface Slipped {
  /** Everything done, help left out. */
  readonly actions: readonly Action[];
  /** How many of them are done before help is asked for. */
  readonly helpAt: number;
}

/** One action of the presentation done wrongly, noticed at a check, taken back and done rightly; help before the next. */
export const withSlip = (
  actions: readonly Action[],
  slip: (action: Action) => boolean,
): Slipped => {
  const at = actions.findIndex(slip);
  const right = actions[at];
  const wrong = right === undefined ? null : mistaken(right);
  if (right === undefined || wrong === null) throw new Error('nothing to mistake');
  const before = [...actions.slice(0, at), wrong, { do: 'check' }, { do: 'undo' }, right] as const;
  return { actions: [...before, ...actions.slice(at + 1)], helpAt: before.length };
};
