import type { Problem } from '../problem.ts';
import type { RefusalCode } from '../vocabulary.ts';
import type { Action, ActionOf } from './action.ts';
import { count, exchange, layBars, liftBars, makeTen, slide } from './bars.ts';
import { begin, point, rub, write, writtenRows } from './paper.ts';
import type { Position } from './position.ts';

/**
 * Physics: the action is done as said, or refused where real material could not do it.
 * Nothing here knows what is right. `undo` belongs to replay.
 */
export function apply(
  problem: Problem,
  position: Position,
  action: Action,
): Position | RefusalCode {
  if (position.finished.problem) return 'finished';
  switch (action.do) {
    case 'layTile':
      return layTile(position, action);
    case 'liftTile':
      return liftTile(position, action);
    case 'layBars':
      return layBars(position, action);
    case 'liftBars':
      return liftBars(position, action);
    case 'count':
      return count(position, action);
    case 'makeTen':
      return makeTen(position, action);
    case 'exchange':
      return exchange(position, action);
    case 'slide':
      return slide(position, action);
    case 'begin':
      return begin(problem, position, action);
    case 'write':
      return write(problem, position, action);
    case 'rub':
      return rub(problem, position, action);
    case 'point':
      return point(problem, position, action);
    case 'say':
      return say(problem, position, action);
    case 'finish':
      return finish(problem, position, action);
    case 'check':
    case 'hint':
      return position;
    case 'undo':
      return 'nothingToUndo';
  }
}

/** A tile laid where one lies takes its place. */
function layTile(position: Position, action: ActionOf<'layTile'>): Position | RefusalCode {
  if (action.index >= position.tiles[action.edge].length) return 'offTheEdge';
  return withTile(position, action, action.digit);
}

function liftTile(position: Position, action: ActionOf<'liftTile'>): Position | RefusalCode {
  const tile = position.tiles[action.edge][action.index];
  if (tile === undefined) return 'offTheEdge';
  return tile === null ? 'nothingThere' : withTile(position, action, null);
}

function withTile(
  position: Position,
  { edge, index }: { readonly edge: 'bottom' | 'right'; readonly index: number },
  digit: number | null,
): Position {
  const tiles = position.tiles[edge].slice();
  tiles[index] = digit;
  return { ...position, tiles: { ...position.tiles, [edge]: tiles } };
}

function say(
  problem: Problem,
  position: Position,
  action: ActionOf<'say'>,
): Position | RefusalCode {
  const { said } = position;
  if ('prompt' in action) {
    if (action.prompt >= problem.prompts.length) return 'noSuchPrompt';
    const prompts = { ...said.prompts, [action.prompt]: action.answer };
    return { ...position, said: { ...said, prompts } };
  }
  if (action.row >= position.piles.length) return 'offTheMat';
  return { ...position, said: { ...said, rows: { ...said.rows, [action.row]: action.answer } } };
}

function finish(
  problem: Problem,
  position: Position,
  { what }: ActionOf<'finish'>,
): Position | RefusalCode {
  const { finished } = position;
  if (what === 'problem') return { ...position, finished: { ...finished, problem: true } };
  if (problem.stage === 'walk' || problem.stage === 'build') return 'nothingToFinish';
  if (what === 'product') return { ...position, finished: { ...finished, product: true } };
  const row = Number(what.slice('row:'.length));
  if (row >= writtenRows(problem)) return 'nothingToFinish';
  if (finished.rows.includes(row)) return position;
  const rows = [...finished.rows, row].sort((a, b) => a - b);
  return { ...position, finished: { ...finished, rows } };
}
