import { type Action, nextMove, type Square, type Work } from '../../engine/child.ts';
import { toolFor, toolOf } from './moves.ts';
import type { Desk, Tool } from './tool.ts';

/** What the child did last, whatever came of it; not what only asks. */
const lastDone = ({ log }: Work): Action | undefined =>
  log.findLast(
    ({ action, refused }) =>
      refused === undefined && !['check', 'hint', 'undo'].includes(action.do),
  )?.action;

const firstUnanswered = ({ problem, position }: Work): number =>
  Math.max(
    0,
    problem.prompts.findIndex((_, i) => position.said.prompts[i] === undefined),
  );

/** The row that an action belongs to; null: to none, or to several. */
const rowOf = (work: Work, action: Action | undefined): number | null => {
  if (action === undefined) return null;
  if ('row' in action) return action.row;
  if ('line' in action)
    return work.position.paper.begun[action.line.replace('carry', 'partial')] ?? null;
  if ('square' in action) return (action.square as Square)[0];
  return action.do === 'finish' && action.what.startsWith('row:')
    ? Number(action.what.slice(4))
    : null;
};

/** Where the work goes on when it is opened: at the next move, or, while something is to be mended, where the child was. */
export const leftOff = (
  work: Work,
  tools: readonly Tool[],
): Pick<Desk, 'tool' | 'row' | 'prompt'> => {
  const next = nextMove(work);
  const [again] = work.lifted;
  const ahead = next === null || again !== undefined ? null : toolFor(tools, next);
  const last = lastDone(work);
  const behind = last === undefined ? null : toolOf(tools, last);
  const row = ahead === null ? (again?.row ?? rowOf(work, last)) : next?.say.values.row;
  return {
    tool: (ahead ?? behind ?? tools[0]!).id,
    row: Math.max(0, Number(row ?? 0)),
    prompt: again?.prompt ?? firstUnanswered(work),
  };
};
